import { organisationDefaults } from '../contract/defaults.ts';
import { binomialLowerTail, hypergeometricLowerTail } from './exact-tails.ts';
import { powerSum } from './rhythm.ts';

/**
 * What one period of watching showed. `time`: occurrences counted over minutes of watching; `independent`, where it is
 * known when they came, the chance at index k-1 that k of them were independent of each other (`independentOf`), without
 * it all of them. `trigger`: tries of the one switching that makes the fault come, and how many of them failed. `look`: looks at a fault that is always there,
 * and in how many of them it was.
 */
export type WatchRecord =
  | { mode: 'time'; minutes: number; occurrences: number; independent?: readonly number[] }
  | { mode: 'trigger'; tries: number; failures: number }
  | { mode: 'look'; looks: number; bad: number };
export type TimeRecord = Extract<WatchRecord, { mode: 'time' }>;
export type TriggerRecord = Extract<WatchRecord, { mode: 'trigger' }>;
export type LookRecord = Extract<WatchRecord, { mode: 'look' }>;

/** Assumed: a fault that shows once in a film of two hours. */
export const assumedRatePerHour = 0.5;
/** Chance that one try of a trigger shows the fault, as long as nothing was seen; assumed. */
export const assumedChancePerTry = 0.25;
/** Chance that a look at a fault that is always there misses it: looked at too soon, or at something else; assumed. */
export const lookMisses = 0.02;
/** Fewer occurrences than this make retests so long that watching for more pays; from the table of required watches. */
export const goodBaseline = 3;
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
 * As `requiredQuietWatchMin`, for a watch whose occurrences may hang together: solved for the chance that all bursts fall
 * before the change, over the number of bursts that there may have been.
 */
export function requiredQuietAfter(baseline: Omit<TimeRecord, 'mode'>, risk: number): number | null {
  const { occurrences, minutes, independent } = baseline;
  const least = requiredQuietWatchMin(occurrences, minutes, risk);
  if (least === null || independent === undefined) return least;
  const enough = (more: number) => powerSum(independent, minutes / (minutes + more)) <= risk * tolerance;
  if (enough(least)) return least;
  let [low, high] = [least, least * 2];
  while (!enough(high)) [low, high] = [high, high * 2];
  while (high - low > high * 1e-9) {
    const middle = (low + high) / 2;
    if (enough(middle)) high = middle;
    else low = middle;
  }
  return high;
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

/** Minutes, tries or looks of quiet that `cleared` takes after this baseline; null where none would do. */
export function requiredQuiet(baseline: WatchRecord, risk: number): number | null {
  switch (baseline.mode) {
    case 'time':
      return requiredQuietAfter(baseline, risk);
    case 'trigger':
      return requiredQuietTries(baseline.failures, baseline.tries, risk);
    case 'look':
      return requiredGoodLooks(baseline, risk);
  }
}

/**
 * How many minutes of quiet watching give "no fault found" a meaning: a fault of the reported rate would stay away
 * that long with probability `risk`. At 5 % this is the rule of three, 3 over the rate (Hanley and Lippman-Hand
 * 1983, JAMA 249). With nothing reported, a rate of one in two hours is assumed.
 */
export function noFaultFoundWatchMin(reportedPerHour: number | null, risk: number): number {
  const rate = reportedPerHour !== null && reportedPerHour > 0 ? reportedPerHour : assumedRatePerHour;
  return (-Math.log(validRisk(risk)) / rate) * 60;
}

/**
 * Looks in a row that must be good before a fault that was there in `bad` of `looks` counts as cleared. One that was
 * there in each is taken to be always there; one that was not comes and goes, and looks are as tries.
 *
 * @returns null where no number would do
 */
export function requiredGoodLooks({ bad, looks }: Omit<LookRecord, 'mode'>, risk: number): number | null {
  if (bad !== looks || !isCount(looks) || looks === 0) return requiredQuietTries(bad, looks, risk);
  return risk > 0 && risk < 1 ? looksUntilSure(risk) : null;
}

/** Good looks after which a fault that is always there would have been missed with a chance of `risk` at most. */
export const looksUntilSure = (risk: number): number =>
  Math.max(1, Math.ceil(Math.log(validRisk(risk)) / Math.log(lookMisses) - 1e-9));

/** Tries after which a fault that comes on a trigger would have shown with a chance of 1 less `risk`. */
export const triesUntilSure = (risk: number): number =>
  Math.ceil(Math.log(validRisk(risk)) / Math.log(1 - assumedChancePerTry));

/** Chance of looks as good as these if nothing changed, 0..1. */
export function twoLooksRisk(baseline: Omit<LookRecord, 'mode'>, retest: Omit<LookRecord, 'mode'>): number {
  if (retest.bad === 0 && baseline.bad === baseline.looks) return lookMisses ** retest.looks;
  return twoTrialsRisk(asTries(baseline), asTries(retest));
}

const asTries = ({ bad, looks }: Omit<LookRecord, 'mode'>) => ({ failures: bad, tries: looks });

/**
 * Chance that as few independent occurrences fell into the retest if the rate never changed, 0..1: the exact test, over
 * the numbers of them that there may have been on both sides.
 */
export function twoRatesRisk(baseline: Omit<TimeRecord, 'mode'>, retest: Omit<TimeRecord, 'mode'>): number {
  const share = retest.minutes / (baseline.minutes + retest.minutes);
  let risk = 0;
  for (const [before, chanceBefore] of mayBe(baseline))
    for (const [after, chanceAfter] of mayBe(retest))
      risk += chanceBefore * chanceAfter * binomialLowerTail(after, before + after, share);
  return Math.min(1, risk);
}

/**
 * Minutes in which the fault has to stay away from now on until the retest, in which it came, shows that it comes more
 * rarely; 0 where it does by now, infinite where nothing would.
 */
export function minutesUntilRarer(
  baseline: Omit<TimeRecord, 'mode'>,
  retest: Omit<TimeRecord, 'mode'>,
  risk: number,
): number {
  const shows = (more: number): boolean =>
    twoRatesRisk(baseline, { ...retest, minutes: retest.minutes + more }) <= risk * tolerance;
  if (baseline.occurrences === 0) return Number.POSITIVE_INFINITY;
  if (shows(0)) return 0;
  let [before, enough] = [0, 1];
  while (!shows(enough)) [before, enough] = [enough, 2 * enough];
  while (enough - before > 0.01) {
    const middle = (before + enough) / 2;
    if (shows(middle)) enough = middle;
    else before = middle;
  }
  return enough;
}

/** Numbers of independent occurrences that there may have been, each with its chance. */
const mayBe = ({
  occurrences,
  independent,
}: Omit<TimeRecord, 'mode'>): readonly (readonly [number, number])[] =>
  independent === undefined || occurrences === 0
    ? [[occurrences, 1]]
    : independent.flatMap((chance, at) => (chance > 1e-12 ? [[at + 1, chance] as const] : []));

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
  return risk !== undefined && risk > 0 && risk < 1 ? risk : organisationDefaults.risk;
}
