import type { Decision } from './decision.ts';
import { inOrder, nothing, type Ranked, resumeMin, runningIn } from './search-state.ts';

/** What can come of a decision, looked at to the end. */
export type ExactSearch = {
  /** All options with their expected minutes, the least first. */
  ranked: Ranked[];
  /** The index of the best option after these outcomes, oldest first; null when none is worth it, or all is settled. */
  bestAfter(outcomes: readonly { index: number; first: boolean }[]): number | null;
};

/**
 * Dynamic programming over what can be known, each option once. Null when there are more options than `most`; the
 * work grows about fivefold with each, since a quiet watch can go on. Beliefs are kept as joint chances with what was
 * seen, minutes weighed by them likewise, so that nothing is divided.
 */
export function searchExactly(decision: Decision, most: number): ExactSearch | null {
  const { options, groups, groupOf, nameAt, escalationMin } = decision;
  if (options.filter(({ after }) => after === -1).length > most) return null;
  const classes = decision.chances.length;
  const known = new Map<number, { minutes: number; best: number }>();
  const sums = new Float64Array(groups.length);
  // room for both outcomes of one option at every depth
  const room = Array.from({ length: options.length + 1 }, () => [
    new Float64Array(classes),
    new Float64Array(classes),
  ]);
  /** `seen` counts outcomes in base 3, an option's digit being 1 or 2 once it is known. */
  const keyOf = (seen: number, last: number) => seen * (options.length + 2) + last - nothing;
  const place = options.map((_, index) => 3 ** index);
  const digitOf = (isFirst: boolean) => (isFirst ? 1 : 2);

  const isSettled = (joint: Float64Array, weight: number): boolean => {
    sums.fill(0);
    for (let c = 0; c < classes; c += 1) {
      const group = groupOf[c] as number;
      sums[group] = (sums[group] as number) + (joint[c] as number);
    }
    return sums.some((sum) => sum >= nameAt * weight);
  };

  const minutesFrom = (joint: Float64Array, seen: number, last: number, depth: number): number => {
    const key = keyOf(seen, last);
    const found = known.get(key);
    if (found !== undefined) return found.minutes;
    const weight = sumOf(joint);
    const value = { minutes: escalationMin * weight, best: -1 };
    if (isSettled(joint, weight)) value.minutes = 0;
    else
      for (let index = 0; index < options.length; index += 1) {
        if (!isOpen(seen, index)) continue;
        const minutes = through(joint, seen, last, index, depth, value.minutes);
        if (minutes < value.minutes) {
          value.minutes = minutes;
          value.best = index;
        }
      }
    known.set(key, value);
    return value.minutes;
  };
  const outcomeOf = (seen: number, index: number) => Math.floor(seen / (place[index] as number)) % 3;
  const isOpen = (seen: number, index: number): boolean => {
    const after = options[index]?.after ?? -1;
    return outcomeOf(seen, index) === 0 && (after === -1 || outcomeOf(seen, after) === digitOf(true));
  };

  /** Minutes through one option, or `enough` or more as soon as it is known that they are. */
  const through = (
    joint: Float64Array,
    seen: number,
    last: number,
    index: number,
    depth: number,
    enough: number,
  ): number => {
    const option = options[index];
    const [one, other] = room[depth] as [Float64Array, Float64Array];
    if (option === undefined) return enough;
    let [oneWeight, otherWeight] = [0, 0];
    for (let c = 0; c < classes; c += 1) {
      const chance = joint[c] as number;
      const first = chance * (option.first[c] as number);
      one[c] = first;
      other[c] = chance - first;
      oneWeight += first;
      otherWeight += chance - first;
    }
    const again = resumeMin(decision, last, index);
    let minutes = oneWeight * (again + option.firstMin) + otherWeight * (again + option.secondMin);
    if (minutes >= enough) return minutes;
    const step = place[index] as number;
    if (oneWeight > 1e-12) minutes += minutesFrom(one, seen + digitOf(true) * step, index, depth + 1);
    if (minutes >= enough) return minutes;
    if (otherWeight > 1e-12) minutes += minutesFrom(other, seen + digitOf(false) * step, nothing, depth + 1);
    return minutes;
  };

  const start = runningIn(decision);
  const values = options.flatMap((_, index) =>
    isOpen(0, index)
      ? [{ index, expectedMin: through(decision.chances, 0, start, index, 0, Number.POSITIVE_INFINITY) }]
      : [],
  );
  minutesFrom(decision.chances, 0, start, 0);
  return {
    ranked: inOrder(decision, values),
    bestAfter(outcomes) {
      const seen = outcomes.reduce(
        (sum, { index, first: isFirst }) => sum + digitOf(isFirst) * (place[index] ?? 0),
        0,
      );
      const latest = outcomes.at(-1);
      const best = known.get(keyOf(seen, latest?.first === true ? latest.index : nothing))?.best ?? -1;
      return best === -1 ? null : best;
    },
  };
}

function sumOf(values: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < values.length; at += 1) sum += values[at] as number;
  return sum;
}
