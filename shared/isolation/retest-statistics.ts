import { type Message, message } from '../message/message.ts';
import { seenIn } from './fault-rate.ts';
import {
  isCount,
  type LookRecord,
  requiredGoodLooks,
  requiredQuietAfter,
  requiredQuietTries,
  type TimeRecord,
  type TriggerRecord,
  tolerance,
  twoLooksRisk,
  twoRatesRisk,
  twoTrialsRisk,
  validRisk,
  type WatchRecord,
} from './quiet-length.ts';
import { expectedIndependent } from './rhythm.ts';

export {
  looksUntilSure,
  noFaultFoundWatchMin,
  requiredQuietTries,
  requiredQuietWatchMin,
  triesUntilSure,
  type WatchRecord,
} from './quiet-length.ts';

export type RetestNeed =
  | { mode: 'time'; totalWatchMin: number; remainingMin: number }
  | { mode: 'trigger'; totalTries: number; remainingTries: number }
  | { mode: 'look'; totalLooks: number; remainingLooks: number };

export type RetestJudgement = {
  verdict: 'cleared' | 'persists' | 'inconclusive';
  /** Chance (0..1) of a retest as quiet as this one if nothing had changed; null when it can't be computed. */
  riskOfBeingFooled: number | null;
  /** What a quiet retest takes in all, and what is left of it; null when no length of quiet would settle it. */
  needed: RetestNeed | null;
  /** What leads to the verdict. */
  reasons: Message[];
  warnings: Message[];
};

export type RetestOptions = {
  /** Chance taken of calling a fault cleared that is still there, 0..1; the default one when left out. */
  risk?: number;
  /** False when the retest used another trigger than the baseline. */
  sameTrigger?: boolean;
};

/**
 * Judges the retest of one change against the watch before it. Faults in time: exact conditional test of two Poisson
 * rates (Przyborowski and Wilenski 1940, Biometrika 31). Faults on a trigger: Fisher's exact test, one-sided (Fisher
 * 1935, The Design of Experiments). Faults that are always there: a good look after bad ones, which a look at something
 * else explains with a small, assumed chance. A fault that was seen during the retest is never `cleared`.
 *
 * @param baseline what was seen before the change
 * @param retest what was seen with the change in place
 * @returns `inconclusive` with its reason for input that can't be judged; throws nothing
 */
export function judgeRetest(
  baseline: WatchRecord,
  retest: WatchRecord,
  options: RetestOptions = {},
): RetestJudgement {
  const risk = validRisk(options.risk);
  const fault = recordFault(baseline, faultsBefore) ?? recordFault(retest, faultsOfRetest);
  if (fault !== null) return inconclusive(fault);
  const seen = seenIn(retest);
  if (baseline.mode !== retest.mode || options.sameTrigger === false) {
    const isSameMode = baseline.mode === retest.mode;
    return seen > 0
      ? persists(null, [
          message('seenDuringRetest', { occurrences: seen }),
          message(isSameMode ? 'otherTriggerStillThere' : 'otherModeStillThere'),
        ])
      : inconclusive(message(isSameMode ? 'otherTriggerRepeat' : 'otherModeRepeat'));
  }
  if (seenIn(baseline) === 0) {
    return seen > 0
      ? persists(null, [
          message('seenWithChangeInPlace', { occurrences: seen }),
          message('baselineRateUnknown'),
        ])
      : inconclusive(message('notSeenBeforeChange'));
  }
  switch (baseline.mode) {
    case 'time':
      return judgeTime(baseline, retest as TimeRecord, risk);
    case 'trigger':
      return judgeTrigger(baseline, retest as TriggerRecord, risk);
    case 'look':
      return judgeLooks(baseline, retest as LookRecord, risk);
  }
}

export type SureByNow = {
  /** 0..1: one less the chance of being fooled; null once the fault came, or when there is no baseline. */
  sure: number | null;
  riskOfBeingFooled: number | null;
  needed: RetestNeed | null;
  /** 0..1 of the quiet watch or tries that `cleared` needs; null when none would do. */
  progress: number | null;
  sentence: Message;
};

/**
 * What a retest that is still running says by now, for a live display. Looking often does no harm: the one way to
 * `cleared` is unbroken quiet up to the needed length, however often somebody looks on the way.
 *
 * @param soFar minutes (or tries) up to now, and what was seen in them
 */
