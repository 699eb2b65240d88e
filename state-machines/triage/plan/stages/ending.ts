import type { Offer } from '../../../../shared/contract/plan.ts';
import type { TriageRecord } from '../../../../shared/contract/triage.ts';
import { followUpOutcomes } from '../../../../shared/contract/triage-names.ts';
import type { RetestNeed } from '../../../../shared/isolation/index.ts';
import { message } from '../../../../shared/message/message.ts';
import { occurrencesIn, reportsSinceRemedy, verifyWatches } from '../../record.ts';
import { judgeWatches } from '../../retest.ts';
import { picturesToCheck } from '../../rules/leaving.ts';
import type { Asked } from '../asked.ts';
import { offering, type Stage, stage } from '../offer.ts';
import { isBeyondVisit } from '../over-days.ts';
import { openChangeStage } from './change.ts';
import { escalateOffer, isDayOver } from './hand-over.ts';
import { goodLooks, leftAnyway, leftOf, stillNeeded } from './need.ts';
import { usualUntil, waitForReports } from './waiting.ts';
import { afterWatch, endOffer, seenOffers, waitingOffers } from './watching.ts';

/** A culprit is named: how the ticket ends. A change that second line found open is ended before. */
export function culpritStage(asked: Asked): Stage {
  const open = openChangeStage(asked);
  if (open !== null) return open;
  return stage(message('culpritNamed'), [
    offering({ type: 'chooseRemedy', remedy: { kind: 'permanent' } }, { text: message('settleOnRepair') }),
    offering(
      { type: 'chooseRemedy', remedy: { kind: 'workaround', acceptedAt: asked.now } },
      { text: message('settleOnWorkaround') },
    ),
    offering({ type: 'withdrawCulprit' }),
    escalateOffer(asked.record),
  ]);
}

export function remedyStage({ record, chainVersion }: Asked): Stage {
  return stage(message(record.remedy?.kind === 'noFaultFound' ? 'leaveAsItIs' : 'doTheRepair'), [
    offering({ type: 'finishRemedy', asLeftChainVersion: chainVersion }),
    offering({ type: 'withdrawRemedy' }),
    escalateOffer(record),
  ]);
}

/** The remedy is done: does it hold, and may the ticket be closed? */
export function verifyStage(asked: Asked): Stage {
  const { record, now } = asked;
  const watches = verifyWatches(record).map((each) =>
    each.endedAt === null ? { ...each, endedAt: now } : each,
  );
  const ways = [offering({ type: 'withdrawRemedy' }), escalateOffer(record)];
  const others = [...seenOffers(record), endOffer(record), ...ways];
  /** Once there is nothing to wait for: what is known by now may decide something anew when the watch ends. */
  const afterwards = [endOffer(record), ...seenOffers(record), ...ways];
  const check = leavingOffers(record);
  const close = afterWatch(record, { type: 'close', note: '', override: null });
  const closeAnyway = afterWatch(
    record,
    { type: 'close', note: '', override: {} },
    { text: message('closeAnyway') },
  );
  if (occurrencesIn(watches).length > 0 || reportsSinceRemedy(record).length > 0)
    return stage(message('cameAfterRemedy'), [
      afterWatch(record, { type: 'faultCameBack' }),
      closeAnyway,
      ...others,
    ]);
  if (record.remedy?.kind === 'noFaultFound')
    return stage(message('closeNoFaultFound'), [...check, close, ...afterwards]);
  if (record.remedy?.kind === 'onSuspicion')
    return stage(message('closeUnproven'), [...check, close, ...afterwards]);
  const { verdict, needed, reasons } = judgeWatches(record, watches);
  if (verdict === 'cleared') return stage(message('remedyHeld'), [...check, close, ...afterwards]);
  const left = stillNeeded(record, watches, needed);
  if (left === null) {
    const leftMin = leftAnyway(record, watches);
    const watchOn = waitingOffers(asked, { minutes: leftMin });
    const how = reasons[0] ?? message('cannotBeJudged');
    const first = leftMin === 0 ? [closeAnyway, ...watchOn] : [...watchOn, closeAnyway];
    return stage(message('watchRemedy', { how }), [...first, ...others]);
  }
  if (isBeyondVisit(left, asked.table)) return overDaysStage(asked, left, [closeAnyway, ...check, ...others]);
  // Late in the day it was looked at for long enough: from here on the client looks.
  const clientLooks =
    goodLooks(watches) > 0 && isDayOver(record) && !hasClientLooked(record)
      ? [waitForReports(record, usualUntil(now))]
      : [];
  const offers = [...clientLooks, ...waitingOffers(asked, leftOf(left)), close, closeAnyway, ...others];
  return left.mode === 'time'
    ? stage(message('watchRemedyMinutes', { minutes: left.remainingMin }), offers)
    : stage(
        left.mode === 'trigger'
          ? message('watchRemedyTries', { tries: left.remainingTries })
          : message('lookAtRemedy', { looks: left.remainingLooks }),
        offers,
      );
}

/** Nobody sits through it: the client says whether it came, and without a report it is closed on that. */
function overDaysStage(asked: Asked, left: RetestNeed, [close, ...others]: readonly Offer[]): Stage {
  const { record, now } = asked;
  const wait = waitForReports(record, usualUntil(now));
  const offers = [
    ...(hasClientLooked(record) ? [close, wait] : [wait, close]),
    ...waitingOffers(asked, leftOf(left)),
  ];
  return stage(message('remedyTooRareToWatch'), [...offers.filter((each) => each !== undefined), ...others]);
}

/** Whether the ticket has waited for what the client says since the repair. */
const hasClientLooked = (record: TriageRecord): boolean =>
  record.waits.some(({ kind, at }) => kind === 'client' && at >= (record.asLeft?.at ?? at));

/** Before leaving, once: every source on every display; as offered, nothing of it is checked. */
function leavingOffers(record: TriageRecord): Offer[] {
  const chain = record.asFound?.chain;
  if (chain === undefined || record.leavingCheck !== null) return [];
  const answer = 'notChecked' as const;
  const pictures = picturesToCheck(chain).map((pair) => ({ ...pair, answer }));
  const check = {
    type: 'checkBeforeLeaving',
    pictures,
    sound: answer,
    usualStart: answer,
    note: '',
  } as const;
  return [afterWatch(record, check, { text: message('checkBeforeLeaving') })];
}

export const closedStage = (): Stage =>
  stage(message('ticketClosed'), [
    ...followUpOutcomes.map((heard) =>
      offering({ type: 'recordFollowUp', heard, note: '', askAgainBy: null }),
    ),
    offering({ type: 'reopen' }),
  ]);
