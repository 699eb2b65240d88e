import type { Decision, Option } from './decision.ts';
import type { Scorer } from './information.ts';

/** An option with the minutes to isolation that are to be expected when it is taken next, itself included. */
export type Ranked = { option: Option; expectedMin: number };

/** Where a search stands: what is believed, what became of each option, and which one is in place (-2: none). */
export type State = { chances: Float64Array; known: Uint8Array; last: number };
export type Branch = { weight: number; minutes: number; state: State };

/** No option is in place; not -1, which stands for an option that goes on from none. */
export const nothing = -2;

/** The option that is in place before the first step. */
export function runningIn({ options }: Decision): number {
  const found = options.findIndex((option) => option.after === -1 && option.resumeMin > 0);
  return found === -1 ? nothing : found;
}

export const startOf = (decision: Decision): State => ({
  chances: decision.chances,
  known: new Uint8Array(decision.options.length),
  last: runningIn(decision),
});

const cameOutFirst = 1;
const cameOutSecond = 2;

const isOpen = ({ options }: Decision, { known }: State, index: number): boolean => {
  const after = options[index]?.after ?? -1;
  return known[index] === 0 && (after === -1 || known[after] === cameOutFirst);
};

/** Minutes to set up again what an option goes on from; none while it is in place. */
export const resumeMin = ({ options }: Decision, last: number, index: number): number => {
  const option = options[index];
  return option === undefined || last === index || last === option.after ? 0 : option.resumeMin;
};

/** The two ways in which an option can come out, without those that can't happen. */
export function branchesOf(decision: Decision, state: State, index: number): Branch[] {
  const option = decision.options[index];
  if (option === undefined) return [];
  const { chances } = state;
  const knownAfter = (outcome: number) => {
    const known = state.known.slice();
    known[index] = outcome;
    return known;
  };
  const again = resumeMin(decision, state.last, index);
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
    {
      weight,
      minutes: again + option.firstMin,
      state: { chances: first, known: knownAfter(cameOutFirst), last: index },
    },
    {
      weight: 1 - weight,
      minutes: again + option.secondMin,
      state: { chances: second, known: knownAfter(cameOutSecond), last: nothing },
    },
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
    found.push({
      index,
      rate: Math.max(gain, leastGain) / (resumeMin(decision, state.last, index) + minutes),
    });
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
