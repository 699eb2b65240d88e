import { namedPlace } from '../../../../shared/chain/named-place.ts';
import type { Offer } from '../../../../shared/contract/plan.ts';
import type { ChangeRecord, TriageRecord, Watch } from '../../../../shared/contract/triage.ts';
import { changeCatalogue } from '../../../../shared/isolation/change-catalogue.ts';
import { minutesUntilRarer, twoRatesRisk } from '../../../../shared/isolation/quiet-length.ts';
import { chanceOfTwoFaults } from '../../../../shared/isolation/two-faults.ts';
import { message } from '../../../../shared/message/message.ts';
import { namedChange } from '../../../../shared/message/named-change.ts';
import type { Kinds, NamedPlace } from '../../../../shared/message/values.ts';
import { cameMoreRarely, minutesOf, openChange, runningWatch, watchesFor } from '../../record.ts';
import { baselineFor, fullNeedOf, judgeWatches, usable, watchRecordOf } from '../../retest.ts';
import { whyNotOneOfTwo } from '../../rules/changes.ts';
import type { Asked } from '../asked.ts';
import { offering, type Stage, stage } from '../offer.ts';
import { judgeRetest, watchAsItComes } from '../steps.ts';
import { isDayOver } from './hand-over.ts';
import { leftAnyway, leftOf, stillNeeded } from './need.ts';
import { unattendedStage } from './unattended.ts';
import { afterWatch, endOffer, seenOffers, waitingOffers } from './watching.ts';

/** One change is open: it is made, watched, judged, and put back or kept. Null where none is. */
export function openChangeStage(asked: Asked): Stage | null {
  const { record, known, now } = asked;
  const change = openChange(record);
  if (change === null) return null;
  const what = { change: namedChange(change), place: namedPlace(known.chain, change.target) };
  switch (change.status) {
    case 'declared': {
      const offers = [offering({ type: 'applyChange' }), offering({ type: 'withdrawChange' })];
      return stage(message('changeDeclared', what), isDayOver(record) ? offers.toReversed() : offers);
    }
    case 'judged':
      if (runningWatch(record) === null) return judgedStage(asked, change, what);
      // It was judged and is watched on: what shows now is noted as in any retest.
      return retestStage(asked, { change, what }, retestsSoFar(record, change, now));
    default:
      return (
        unattendedStage(asked, change) ??
        retestStage(asked, { change, what }, retestsSoFar(record, change, now))
      );
  }
}

type WhatIsDone = { change: Kinds['changeKind']; place: NamedPlace };

const judgeOffer = (record: TriageRecord): Offer => afterWatch(record, judgeRetest);
const restore = (): Offer => offering({ type: 'restoreChange', note: '' });
const keep = (): Offer => offering({ type: 'keepChange', note: '', oneOfTwo: false });
const keepOneOfTwo = (): Offer =>
  offering({ type: 'keepChange', note: '', oneOfTwo: true }, { text: message('keepAsOneOfTwo') });

type InPlace = { change: ChangeRecord; what: WhatIsDone };

function retestStage(asked: Asked, { change, what }: InPlace, watches: readonly Watch[]): Stage {
  const { record } = asked;
  const { verdict, needed, reasons } = judgeWatches(record, watches);
  const judged = [judgeOffer(record), ...seenOffers(record), endOffer(record)];
  if (verdict === 'persists')
    return perhapsRarerStage(asked, what, watches) ?? stage(message('changeStillFails', what), judged);
  if (verdict === 'cleared') return stage(message('changeQuietLongEnough', what), judged);
  const { provokingMin } = changeCatalogue[change.kind];
  if (provokingMin !== null) return provokingStage(asked, what, provokingMin - minutesWatched(watches));
  const left = stillNeeded(record, watches, needed);
  if (left === null) {
    const leftMin = leftAnyway(record, watches);
    const how = reasons[0] ?? message('cannotBeJudged');
    const offers = leftMin > 0 ? [...waitingOffers(asked, { minutes: leftMin }), judgeOffer(record)] : judged;
    return stage(message('changeWatch', { ...what, how }), [...offers, restore()]);
  }
  const waiting = waitingOffers(asked, leftOf(left));
  // Made although the day was over: it is not watched into the night, but judged as it is, or put back.
  const end = [judgeOffer(record), restore()];
  const offers = isDayOver(record) ? [...end, ...waiting] : [...waiting, ...end];
  return left.mode === 'time'
    ? stage(message('changeWatchMinutes', { ...what, minutes: left.remainingMin }), offers)
    : stage(
        left.mode === 'trigger'
          ? message('changeWatchTries', { ...what, tries: left.remainingTries })
          : message('changeLook', { ...what, looks: left.remainingLooks }),
        offers,
      );
}

