import { type Message, message } from '../message/message.ts';
import { chiSquaredUpperTailEven, lnFactorial } from './exact-tails.ts';
import { requiredQuietWatchMin, type TimeRecord } from './quiet-length.ts';

/** How unevenly occurrences lie in a watch. */
export type Clustering = {
  /** Variance of the counts per slot over their mean; 1 on average when occurrences come independently. */
  dispersion: number;
  /** Chance of lying at least this unevenly when they come independently at one rate, 0..1. */
  pValue: number;
};

/** An odd number, so that the degrees of freedom are even and the tail below is a finite sum. */
const mostSlots = 11;
const mostForEnumeration = 33;

/**
 * Fisher's variance test of a Poisson process on equal slots of one watch (Cox and Lewis 1966, ch. 6; the statistic
 * is Fisher's of 1925). Up to 33 occurrences the distribution is enumerated exactly, beyond by chi-squared.
 *
 * @param timesMin minutes from the start of the watch at which the fault came
 * @param watchMin length of the watch in minutes
 * @returns null with fewer than 3 occurrences, or times that don't lie within the watch
 */
export function clusteringOf(timesMin: readonly number[], watchMin: number): Clustering | null {
  const total = timesMin.length;
  if (total < 3 || !(watchMin > 0)) return null;
  if (timesMin.some((time) => !(time >= 0 && time <= watchMin))) return null;
  const slots = Math.min(total, mostSlots);
  const counts = new Array<number>(slots).fill(0);
  for (const time of timesMin) {
    const slot = Math.min(slots - 1, Math.floor((time / watchMin) * slots));
    counts[slot] = (counts[slot] ?? 0) + 1;
  }
  const sumOfSquares = counts.reduce((sum, count) => sum + count * count, 0);
  const mean = total / slots;
  const statistic = sumOfSquares / mean - total;
  const pValue =
    total <= mostForEnumeration
      ? sumOfSquaresUpperTail(sumOfSquares, total, slots)
      : chiSquaredUpperTailEven(statistic, slots - 1);
  return { dispersion: statistic / (slots - 1), pValue };
}

/** P(sum of squared slot counts >= observed) for `total` balls thrown evenly into `slots`. */
function sumOfSquaresUpperTail(observed: number, total: number, slots: number): number {
  const width = total * total + 1;
  let weights = new Map<number, number>([[0, 1]]);
  for (let slot = 0; slot < slots; slot += 1) {
    const next = new Map<number, number>();
    for (const [state, weight] of weights) {
      const used = Math.floor(state / width);
      const squares = state % width;
      for (let count = 0; used + count <= total; count += 1) {
        const key = (used + count) * width + squares + count * count;
        next.set(key, (next.get(key) ?? 0) + weight * Math.exp(-lnFactorial(count)));
      }
    }
    weights = next;
  }
  const scale = lnFactorial(total) - total * Math.log(slots);
  let tail = 0;
  for (const [state, weight] of weights) {
    if (Math.floor(state / width) === total && state % width >= observed)
      tail += Math.exp(Math.log(weight) + scale);
  }
  return Math.min(1, tail);
}

/** What comes within this many minutes of the one before belongs to the same burst; assumed. */
export const burstGapMin = 10;

/** The first occurrence of each burst. @param timesMin in minutes, in any order */
export function burstsOf(timesMin: readonly number[]): number[] {
  const sorted = timesMin.toSorted((a, b) => a - b);
  return sorted.filter((time, at) => at === 0 || time - (sorted[at - 1] ?? 0) > burstGapMin);
}

/** What is to be said of a baseline whose occurrences came in bursts: that they did, and how much longer a retest takes. */
export function clusteringWarnings(
  baseline: TimeRecord,
  risk: number,
  timesMin: readonly number[] | undefined,
): Message[] {
  if (timesMin === undefined) return [];
  const clustering = clusteringOf(timesMin, baseline.minutes);
  if (clustering === null || clustering.pValue > 0.05 || clustering.dispersion <= 1) return [];
  // Quasi-likelihood: occurrences carry 1/dispersion of the information that independent ones would (Wedderburn 1974).
  const worth = Math.max(1, baseline.occurrences / clustering.dispersion);
  const longer = requiredQuietWatchMin(worth, baseline.minutes, risk);
  const chance = clustering.pValue;
  return [
    longer === null
      ? message('cameInBursts', { chance })
      : message('cameInBurstsWatch', { chance, total: longer }),
  ];
}
