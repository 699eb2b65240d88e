import { placeName } from '../../../shared/chain/place.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { TicketCommandType } from '../../../shared/contract/commands.ts';
import type { ChangeRecord, TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import {
  type RetestNeed,
  requiredQuietTries,
  requiredQuietWatchMin,
} from '../../../shared/isolation/index.ts';
import { minutesNeeded } from '../../../shared/isolation/wording.ts';
import { changeCatalogue, changeLabel } from '../changes/catalogue.ts';
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
  const what = `‘${changeLabel(change.kind)}’, ${placeName(chain, change.target)}`;
  const { instructions, afterwards } = changeCatalogue[change.kind];
  if (state === 'substitute.declared') {
    return step(`${what}: ${instructions}`, ['applyChange', 'withdrawChange']);
  }
  if (state === 'substitute.judged') return judgedStep(change, what, afterwards);
  return retestStep(record, change, what, now);
}

function retestStep(record: TriageRecord, change: ChangeRecord, what: string, now: string): Step {
  const watches = retestsSoFar(record, change, now);
  const running = runningWatch(record) !== null;
  const judge: TicketCommandType[] = [...(running ? (['endWatch'] as const) : []), 'judgeRetest'];
  const { verdict, needed, reasons } = judgeWatches(record, watches);
  if (verdict === 'persists') {
    return step(`${what} is in place and the fault still comes: judge it and put it back.`, judge);
  }
  if (verdict === 'cleared') {
    return step(`${what} is in place and it was quiet long enough: end the watch and judge.`, judge);
  }
  const left = remainingOf(usable(watches).length === 0 ? fullNeed(record) : needed);
  const how = left === null ? (reasons[0] ?? '') : `${left.words} without the fault to call it cleared.`;
  return step(
    `${what} is in place. Watch: ${how}`,
    [running ? 'recordOccurrence' : 'startWatch'],
    left?.minutes ?? null,
  );
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

function remainingOf(need: RetestNeed | null): { words: string; minutes: number | null } | null {
  if (need === null) return null;
  return need.mode === 'time'
    ? { words: minutesNeeded(need.remainingMin), minutes: need.remainingMin }
    : { words: `${need.remainingTries} tries in a row`, minutes: null };
}

/** The retests of a change, with the running one up to now. */
const retestsSoFar = (record: TriageRecord, { id }: ChangeRecord, now: string): Watch[] =>
  watchesFor(record, 'retest')
    .filter(({ changeId }) => changeId === id)
    .map((watch) => (watch.endedAt === null ? { ...watch, endedAt: now } : watch));

function judgedStep({ judgement, diagnostic }: ChangeRecord, what: string, afterwards: string): Step {
  const said = {
    cleared: 'cleared the fault',
    persists: 'did not clear the fault',
    inconclusive: 'says nothing yet',
  }[judgement?.verdict ?? 'inconclusive'];
  const mayStay = !diagnostic && judgement?.verdict === 'cleared';
  return step(
    `${what} ${said}. ${afterwards}`,
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
  const where = placeName(chain, change.target);
  if (occurrencesIn(watches).length > 0) {
    const running = runningWatch(record) !== null;
    return step(
      `With everything as it was, the fault is back: ‘${changeLabel(change.kind)}’ at ${where} is what takes it away.`,
      [...(running ? (['endWatch'] as const) : []), 'nameCulprit'],
    );
  }
  const usualMin = usualWaitMin(record);
  const watchedMin = watches.reduce(
    (sum, each) => sum + minutesBetween(each.startedAt, each.endedAt ?? now),
    0,
  );
  return step(
    `‘${changeLabel(change.kind)}’ at ${where} cleared it, and everything is as it was. Watch until the fault returns${usualMin === null ? '' : `: it came every ${minutesNeeded(usualMin)} before`}. Only then is it shown.`,
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
    return step(
      'The fault came after the remedy: say so, and look on from the start with what is known now.',
      [...(running ? (['endWatch'] as const) : []), 'faultCameBack'],
    );
  }
  const { verdict, needed, reasons } = judgeWatches(record, watches);
  if (verdict === 'cleared') return step('The remedy has held long enough: close the ticket.', ['close']);
  const remaining = remainingOf(usable(watches).length === 0 ? fullNeed(record) : needed);
  const left =
    remaining === null ? (reasons[0] ?? '') : `${remaining.words} without the fault before it can be closed.`;
  return step(
    `Watch whether the remedy holds: ${left}`,
    [running ? 'endWatch' : 'startWatch', 'close'],
    remaining?.minutes ?? null,
  );
}
