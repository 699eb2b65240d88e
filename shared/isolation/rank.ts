import type { Decision } from './decision.ts';
import { searchExactly } from './exact-search.ts';
import { rankByLookAhead } from './look-ahead.ts';
import type { Ranked } from './search-state.ts';

/** Options up to which every outcome is looked at exactly. */
const exactUpTo = 4;
/** What a replan may cost, in evaluations of one class or component; a few ms. */
const replanWork = 400_000;
const replanBreadth = 6;
const replanDepth = 24;

/** The options in the order of expected minutes: exactly where few are left, by look-ahead beyond. */
export function rank(decision: Decision): Ranked[] {
  const perOption = decision.chances.length + 4 * decision.groups.length;
  const perBelief = Math.min(decision.options.length, replanDepth) * perOption;
  const beliefs = Math.ceil(replanWork / Math.max(1, perBelief));
  return (
    searchExactly(decision, exactUpTo)?.ranked ??
    rankByLookAhead(decision, { breadth: replanBreadth, depth: replanDepth, beliefs })
  );
}