export function howSureByNow(
  baseline: WatchRecord,
  soFar: WatchRecord,
  options: RetestOptions = {},
): SureByNow {
  const judgement = judgeRetest(baseline, soFar, options);
  const { needed, riskOfBeingFooled, verdict } = judgement;
  if (verdict === 'persists' || riskOfBeingFooled === null || needed === null) {
    return {
      sure: null,
      riskOfBeingFooled,
      needed: null,
      progress: null,
      sentence: judgement.reasons[0] ?? message('cannotBeJudged'),
    };
  }
  const { total, remaining } = amountsOf(needed);
  const sure = 1 - riskOfBeingFooled;
  const sentence = message(sureSoFarCodes[needed.mode], { sure, remaining });
  return {
    sure,
    riskOfBeingFooled,
    needed,
    progress: Math.min(1, (total - remaining) / total),
    sentence: verdict === 'cleared' ? message('sureEnough', { sure }) : sentence,
  };
}

const sureSoFarCodes = {
  time: 'sureSoFarWatch',
  trigger: 'sureSoFarTry',
  look: 'sureSoFarLook',
} as const satisfies Record<RetestNeed['mode'], string>;

/** Minutes, tries or looks of a quiet retest in all, and what is left of them. */
export function amountsOf(need: RetestNeed): { total: number; remaining: number } {
  switch (need.mode) {
    case 'time':
      return { total: need.totalWatchMin, remaining: need.remainingMin };
    case 'trigger':
      return { total: need.totalTries, remaining: need.remainingTries };
    case 'look':
      return { total: need.totalLooks, remaining: need.remainingLooks };
  }
}

function judgeTime(baseline: TimeRecord, retest: TimeRecord, risk: number): RetestJudgement {
  const p = twoRatesRisk(baseline, retest);
  const together = cameTogether(baseline);
  const before = { before: baseline.occurrences, watchedBefore: baseline.minutes };
  if (retest.occurrences > 0) {
    const now = { now: retest.occurrences, watched: retest.minutes };
    const more = twoRatesRisk(retest, baseline);
    const seen = message('stillThereInTime', { ...now, ...before });
    return persists(p, [seen, frequency(p, more, risk)], newTrouble(more, risk));
  }
  const total = requiredQuietAfter(baseline, risk);
  if (total === null) return inconclusive(message('noQuietSettles'));
  const remaining = Math.max(0, total - retest.minutes);
  const cleared = p <= risk * tolerance;
  const quiet = message('quietMinutes', { watched: retest.minutes, ...before });
  return {
    verdict: cleared ? 'cleared' : 'inconclusive',
    riskOfBeingFooled: p,
    needed: { mode: 'time', totalWatchMin: total, remainingMin: cleared ? 0 : remaining },
    reasons: cleared
      ? [quiet, ...together, message('chanceBelowLimit', { chance: p, limit: risk })]
      : [
          quiet,
          ...together,
          message('chanceAboveLimit', { chance: p, limit: risk }),
          message('watchMore', { remaining, total }),
        ],
    warnings: [],
  };
}

/** Occurrences that probably hang together count for less, and a retest has to be longer; said where it makes a difference. */
function cameTogether({ occurrences, independent }: TimeRecord): Message[] {
  if (independent === undefined) return [];
  const count = Math.max(1, Math.round(expectedIndependent(independent)));
  return count < occurrences ? [message('cameTogether', { occurrences, independent: count })] : [];
}

function judgeTrigger(baseline: TriggerRecord, retest: TriggerRecord, risk: number): RetestJudgement {
  const p = twoTrialsRisk(baseline, retest);
  const before = { failedBefore: baseline.failures, triesBefore: baseline.tries };
  if (retest.failures > 0) {
    const more = twoTrialsRisk(retest, baseline);
    const seen = message('stillThereInTries', { failed: retest.failures, tries: retest.tries, ...before });
    return persists(p, [seen, frequency(p, more, risk)], newTrouble(more, risk));
  }
  const total = requiredQuietTries(baseline.failures, baseline.tries, risk);
  if (total === null) return inconclusive(message('noTriesSettle'));
  const remaining = Math.max(0, total - retest.tries);
  const cleared = p <= risk * tolerance;
  const quiet = message('quietTries', { tries: retest.tries, ...before });
  return {
    verdict: cleared ? 'cleared' : 'inconclusive',
    riskOfBeingFooled: p,
    needed: { mode: 'trigger', totalTries: total, remainingTries: cleared ? 0 : remaining },
    reasons: cleared
      ? [quiet, message('chanceBelowLimit', { chance: p, limit: risk })]
      : [
          quiet,
          message('chanceAboveLimit', { chance: p, limit: risk }),
          message('tryMore', { remaining, total }),
        ],
    warnings: [],
  };
}

