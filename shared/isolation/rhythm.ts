import type { Pattern } from '../contract/triage.ts';
import { lnFactorial } from './exact-tails.ts';

/**
 * In what chance of 1 occurrences come in bursts, by how the fault was told to come; assumed. Who says "at random" rarely
 * had a clock at hand. A told burst is taken together before (`burstsOf`); what is left may still hang together.
 */
const mayComeInBursts: Record<Pattern['kind'], number> = {
  always: 0,
  trigger: 0,
  random: 0.35,
  bursts: 0.35,
  warm: 0.35,
  notKnown: 0.5,
};

/** Chances that another occurrence follows in the same burst, each as likely as the others; assumed. */
const followChances = [0.3, 0.5, 0.7, 0.85];
/**
 * Mean minutes until it follows, each as likely as the others; assumed. What follows later than these make likely does not
 * mislead a retest that is as long as single occurrences ask for (`npm run bench -- retests`).
 */
const followMin = [1, 3];
/** Faults that come by themselves every few minutes are rare among those somebody has to wait for; assumed. */
const rarelyFasterThanMin = 5;
/** Of more occurrences than this, each burst counts once: their number settles any retest by itself. */
const mostWeighed = 40;

/**
 * How many of the occurrences of a watch were independent of each other: at index k-1 the chance that k were. What
 * follows in a burst says nothing more of how often bursts come, and quiet between bursts is not the fault's absence.
 *
 * Bursts come as a Poisson process of unknown rate (its prior 1/rate, damped for rates above one in a few minutes);
 * after each occurrence another follows with a fixed chance, after an exponential time (a cluster process in the sense
 * of Neyman and Scott 1958, J. R. Stat. Soc. B 20). All ways to part the occurrences into bursts are summed, and
 * weighed against a steady rate. For a steady rate alone the result is the exact conditional test's.
 *
 * @param timesMin minutes of watching from its start at which the fault came, in any order, at least one
 * @param watchMin length of the watch, in minutes
 * @returns chances that add up to 1; as many as there are occurrences
 */
export function independentOf(
  timesMin: readonly number[],
  watchMin: number,
  told: Pattern['kind'],
): readonly number[] {
  const bursts = mayComeInBursts[told];
  const times = timesMin.length > mostWeighed ? burstsOf(timesMin) : timesMin.toSorted((a, b) => a - b);
  const n = times.length;
  if (n <= 1 || n > mostWeighed || bursts === 0) return surely(n);
  const gaps = times.slice(1).map((time, at) => time - (times[at] ?? 0));
  const quietAtEnd = Math.max(0, watchMin - (times[n - 1] ?? 0));
  const span = watchMin + rarelyFasterThanMin;
  // In units of the whole span, so that no length runs out of range.
  const ofRate = (k: number) => Math.exp(lnFactorial(k - 1) - lnFactorial(n - 1));
  const weights = new Array<number>(n).fill(0);
  weights[n - 1] = 1 - bursts;
  const each = bursts / (followChances.length * followMin.length);
  for (const follows of followChances) {
    for (const after of followMin) {
      const ended = 1 - follows + follows * Math.exp(-quietAtEnd / after);
      for (const [at, ways] of partings(gaps, { follows, after, span }).entries())
        weights[at] = (weights[at] ?? 0) + each * ended * ways * ofRate(at + 1);
    }
  }
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight) => weight / sum);
}

const surely = (n: number): readonly number[] => Array.from({ length: n }, (_, at) => (at === n - 1 ? 1 : 0));

/** Density of the gaps for each number of bursts, all ways to part them summed. */
function partings(
  gaps: readonly number[],
  { follows, after, span }: { follows: number; after: number; span: number },
): number[] {
  let ways = [1];
  for (const gap of gaps) {
    const within = ((follows * span) / after) * Math.exp(-gap / after);
    const next = new Array<number>(ways.length + 1).fill(0);
    for (const [at, way] of ways.entries()) {
      next[at] = (next[at] ?? 0) + way * within;
      next[at + 1] = (next[at + 1] ?? 0) + way * (1 - follows);
    }
    ways = next;
  }
  return ways;
}

/** Sum over k of the chance that k were independent, times share to the power of k. */
export function powerSum(independent: readonly number[], share: number): number {
  let sum = 0;
  for (let at = independent.length - 1; at >= 0; at -= 1) sum = (sum + (independent[at] ?? 0)) * share;
  return sum;
}

/** How many were independent, on average. */
export const expectedIndependent = (independent: readonly number[]): number =>
  independent.reduce((sum, chance, at) => sum + chance * (at + 1), 0);

/** What comes within this many minutes of the one before belongs to the same burst, where bursts were told; assumed. */
export const burstGapMin = 10;

/** The first occurrence of each burst. @param timesMin in minutes, in any order */
export function burstsOf(timesMin: readonly number[]): number[] {
  const sorted = timesMin.toSorted((a, b) => a - b);
  return sorted.filter((time, at) => at === 0 || time - (sorted[at - 1] ?? 0) > burstGapMin);
}