/**
 * The fault came, perhaps more rarely: worth watching on where two faults are likely enough and quiet from now on would
 * show it soon enough. Null otherwise.
 */
function perhapsRarerStage(asked: Asked, what: WhatIsDone, watches: readonly Watch[]): Stage | null {
  const { record } = asked;
  const timed = usable(watches).filter(({ mode }) => mode === 'time');
  const [first] = timed;
  const need = fullNeedOf(record);
  if (first === undefined || need?.mode !== 'time') return null;
  const { baseline } = baselineFor(record, first);
  const retest = watchRecordOf(record, timed);
  if (baseline.mode !== 'time' || retest.mode !== 'time') return null;
  const chance = chanceOfTwoFaults(twoRatesRisk(baseline, retest));
  const minutes = minutesUntilRarer(baseline, retest, record.settings.risk);
  if (
    minutes === 0 ||
    retest.minutes + minutes > mostOfQuiet * need.totalWatchMin ||
    chance < worthTellingApart
  )
    return null;
  return stage(message('changePerhapsRarer', { ...what, chance, minutes }), [
    ...waitingOffers(asked, { minutes }),
    judgeOffer(record),
  ]);
}

/** Two faults that are likelier than this are told from one; assumed. */
const worthTellingApart = 0.3;
/** A retest in which the fault came is watched on for so many times as long as a quiet one takes, at most; assumed. */
const mostOfQuiet = 2;

/** What may bring the fault on is watched for as long as that takes, not for as long as quiet takes to mean something. */
function provokingStage(asked: Asked, what: WhatIsDone, leftMin: number): Stage {
  const { record } = asked;
  const judged = [judgeOffer(record), ...seenOffers(record), endOffer(record), restore()];
  return leftMin > 0
    ? stage(message('changeMayBringItOn', { ...what, minutes: leftMin }), [
        ...waitingOffers(asked, { minutes: leftMin }),
        ...judged,
      ])
    : stage(message('changeBroughtNothingOn', what), judged);
}

/** A watch that counts tries has had as long as it takes, however quick they were. */
const minutesWatched = (watches: readonly Watch[]): number =>
  usable(watches).reduce(
    (sum, watch) => sum + (watch.mode === 'time' ? minutesOf(watch) : Number.POSITIVE_INFINITY),
    0,
  );

/** The retests of a change, with the running one up to now. */
const retestsSoFar = (record: TriageRecord, { id }: ChangeRecord, now: string): Watch[] =>
  watchesFor(record, 'retest')
    .filter(({ changeId }) => changeId === id)
    .map((watch) => (watch.endedAt === null ? { ...watch, endedAt: now } : watch));

/** What puts something right stays, be it the fault or not; what can't be put back does so of itself. */
function judgedStage(asked: Asked, change: ChangeRecord, what: WhatIsDone): Stage {
  const verdict = change.judgement?.verdict ?? 'inconclusive';
  const watchOn = verdict === 'inconclusive' ? [offering(watchAsItComes(asked, null))] : [];
  if (whyNotOneOfTwo(change) === null) {
    const chance = chanceOfTwoFaults(change.judgement?.riskOfBeingFooled ?? 1);
    return stage(message('changeMadeItRarer', { ...what, chance }), [keepOneOfTwo(), restore(), keep()]);
  }
  if (cameMoreRarely(change)) {
    const chance = chanceOfTwoFaults(change.judgement?.riskOfBeingFooled ?? 1);
    return stage(message('changeMadeItRarerGoesBack', { ...what, chance }), [restore()]);
  }
  const staysAnyway = change.plainCorrection || !change.canBeUndone;
  const end = staysAnyway || verdict === 'cleared' ? [keep(), restore()] : [restore(), keep()];
  const code = staysAnyway && verdict !== 'cleared' ? 'changeStays' : 'changeJudged';
  return stage(message(code, { ...what, verdict }), [...end, ...watchOn]);
}
