import { lnChoose } from './exact-tails.ts';
import { lookMisses, type WatchRecord } from './quiet-length.ts';

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
  if (rate.mode === 'time' && watch.mode === 'time')
    return {
      mode: 'time',
      minutes: rate.minutes + watch.minutes,
      occurrences: rate.occurrences + watch.occurrences,
    };
  if (rate.mode === 'trigger' && watch.mode === 'trigger')
    return { mode: 'trigger', tries: rate.tries + watch.tries, failures: rate.failures + watch.failures };
  if (rate.mode === 'look' && watch.mode === 'look')
    return { mode: 'look', looks: rate.looks + watch.looks, bad: rate.bad + watch.bad };
  return rate;
}

/** Chance of seeing nothing in so many minutes or tries while the fault is there, 0..1. */
export function quietChance(rate: FaultRate, exposure: number): number {
  if (rate.mode === 'none' || exposure <= 0) return 1;
  if (rate.mode === 'time') return (rate.minutes / (rate.minutes + exposure)) ** rate.occurrences;
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
    const { minutes: T, occurrences: n } = rate;
    const ratio = T / (T + exposure);
    // the integral of (T/(T+u))^n over u from 0 to the exposure
    return n === 1 ? -T * Math.log(ratio) : (T / (n - 1)) * (1 - ratio ** (n - 1));
  }
  let tries = 0;
  for (let done = 0; done < exposure; done += 1) tries += quietChance(rate, done);
  return tries * minutesPerTry;
}
