import { namedPlace } from '../../../../shared/chain/named-place.ts';
import type { Offer } from '../../../../shared/contract/plan.ts';
import type { ChangeKind, ChangeRecord, TriageRecord, Watch } from '../../../../shared/contract/triage.ts';
import { message } from '../../../../shared/message/message.ts';
import type { NamedPlace } from '../../../../shared/message/values.ts';
import { openChange, watchesFor } from '../../record.ts';
import { fullNeedOf, judgeWatches, usable } from '../../retest.ts';
import type { Asked } from '../asked.ts';
import { offering, type Stage, stage } from '../offer.ts';
import { judgeRetest, watchAsItComes } from '../steps.ts';
import { leftAnyway, leftOf } from './need.ts';
import { unattendedStage } from './unattended.ts';
import { afterWatch, endOffer, seenOffers, waitingOffers } from './watching.ts';

/** One change is open: it is made, watched, judged, and put back or kept. Null where none is. */
export function openChangeStage(asked: Asked): Stage | null {
  const { record, known, now } = asked;
  const change = openChange(record);
  if (change === null) return null;
  const what = { change: change.kind, place: namedPlace(known.chain, change.target) };
  switch (change.status) {
    case 'declared':
      return stage(message('changeDeclared', what), [
        offering({ type: 'applyChange' }),
        offering({ type: 'withdrawChange' }),
      ]);
    case 'judged':
      return judgedStage(record, change, what);
    default:
      return unattendedStage(asked, change) ?? retestStage(asked, what, retestsSoFar(record, change, now));
  }
}

type WhatIsDone = { change: ChangeKind; place: NamedPlace };

const judgeOffer = (record: TriageRecord): Offer => afterWatch(record, judgeRetest);
const restore = (): Offer => offering({ type: 'restoreChange', note: '' });
const keep = (): Offer => offering({ type: 'keepChange', note: '' });

function retestStage(asked: Asked, what: WhatIsDone, watches: readonly Watch[]): Stage {
  const { record } = asked;
  const { verdict, needed, reasons } = judgeWatches(record, watches);
  const judged = [judgeOffer(record), ...seenOffers(record), endOffer(record)];
  if (verdict === 'persists') return stage(message('changeStillFails', what), judged);
  if (verdict === 'cleared') return stage(message('changeQuietLongEnough', what), judged);
  const left = usable(watches).length === 0 ? fullNeedOf(record) : needed;
  if (left === null) {
    const leftMin = leftAnyway(record, watches);
    const how = reasons[0] ?? message('cannotBeJudged');
    const offers = leftMin > 0 ? [...waitingOffers(asked, { minutes: leftMin }), judgeOffer(record)] : judged;
    return stage(message('changeWatch', { ...what, how }), [...offers, restore()]);
  }
  const offers = [...waitingOffers(asked, leftOf(left)), judgeOffer(record), restore()];
  return left.mode === 'time'
    ? stage(message('changeWatchMinutes', { ...what, minutes: left.remainingMin }), offers)
    : stage(
        left.mode === 'trigger'
          ? message('changeWatchTries', { ...what, tries: left.remainingTries })
          : message('changeLook', { ...what, looks: left.remainingLooks }),
        offers,
      );
}

/** The retests of a change, with the running one up to now. */
const retestsSoFar = (record: TriageRecord, { id }: ChangeRecord, now: string): Watch[] =>
  watchesFor(record, 'retest')
    .filter(({ changeId }) => changeId === id)
    .map((watch) => (watch.endedAt === null ? { ...watch, endedAt: now } : watch));

/** What puts something right stays, be it the fault or not; what can't be put back does so of itself. */
function judgedStage(record: TriageRecord, change: ChangeRecord, what: WhatIsDone): Stage {
  const verdict = change.judgement?.verdict ?? 'inconclusive';
  const watchOn = verdict === 'inconclusive' ? [offering(watchAsItComes(record, null))] : [];
  const staysAnyway = change.plainCorrection || !change.canBeUndone;
  const end = staysAnyway || verdict === 'cleared' ? [keep(), restore()] : [restore(), keep()];
  const code = staysAnyway && verdict !== 'cleared' ? 'changeStays' : 'changeJudged';
  return stage(message(code, { ...what, verdict }), [...end, ...watchOn]);
}
