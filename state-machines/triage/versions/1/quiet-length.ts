import { binomialLowerTail, hypergeometricLowerTail } from './exact-tails.ts';

/**
 * What one period of watching showed. `time`: occurrences counted over minutes of watching. `trigger`: tries of the
 * one switching that makes the fault come, and how many of them failed.
 */
export type WatchRecord =
  | { mode: 'time'; minutes: number; occurrences: number }
  | { mode: 'trigger'; tries: number; failures: number };
export type TimeRecord = Extract<WatchRecord, { mode: 'time' }>;
export type TriggerRecord = Extract<WatchRecord, { mode: 'trigger' }>;

/** The risk that version 1 took where none made sense. */
const defaultRisk = 0.05;
/** Rounding must not turn a limit that is met exactly (1/20 at 5 %) into a miss. */
export const tolerance = 1 + 1e-12;

/**
 * Minutes a retest must stay quiet before a fault seen `occurrences` times in `watchMin` minutes counts as cleared.
 * With the rates equal, all occurrences fall before the change with probability (T/(T+t))^n; solved for t at `risk`.
 * When the baseline watch ended at its n-th occurrence the risk is met exactly, otherwise it is lower.
 *
 * @returns null where no length would do: nothing seen, no watch, or counts that make no sense
 */
export function requiredQuietWatchMin(occurrences: number, watchMin: number, risk: number): number | null {
  if (!(occurrences > 0 && watchMin > 0 && risk > 0 && risk < 1)) return null;
  const needed = watchMin * Math.expm1(-Math.log(risk) / occurrences);
  return Number.isFinite(needed) ? needed : null;
}

/**
 * Tries in a row that must pass before a fault that failed `failures` of `tries` counts as cleared: the smallest m
 * with C(tries, failures) / C(tries + m, failures) at most `risk`.
 *
 * @returns null where no number would do: no failure, or counts that make no sense
 */
export function requiredQuietTries(failures: number, tries: number, risk: number): number | null {
  if (!isCount(failures) || !isCount(tries) || failures === 0 || failures > tries) return null;
  if (!(risk > 0 && risk < 1)) return null;
  const enough = (more: number) => quietTriesRisk(failures, tries, more) <= risk * tolerance;
  let high = 1;
  while (!enough(high)) high *= 2;
  let low = Math.floor(high / 2);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (enough(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** Chance that all occurrences fell into the baseline if the rate never changed, 0..1. */
export function twoRatesRisk(baseline: Omit<TimeRecord, 'mode'>, retest: Omit<TimeRecord, 'mode'>): number {
  const share = retest.minutes / (baseline.minutes + retest.minutes);
  return binomialLowerTail(retest.occurrences, baseline.occurrences + retest.occurrences, share);
}

/** One-sided Fisher's exact test: chance of as few failures in the retest if nothing changed, 0..1. */
export function twoTrialsRisk(
  baseline: Omit<TriggerRecord, 'mode'>,
  retest: Omit<TriggerRecord, 'mode'>,
): number {
  return hypergeometricLowerTail(
    retest.failures,
    baseline.failures + retest.failures,
    retest.tries,
    baseline.tries + retest.tries,
  );
}

function quietTriesRisk(failures: number, tries: number, more: number): number {
  return hypergeometricLowerTail(0, failures, more, tries + more);
}

export function isCount(value: number): boolean {
  return Number.isSafeInteger(value) && value >= 0;
}

/** The risk if it makes sense, the default otherwise. */
export function validRisk(risk: number | undefined): number {
  return risk !== undefined && risk > 0 && risk < 1 ? risk : defaultRisk;
}
