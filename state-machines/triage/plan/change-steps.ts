import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { TicketCommandType } from '../../../shared/contract/commands.ts';
import type { ChangeKind, ChangeRecord, TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import { changeCatalogue } from '../../../shared/isolation/change-catalogue.ts';
import {
  type RetestNeed,
  requiredQuietTries,
  requiredQuietWatchMin,
} from '../../../shared/isolation/index.ts';
import { message } from '../../../shared/message/message.ts';
import type { NamedPlace } from '../../../shared/message/values.ts';
import {
  changesOfRound,
  changeToConfirm,
  minutesBetween,
  occurrencesIn,
  openChange,
  runningWatch,
  verifyWatches,
  watchesFor,
} from '../record.ts';
import { judgeWatches, usable } from '../retest.ts';
import { baselineOf } from './case-of.ts';
import { type Step, step } from './step-form.ts';

export function substituteStep(record: TriageRecord, state: string, chain: Chain, now: string): Step | null {
  const change = openChange(record);
  if (change === null) return confirmStep(record, chain, now);
  const what = whatIsDone(chain, change);
  if (state === 'substitute.declared')
    return step(message('changeDeclared', what), ['applyChange', 'withdrawChange']);
  if (state === 'substitute.judged') return judgedStep(change, what);
  return retestStep(record, what, retestsSoFar(record, change, now));
}

type WhatIsDone = { change: ChangeKind; place: NamedPlace };
const whatIsDone = (chain: Chain, { kind, target }: ChangeRecord): WhatIsDone => ({
  change: kind,
  place: namedPlace(chain, target),
});

function retestStep(record: TriageRecord, what: WhatIsDone, watches: readonly Watch[]): Step {
  const running = runningWatch(record) !== null;
  const judge: TicketCommandType[] = [...(running ? (['endWatch'] as const) : []), 'judgeRetest'];
  const { verdict, needed, reasons } = judgeWatches(record, watches);
  if (verdict === 'persists') return step(message('changeStillFails', what), judge);
  if (verdict === 'cleared') return step(message('changeQuietLongEnough', what), judge);
  const left = usable(watches).length === 0 ? fullNeed(record) : needed;
  const commands: TicketCommandType[] = [running ? 'recordOccurrence' : 'startWatch'];
  if (left === null)
    return step(message('changeWatch', { ...what, how: reasons[0] ?? message('cannotBeJudged') }), commands);
  return left.mode === 'time'
    ? step(
        message('changeWatchMinutes', { ...what, minutes: left.remainingMin }),
        commands,
        left.remainingMin,
      )
    : step(message('changeWatchTries', { ...what, tries: left.remainingTries }), commands);
}

/** What a quiet retest takes in all, by the watches before any change. */
function fullNeed(record: TriageRecord): RetestNeed | null {
  const baseline = baselineOf(record);
  const { risk } = record.settings;
  if (baseline?.mode === 'time') {
    const totalWatchMin = requiredQuietWatchMin(baseline.occurrences, baseline.minutes, risk);
    return totalWatchMin === null ? null : { mode: 'time', totalWatchMin, remainingMin: totalWatchMin };
  }
  const totalTries = baseline === null ? null : requiredQuietTries(baseline.failures, baseline.tries, risk);
  return totalTries === null ? null : { mode: 'trigger', totalTries, remainingTries: totalTries };
}

/** The retests of a change, with the running one up to now. */
const retestsSoFar = (record: TriageRecord, { id }: ChangeRecord, now: string): Watch[] =>
  watchesFor(record, 'retest')
    .filter(({ changeId }) => changeId === id)
    .map((watch) => (watch.endedAt === null ? { ...watch, endedAt: now } : watch));

function judgedStep({ judgement, diagnostic }: ChangeRecord, what: WhatIsDone): Step {
  const verdict = judgement?.verdict ?? 'inconclusive';
  const mayStay = !diagnostic && verdict === 'cleared';
  return step(
    message('changeJudged', { ...what, verdict }),
    mayStay ? ['keepChange', 'restoreChange'] : ['restoreChange'],
  );
}

/** After a change cleared the fault and was put back: see it return, then name the culprit. */
function confirmStep(record: TriageRecord, chain: Chain, now: string): Step | null {
  const change = changeToConfirm(record);
  if (change === null) return null;
  const isLast = changesOfRound(record).at(-1)?.id === change.id;
  if (!isLast || !changeCatalogue[change.kind].showsCulprit) return null;
  const watches = watchesFor(record, 'confirm').filter(({ changeId }) => changeId === change.id);
  const what = whatIsDone(chain, change);
  if (occurrencesIn(watches).length > 0) {
    const running = runningWatch(record) !== null;
    return step(message('changeFaultIsBack', what), [
      ...(running ? (['endWatch'] as const) : []),
      'nameCulprit',
    ]);
  }
  const usualMin = usualWaitMin(record);
  const watchedMin = watches.reduce(
    (sum, each) => sum + minutesBetween(each.startedAt, each.endedAt ?? now),
    0,
  );
  return step(
    usualMin === null
      ? message('changeWaitForReturn', what)
      : message('changeWaitForReturnEvery', { ...what, everyMin: usualMin }),
    [runningWatch(record) === null ? 'startWatch' : 'recordOccurrence', 'nameCulprit'],
    usualMin === null ? null : Math.max(0, 3 * usualMin - watchedMin),
  );
}

/** Minutes between occurrences before any change. */
function usualWaitMin(record: TriageRecord): number | null {
  const baseline = baselineOf(record);
  return baseline?.mode === 'time' && baseline.occurrences > 0
    ? baseline.minutes / baseline.occurrences
    : null;
}

export function verifyStep(record: TriageRecord): Step {
  const watches = verifyWatches(record);
  const running = runningWatch(record) !== null;
  if (occurrencesIn(watches).length > 0) {
    return step(message('cameAfterRemedy'), [...(running ? (['endWatch'] as const) : []), 'faultCameBack']);
  }
  const { verdict, needed, reasons } = judgeWatches(record, watches);
  if (verdict === 'cleared') return step(message('remedyHeld'), ['close']);
  const left = usable(watches).length === 0 ? fullNeed(record) : needed;
  const commands: TicketCommandType[] = [running ? 'endWatch' : 'startWatch', 'close'];
  if (left === null)
    return step(message('watchRemedy', { how: reasons[0] ?? message('cannotBeJudged') }), commands);
  return left.mode === 'time'
    ? step(message('watchRemedyMinutes', { minutes: left.remainingMin }), commands, left.remainingMin)
    : step(message('watchRemedyTries', { tries: left.remainingTries }), commands);
}
