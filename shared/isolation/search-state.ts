import type { Decision, Option } from './decision.ts';
import type { Scorer } from './information.ts';

/** An option with the minutes to isolation that are to be expected when it is taken next, itself included. */
export type Ranked = { option: Option; expectedMin: number };

/** Where a search stands: what is believed, which options are left, and the one that just came out first (else -1). */
export type State = { chances: Float64Array; open: Uint8Array; last: number };
export type Branch = { weight: number; minutes: number; state: State };

export const startOf = (decision: Decision): State => ({
  chances: decision.chances,
  open: new Uint8Array(decision.options.length).fill(1),
  last: -1,
});

export const isOpen = ({ options }: Decision, { open, last }: State, index: number): boolean => {
  const after = options[index]?.after ?? -1;
  return open[index] === 1 && (after === -1 || after === last);
};

/** The two ways in which an option can come out, without those that can't happen. */
export function branchesOf(decision: Decision, state: State, index: number): Branch[] {
  const option = decision.options[index];
  if (option === undefined) return [];
  const { chances } = state;
  const open = state.open.slice();
  open[index] = 0;
  const first = new Float64Array(chances.length);
  const second = new Float64Array(chances.length);
  let weight = 0;
  for (let c = 0; c < chances.length; c += 1) {
    const joint = (chances[c] ?? 0) * (option.first[c] ?? 0);
    first[c] = joint;
    second[c] = (chances[c] ?? 0) - joint;
    weight += joint;
  }
  for (let c = 0; c < chances.length; c += 1) {
    first[c] = (first[c] ?? 0) / weight;
    second[c] = (second[c] ?? 0) / (1 - weight);
  }
  return [
    { weight, minutes: option.firstMin, state: { chances: first, open, last: index } },
    { weight: 1 - weight, minutes: option.secondMin, state: { chances: second, open, last: -1 } },
  ].filter((branch) => branch.weight > 1e-12);
}

/** Nats that an option is taken to gain at the least; an option that tells nothing at all isn't in the decision. */
const leastGain = 1e-6;

export type Scored = { index: number; rate: number };

export function openOptions(decision: Decision, scorer: Scorer, state: State): Scored[] {
  scorer.believe(state.chances);
  const found: Scored[] = [];
  for (let index = 0; index < decision.options.length; index += 1) {
    if (!isOpen(decision, state, index)) continue;
    const { gain, minutes } = scorer.scoreOf(index);
    found.push({ index, rate: Math.max(gain, leastGain) / minutes });
  }
  return found;
}

/** Options with their minutes, the least first. */
export function inOrder(decision: Decision, values: { index: number; expectedMin: number }[]): Ranked[] {
  return values
    .flatMap(({ index, expectedMin }): Ranked[] => {
      const option = decision.options[index];
      return option === undefined ? [] : [{ option, expectedMin }];
    })
    .sort((a, b) => a.expectedMin - b.expectedMin);
}
