import { lnChoose } from './exact-tails.ts';
import { lookMisses, type TimeRecord, type WatchRecord } from './quiet-length.ts';
import { powerSum } from './rhythm.ts';

/**
 * How often the fault comes, as known from watching it: a gamma distribution of the rate with the occurrences as
 * shape and the minutes as inverse scale, or for a trigger a beta distribution Beta(failures, passes + 1) of the
 * chance per try. With these, the chance of a quiet spell while the fault is there is exactly the risk that the
 * retest's test gives for it, (T/(T+t))^n or C(N,x)/C(N+m,x). `none`: never seen, so quiet says nothing.
 */
export type FaultRate = WatchRecord | { mode: 'none' };

export const rateOf = (baseline: WatchRecord | null): FaultRate =>
  baseline === null || seenIn(baseline) === 0 ? { mode: 'none' } : baseline;

/** Occurrences, failed tries or bad looks, by the mode of the watch. */
export function seenIn(watch: WatchRecord): number {
  switch (watch.mode) {
    case 'time':
      return watch.occurrences;
    case 'trigger':
      return watch.failures;
    case 'look':
      return watch.bad;
  }
}

/** Minutes, tries or looks, by the mode of the watch. */
export function exposureOf(watch: WatchRecord): number {
  switch (watch.mode) {
    case 'time':
      return watch.minutes;
    case 'trigger':
      return watch.tries;
    case 'look':
      return watch.looks;
  }
}

/** The rate after more watching in which the fault was there; a watch of the other mode adds nothing. */
export function withWatch(rate: FaultRate, watch: WatchRecord): FaultRate {
  if (rate.mode === 'none') return rateOf(watch);
  if (rate.mode === 'time' && watch.mode === 'time') return togetherInTime(rate, watch);
  if (rate.mode === 'trigger' && watch.mode === 'trigger')
    return { mode: 'trigger', tries: rate.tries + watch.tries, failures: rate.failures + watch.failures };
  if (rate.mode === 'look' && watch.mode === 'look')
    return { mode: 'look', looks: rate.looks + watch.looks, bad: rate.bad + watch.bad };
  return rate;
}

/**
 * Two watches of one rate. Quiet makes fewer independent occurrences likelier, by what their rate makes of it; those of
 * both watches add up.
 */
function togetherInTime(rate: TimeRecord, watch: TimeRecord): TimeRecord {
  const minutes = rate.minutes + watch.minutes;
  const occurrences = rate.occurrences + watch.occurrences;
  if (rate.independent === undefined && watch.independent === undefined)
    return { mode: 'time', minutes, occurrences };
  const before = afterQuiet(numbersOf(rate), minutes === 0 ? 1 : rate.minutes / minutes);
  const then = numbersOf(watch);
  const independent = new Array<number>(before.length + then.length - 2).fill(0);
  for (const [k, first] of before.entries())
    for (const [m, second] of then.entries())
      if (k + m > 0) independent[k + m - 1] = (independent[k + m - 1] ?? 0) + first * second;
  return { mode: 'time', minutes, occurrences, independent };
}

/** Chance of each number of independent occurrences, from none; what reports count for lies between two of them. */
function numbersOf({ occurrences, independent }: TimeRecord): readonly number[] {
  if (occurrences > 0 && independent !== undefined) return [0, ...independent];
  return Array.from({ length: Math.ceil(occurrences) + 1 }, (_, k) =>
    Math.max(0, 1 - Math.abs(occurrences - k)),
  );
}

function afterQuiet(numbers: readonly number[], share: number): readonly number[] {
  const weights = numbers.map((chance, k) => chance * share ** k);
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return sum > 0 ? weights.map((weight) => weight / sum) : numbers;
}

/** Chance of seeing nothing in so many minutes or tries while the fault is there, 0..1. */
export function quietChance(rate: FaultRate, exposure: number): number {
  if (rate.mode === 'none' || exposure <= 0) return 1;
  if (rate.mode === 'time') {
    const share = rate.minutes / (rate.minutes + exposure);
    return rate.independent === undefined ? share ** rate.occurrences : powerSum(rate.independent, share);
  }
  if (rate.mode === 'look' && rate.bad === rate.looks) return lookMisses ** exposure;
  const [tries, failed] = [exposureOf(rate), seenIn(rate)];
  return Math.exp(lnChoose(tries, failed) - lnChoose(tries + exposure, failed));
}

/**
 * Minutes spent on average on a watch that ends when the fault comes, or after `exposure` minutes or tries, while
 * the fault is there.
 */
export function minutesUntilSeen(rate: FaultRate, exposure: number, minutesPerTry: number): number {
  if (rate.mode === 'none') return exposure;
  if (rate.mode === 'time') {
    const { minutes: T, occurrences: n, independent } = rate;
    const ratio = T / (T + exposure);
    // the integral of (T/(T+u))^k over u from 0 to the exposure
    const until = (k: number) => (k === 1 ? -T * Math.log(ratio) : (T / (k - 1)) * (1 - ratio ** (k - 1)));
    return independent?.reduce((sum, chance, at) => sum + chance * until(at + 1), 0) ?? until(n);
  }
  let tries = 0;
  for (let done = 0; done < exposure; done += 1) tries += quietChance(rate, done);
  return tries * minutesPerTry;
}
