import { clusteringOf } from './clustering.ts';
import {
  isCount,
  requiredQuietTries,
  requiredQuietWatchMin,
  type TimeRecord,
  type TriggerRecord,
  tolerance,
  twoRatesRisk,
  twoTrialsRisk,
  validRisk,
  type WatchRecord,
} from './quiet-length.ts';
import { minutesNeeded, minutesWatched, percent, times } from './wording.ts';

export type RetestJudgement = {
  verdict: 'cleared' | 'persists' | 'inconclusive';
  /** Chance (0..1) of a retest as quiet as this one if nothing had changed; null when it can't be computed. */
  riskOfBeingFooled: number | null;
  /** Plain sentences that lead to the verdict. */
  reasons: string[];
  warnings: string[];
};

export type RetestOptions = {
  /** Chance taken of calling a fault cleared that is still there, 0..1; the default one when left out. */
  risk?: number;
  /** Minutes from the start of the baseline watch at which the fault came; lets clustering be checked. */
  occurrenceTimesMin?: number[];
  /** False when the retest used another trigger than the baseline. */
  sameTrigger?: boolean;
};

/**
 * Judges the retest of one change against the watch before it. Faults in time: exact conditional test of two Poisson
 * rates (Przyborowski and Wilenski 1940, Biometrika 31). Faults on a trigger: Fisher's exact test, one-sided (Fisher
 * 1935, The Design of Experiments). A fault that was seen during the retest is never `cleared`.
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
  const fault = recordFault(baseline, 'before the change') ?? recordFault(retest, 'of the retest');
  if (fault !== null) return inconclusive(fault);
  const seen = eventsIn(retest);
  if (baseline.mode !== retest.mode || options.sameTrigger === false) {
    const why =
      baseline.mode === retest.mode
        ? 'The retest used another trigger than the watch before the change, so the two can’t be compared.'
        : 'One was watched over time and the other by a trigger, so the two can’t be compared.';
    return seen > 0
      ? persists(null, [
          `The fault came ${times(seen)} during the retest: it is still there.`,
          `${why} Whether it comes less often can’t be said.`,
        ])
      : inconclusive(`${why} Repeat the retest the way the fault was reproduced.`);
  }
  if (eventsIn(baseline) === 0) {
    return seen > 0
      ? persists(null, [
          `The fault came ${times(seen)} during the retest: it is there with the change in place.`,
          'It was not seen before the change, so how often it came then is not known.',
        ])
      : inconclusive(
          'The fault was not seen before the change, so not seeing it now says nothing. Reproduce it first.',
        );
  }
  return baseline.mode === 'time'
    ? judgeTime(baseline, retest as TimeRecord, risk, options.occurrenceTimesMin)
    : judgeTrigger(baseline, retest as TriggerRecord, risk);
}

function judgeTime(
  baseline: TimeRecord,
  retest: TimeRecord,
  risk: number,
  timesMin: readonly number[] | undefined,
): RetestJudgement {
  const p = twoRatesRisk(baseline, retest);
  const before = `${times(baseline.occurrences)} in ${minutesWatched(baseline.minutes)} before`;
  const warnings = clusteringWarnings(baseline, risk, timesMin);
  if (retest.occurrences > 0) {
    const now = `${times(retest.occurrences)} in ${minutesWatched(retest.minutes)} with the change`;
    const more = twoRatesRisk(retest, baseline);
    return persists(p, [...stillThere(now, before, p, more, risk)], [...warnings, ...newTrouble(more, risk)]);
  }
  const totalWatchMin = requiredQuietWatchMin(baseline.occurrences, baseline.minutes, risk);
  if (totalWatchMin === null) return inconclusive('No length of quiet watching would settle this.');
  const remainingMin = Math.max(0, totalWatchMin - retest.minutes);
  const cleared = p <= risk * tolerance;
  return {
    verdict: cleared ? 'cleared' : 'inconclusive',
    riskOfBeingFooled: p,
    reasons: quietReasons(
      `${minutesWatched(retest.minutes)} without the fault, ${before}`,
      p,
      cleared,
      risk,
      [
        `Watch ${minutesNeeded(remainingMin)} more without the fault (${minutesNeeded(totalWatchMin)} in all).`,
      ],
    ),
    warnings,
  };
}

function judgeTrigger(baseline: TriggerRecord, retest: TriggerRecord, risk: number): RetestJudgement {
  const p = twoTrialsRisk(baseline, retest);
  const before = `${baseline.failures} of ${baseline.tries} before`;
  if (retest.failures > 0) {
    const now = `${retest.failures} of ${retest.tries} tries failed with the change`;
    const more = twoTrialsRisk(retest, baseline);
    return persists(p, stillThere(now, before, p, more, risk), newTrouble(more, risk));
  }
  const totalTries = requiredQuietTries(baseline.failures, baseline.tries, risk);
  if (totalTries === null) return inconclusive('No number of tries would settle this.');
  const remainingTries = Math.max(0, totalTries - retest.tries);
  const cleared = p <= risk * tolerance;
  return {
    verdict: cleared ? 'cleared' : 'inconclusive',
    riskOfBeingFooled: p,
    reasons: quietReasons(`None of ${retest.tries} tries failed, ${before}`, p, cleared, risk, [
      `Try ${remainingTries} more times without a failure (${totalTries} in a row in all).`,
    ]),
    warnings: [],
  };
}

function quietReasons(seen: string, p: number, cleared: boolean, risk: number, next: string[]): string[] {
  const chance = `If nothing had changed, that would happen by chance with ${percent(p)}`;
  return cleared
    ? [`${seen}.`, `${chance}; the limit is ${percent(risk)}.`]
    : [`${seen}.`, `${chance}, more than the limit of ${percent(risk)}.`, ...next];
}

function stillThere(now: string, before: string, fewer: number, more: number, risk: number): string[] {
  const first = `The fault is still there: ${now}, ${before}.`;
  if (fewer <= risk * tolerance)
    return [
      first,
      `It clearly comes less often (by chance alone with ${percent(fewer)}), but less often is not cleared.`,
    ];
  if (more <= risk * tolerance)
    return [first, `It clearly comes more often than before (by chance alone with ${percent(more)}).`];
  return [first, 'Whether it comes less often can’t be told from this.'];
}

function newTrouble(more: number, risk: number): string[] {
  return more <= risk * tolerance
    ? ['The fault comes more often with the change in place: check that the change itself was made properly.']
    : [];
}

function clusteringWarnings(
  baseline: TimeRecord,
  risk: number,
  timesMin: readonly number[] | undefined,
): string[] {
  if (timesMin === undefined) return [];
  const clustering = clusteringOf(timesMin, baseline.minutes);
  if (clustering === null || clustering.pValue > 0.05 || clustering.dispersion <= 1) return [];
  // Quasi-likelihood: occurrences carry 1/dispersion of the information that independent ones would (Wedderburn 1974).
  const worth = Math.max(1, baseline.occurrences / clustering.dispersion);
  const longer = requiredQuietWatchMin(worth, baseline.minutes, risk);
  const advice = longer === null ? '' : ` To allow for that, watch ${minutesNeeded(longer)} in all.`;
  return [
    `Before the change the fault came in bursts (independent occurrences lie this unevenly with ${percent(clustering.pValue)}), so the usual length of the retest is too short.${advice}`,
  ];
}

function recordFault(record: WatchRecord, which: string): string | null {
  if (record.mode === 'trigger') {
    if (!isCount(record.tries) || !isCount(record.failures))
      return `The tries ${which} are no whole numbers.`;
    return record.failures > record.tries ? `More tries failed than were made, in the watch ${which}.` : null;
  }
  if (!isCount(record.occurrences)) return `The occurrences in the watch ${which} are no whole number.`;
  if (!(Number.isFinite(record.minutes) && record.minutes >= 0))
    return `The length of the watch ${which} is not known.`;
  return record.minutes === 0 && record.occurrences > 0 ? `The watch ${which} has no length.` : null;
}

function persists(p: number | null, reasons: string[], warnings: string[] = []): RetestJudgement {
  return { verdict: 'persists', riskOfBeingFooled: p, reasons, warnings };
}

function inconclusive(reason: string): RetestJudgement {
  return { verdict: 'inconclusive', riskOfBeingFooled: null, reasons: [reason], warnings: [] };
}

function eventsIn(record: WatchRecord): number {
  return record.mode === 'time' ? record.occurrences : record.failures;
}
