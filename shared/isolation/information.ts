import type { Decision } from './decision.ts';

/** Nats that a culprit not yet named is away at the least: it takes one more test. Assumed; see tests/bench. */
const oneMoreTest = 0.3;

/**
 * Says what options are worth to somebody who believes something. The measure is how far the odds of the culprit are
 * still from the odds at which it is named, in nats, averaged over who it may be; nothing is left once one is named.
 * (As in sequential tests: Chernoff 1959.) Reuses its arrays: one search at a time.
 */
export type Scorer = {
  /** Takes up a belief, the chance of each class; returns the chance of the likeliest component. */
  believe(chances: Float64Array): number;
  /** The distance from naming a culprit, in nats. */
  distance(): number;
  /** By how much an option lowers that distance on average, in nats, and the minutes it takes on average. */
  scoreOf(index: number): { gain: number; minutes: number };
};

export function scorerOf({ groups, groupOf, options, nameAt }: Decision): Scorer {
  const all = new Float64Array(groups.length);
  const part = new Float64Array(groups.length);
  const wantedOdds = Math.log(nameAt / (1 - nameAt));
  let believed: Float64Array = new Float64Array();
  let current = 0;

  /** The distance for chances that add up to `weight`, times that weight. Chances beyond naming count as none left. */
  const weighedDistance = (chances: Float64Array, weight: number): number => {
    let sum = oneMoreTest * weight;
    for (let g = 0; g < chances.length; g += 1) {
      const chance = chances[g] ?? 0;
      if (chance >= nameAt * weight) return 0;
      if (chance > 1e-9 * weight) sum += chance * (wantedOdds - Math.log(chance / (weight - chance)));
    }
    return sum;
  };

  return {
    believe(chances) {
      believed = chances;
      all.fill(0);
      for (let c = 0; c < chances.length; c += 1) {
        const group = groupOf[c] ?? 0;
        all[group] = (all[group] ?? 0) + (chances[c] ?? 0);
      }
      current = weighedDistance(all, 1);
      return all.reduce((most, chance) => Math.max(most, chance), 0);
    },
    distance: () => current,
    scoreOf(index) {
      const option = options[index];
      if (option === undefined) return { gain: 0, minutes: 0 };
      part.fill(0);
      let weight = 0;
      for (let c = 0; c < believed.length; c += 1) {
        const joint = (believed[c] ?? 0) * (option.first[c] ?? 0);
        const group = groupOf[c] ?? 0;
        part[group] = (part[group] ?? 0) + joint;
        weight += joint;
      }
      let left = weighedDistance(part, weight);
      for (let g = 0; g < part.length; g += 1) part[g] = (all[g] ?? 0) - (part[g] ?? 0);
      left += weighedDistance(part, 1 - weight);
      return {
        gain: current - left,
        minutes: weight * option.firstMin + (1 - weight) * option.secondMin,
      };
    },
  };
}
