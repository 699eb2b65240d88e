import type { Decision } from './decision.ts';

/** Nats that a culprit not yet named is away at the least: it takes one more test. Assumed; see tests/bench. */
const oneMoreTest = 0.3;

/** So fine that what is read off it is right to a few ten-thousandths of a nat: far below what the figures are worth. */
const tableSteps = 8192;
const exactFrom = 0.99;
const exactly = (chance: number): number =>
  chance <= 0 || chance >= 1 ? 0 : chance * Math.log(chance / (1 - chance));
const table = Float64Array.from({ length: tableSteps + 1 }, (_, at) => exactly(at / tableSteps));

/** A chance times the logarithm of its odds, from a table: most of a plan's time would go into logarithms. */
function weighedLogOdds(chance: number): number {
  if (chance > exactFrom) return exactly(chance);
  const at = chance * tableSteps;
  const below = Math.floor(at);
  const from = table[below] as number;
  return from + (at - below) * ((table[below + 1] as number) - from);
}

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
  const many = groups.length;
  const all = new Float64Array(many);
  const one = new Float64Array(many);
  const other = new Float64Array(many);
  const wantedOdds = Math.log(nameAt / (1 - nameAt));
  let believed: Float64Array = new Float64Array();
  let current = 0;

  /** The distance for chances that add up to `weight`, times that weight. Chances beyond naming count as none left. */
  const weighedDistance = (chances: Float64Array, weight: number): number => {
    if (weight <= 0) return 0;
    const share = 1 / weight;
    let sum = 0;
    for (let g = 0; g < many; g += 1) {
      const chance = (chances[g] as number) * share;
      if (chance >= nameAt) return 0;
      sum += weighedLogOdds(chance);
    }
    return weight * (oneMoreTest + wantedOdds - sum);
  };

  return {
    believe(chances) {
      believed = chances;
      all.fill(0);
      for (let c = 0; c < chances.length; c += 1) {
        const group = groupOf[c] as number;
        all[group] = (all[group] as number) + (chances[c] as number);
      }
      current = weighedDistance(all, 1);
      let most = 0;
      for (let g = 0; g < many; g += 1) most = Math.max(most, all[g] as number);
      return most;
    },
    distance: () => current,
    scoreOf(index) {
      const option = options[index];
      if (option === undefined) return { gain: 0, minutes: 0 };
      const { first } = option;
      one.fill(0);
      let weight = 0;
      for (let c = 0; c < believed.length; c += 1) {
        const joint = (believed[c] as number) * (first[c] as number);
        const group = groupOf[c] as number;
        one[group] = (one[group] as number) + joint;
        weight += joint;
      }
      for (let g = 0; g < many; g += 1) other[g] = (all[g] as number) - (one[g] as number);
      const left = weighedDistance(one, weight) + weighedDistance(other, 1 - weight);
      return {
        gain: current - left,
        minutes: weight * option.firstMin + (1 - weight) * option.secondMin,
      };
    },
  };
}
