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

/**
 * Expected minutes for every option, exactly: dynamic programming over what can be known, each option once. Null when
 * there are more options than `most`; the work grows about fivefold with each.
 */
export function rankExactly(decision: Decision, most: number): Ranked[] | null {
  const scorer = scorerOf(decision);
  const start = startOf(decision);
  const first = openOptions(decision, scorer, start);
  if (first.length > most) return null;
  const { options } = decision;
  const known = new Map<number, number>();
  /** `seen` counts outcomes in base 3, an option's digit being 1 or 2 once it is known. */
  const minutesFrom = (state: State, seen: number): number => {
    const key = seen * (options.length + 1) + state.last + 1;
    const found = known.get(key);
    if (found !== undefined) return found;
    let best = decision.escalationMin;
    if (scorer.believe(state.chances) >= decision.stopAt) best = 0;
    else
      for (let index = 0; index < options.length; index += 1)
        if (isOpen(decision, state, index)) best = Math.min(best, through(state, seen, index));
    known.set(key, best);
    return best;
  };
  const through = (state: State, seen: number, index: number): number =>
    branchesOf(decision, state, index).reduce((sum, branch) => {
      const digit = branch.state.last === index ? 1 : 2;
      return sum + branch.weight * (branch.minutes + minutesFrom(branch.state, seen + digit * 3 ** index));
    }, 0);
  return inOrder(
    decision,
    first.map(({ index }) => ({ index, expectedMin: through(start, 0, index) })),
  );
}
