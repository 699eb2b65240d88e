import type { Decision, Option } from './decision.ts';
import { searchExactly } from './exact-search.ts';
import { rankByLookAhead } from './look-ahead.ts';
import type { Ranked } from './search-state.ts';

/** Options up to which every outcome is looked at exactly. */
const exactUpTo = 5;
/** What a replan may cost, in evaluations of one class or component; a few ms. */
const replanWork = 200_000;
const replanBreadth = 6;
const replanDepth = 14;

/** How thoroughly options are looked at: all that a replan may cost, or a share of it among fewer. */
export const thorough = { work: replanWork, breadth: replanBreadth };
/** For a glance at what an outcome leads to; assumed. */
export const glance = { work: replanWork / 4, breadth: 3 };

/** Tests whose minutes look-ahead finds this close are as good as each other: it knows them no better. Assumed. */
export const nearTie = 1.03;
/** With less than this share of the handling it is gentler by a margin that counts; assumed. */
const gentler = 0.5;

/**
 * The options in the order of expected minutes: exactly where few are left, by look-ahead beyond. Of those that
 * look-ahead finds as good as the best, the one with far less handling goes first.
 *
 * @param isFirst which options may come next; later ones are free. All of them when left out
 */
export function rank(
  decision: Decision,
  isFirst: (option: Option) => boolean = () => true,
  { work, breadth } = thorough,
): Ranked[] {
  const exact = searchExactly(decision, exactUpTo)?.ranked.filter(({ option }) => isFirst(option));
  if (exact !== undefined) return exact;
  const perOption = decision.chances.length + 4 * decision.groups.length;
  const perBelief = Math.min(decision.options.length, replanDepth) * perOption;
  const beliefs = Math.ceil(work / Math.max(1, perBelief));
  const effort = { breadth, depth: replanDepth, beliefs };
  const ranked = rankByLookAhead(decision, effort, isFirst);
  const [best] = ranked;
  if (best === undefined) return [];
  const first = ranked
    .filter(({ expectedMin }) => expectedMin <= nearTie * best.expectedMin)
    .reduce(
      (least, each) => (each.option.handlingMin < gentler * least.option.handlingMin ? each : least),
      best,
    );
  return [first, ...ranked.filter((each) => each !== first)];
}