function judgeLooks(baseline: LookRecord, retest: LookRecord, risk: number): RetestJudgement {
  const before = { badBefore: baseline.bad, looksBefore: baseline.looks };
  const p = twoLooksRisk(baseline, retest);
  if (retest.bad > 0)
    return persists(p, [message('stillThereAtLook', { bad: retest.bad, looks: retest.looks, ...before })]);
  const total = requiredGoodLooks(baseline, risk);
  if (total === null) return inconclusive(message('noLooksSettle'));
  const cleared = p <= risk * tolerance;
  const remaining = cleared ? 0 : Math.max(0, total - retest.looks);
  const good = message('goodLooks', { looks: retest.looks, ...before });
  return {
    verdict: cleared ? 'cleared' : 'inconclusive',
    riskOfBeingFooled: p,
    needed: { mode: 'look', totalLooks: total, remainingLooks: remaining },
    reasons: cleared
      ? [good, message('chanceBelowLimit', { chance: p, limit: risk })]
      : [
          good,
          message('chanceAboveLimit', { chance: p, limit: risk }),
          message('lookMore', { remaining, total }),
        ],
    warnings: [],
  };
}

/** Whether a fault that is still there comes less often, or more often. */
function frequency(fewer: number, more: number, risk: number): Message {
  if (fewer <= risk * tolerance) return message('comesLessOften', { chance: fewer });
  return more <= risk * tolerance
    ? message('comesMoreOften', { chance: more })
    : message('rateNotComparable');
}

const newTrouble = (more: number, risk: number): Message[] =>
  more <= risk * tolerance ? [message('moreOftenWithChange')] : [];

type RecordFaults = Record<
  'triesNotWhole' | 'moreFailedThanTried' | 'occurrencesNotWhole' | 'lengthUnknown' | 'noLength',
  Message
>;
const faultsBefore: RecordFaults = {
  triesNotWhole: message('triesBeforeNotWhole'),
  moreFailedThanTried: message('moreFailedThanTriedBefore'),
  occurrencesNotWhole: message('occurrencesBeforeNotWhole'),
  lengthUnknown: message('lengthBeforeUnknown'),
  noLength: message('watchBeforeHasNoLength'),
};
const faultsOfRetest: RecordFaults = {
  triesNotWhole: message('triesOfRetestNotWhole'),
  moreFailedThanTried: message('moreFailedThanTriedInRetest'),
  occurrencesNotWhole: message('occurrencesOfRetestNotWhole'),
  lengthUnknown: message('lengthOfRetestUnknown'),
  noLength: message('retestHasNoLength'),
};

/** What is wrong with a record that can't be judged. */
function recordFault(record: WatchRecord, faults: RecordFaults): Message | null {
  if (record.mode === 'look') return record.bad > record.looks ? faults.moreFailedThanTried : null;
  if (record.mode === 'trigger') {
    if (!isCount(record.tries) || !isCount(record.failures)) return faults.triesNotWhole;
    return record.failures > record.tries ? faults.moreFailedThanTried : null;
  }
  if (!isCount(record.occurrences)) return faults.occurrencesNotWhole;
  if (!(Number.isFinite(record.minutes) && record.minutes >= 0)) return faults.lengthUnknown;
  return record.minutes === 0 && record.occurrences > 0 ? faults.noLength : null;
}

function persists(p: number | null, reasons: Message[], warnings: Message[] = []): RetestJudgement {
  return { verdict: 'persists', riskOfBeingFooled: p, needed: null, reasons, warnings };
}

function inconclusive(reason: Message): RetestJudgement {
  return { verdict: 'inconclusive', riskOfBeingFooled: null, needed: null, reasons: [reason], warnings: [] };
}
