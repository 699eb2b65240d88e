import type { Decision } from './decision.ts';
import { scorerOf } from './information.ts';
import {
  branchesOf,
  inOrder,
  isOpen,
  openOptions,
  type Ranked,
  type State,
  startOf,
} from './search-state.ts';

/** What can come of a decision, looked at to the end. */
export type ExactSearch = {
  /** All options with their expected minutes, the least first. */
  ranked: Ranked[];
  /** The index of the best option after these outcomes, oldest first; null when none is worth it, or all is settled. */
  bestAfter(outcomes: readonly { index: number; first: boolean }[]): number | null;
};

/**
 * Dynamic programming over what can be known, each option once. Null when there are more options than `most`; the
 * work grows about fivefold with each, since a quiet watch can go on.
 */
export function searchExactly(decision: Decision, most: number): ExactSearch | null {
  const scorer = scorerOf(decision);
  const start = startOf(decision);
  if (decision.options.filter(({ after }) => after === -1).length > most) return null;
  const { options } = decision;
  const known = new Map<number, { minutes: number; best: number | null }>();
  /** `seen` counts outcomes in base 3, an option's digit being 1 or 2 once it is known. */
  const keyOf = (seen: number, last: number) => seen * (options.length + 1) + last + 1;
  const digitOf = (isFirst: boolean) => (isFirst ? 1 : 2);
  const minutesFrom = (state: State, seen: number): number => {
    const key = keyOf(seen, state.last);
    const found = known.get(key);
    if (found !== undefined) return found.minutes;
    const isSettled = scorer.believe(state.chances) >= decision.nameAt;
    let value: { minutes: number; best: number | null } = {
      minutes: isSettled ? 0 : decision.escalationMin,
      best: null,
    };
    for (let index = 0; index < options.length && !isSettled; index += 1) {
      if (!isOpen(decision, state, index)) continue;
      const minutes = through(state, seen, index);
      if (minutes < value.minutes) value = { minutes, best: index };
    }
    known.set(key, value);
    return value.minutes;
  };
  const through = (state: State, seen: number, index: number): number =>
    branchesOf(decision, state, index).reduce((sum, branch) => {
      const next = seen + digitOf(branch.state.last === index) * 3 ** index;
      return sum + branch.weight * (branch.minutes + minutesFrom(branch.state, next));
    }, 0);
  minutesFrom(start, 0);
  return {
    ranked: inOrder(
      decision,
      openOptions(decision, scorer, start).map(({ index }) => ({
        index,
        expectedMin: through(start, 0, index),
      })),
    ),
    bestAfter(outcomes) {
      const seen = outcomes.reduce(
        (sum, { index, first: isFirst }) => sum + digitOf(isFirst) * 3 ** index,
        0,
      );
      const latest = outcomes.at(-1);
      return known.get(keyOf(seen, latest?.first === true ? latest.index : -1))?.best ?? null;
    },
  };
}
