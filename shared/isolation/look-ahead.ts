import type { Decision, Option } from './decision.ts';
import { type Scorer, scorerOf } from './information.ts';
import {
  type Branch,
  branchesOf,
  inOrder,
  openOptions,
  type Ranked,
  type Scored,
  startOf,
} from './search-state.ts';

export type Effort = {
  /** Options that are looked at further than their own gain. */
  breadth: number;
  /** Options that the policy may choose from, the most promising first. */
  depth: number;
  /** Beliefs that the look-ahead may evaluate in all. */
  beliefs: number;
};

/**
 * Expected minutes for the most promising options: each is followed by the policy "most progress per minute, and
 * escalate when that is not worth it", over all outcomes, as far as the effort goes; beyond it the distance left is
 * taken to be made at the best rate there is. That is one step of improvement on the policy (rollout: Bertsekas,
 * Tsitsiklis and Wu 1997, Journal of Heuristics 3:245).
 */
export function rankByLookAhead(
  whole: Decision,
  effort: Effort,
  isFirst: (option: Option) => boolean = () => true,
): Ranked[] {
  const byRate = openOptions(whole, scorerOf(whole), startOf(whole)).sort((a, b) => b.rate - a.rate);
  const mayBeFirst = ({ index }: Scored) => {
    const option = whole.options[index];
    return option !== undefined && isFirst(option);
  };
  const first = byRate.filter(mayBeFirst).slice(0, effort.breadth);
  const chosen = new Set([...first, ...byRate.slice(0, effort.depth)]);
  const { decision, indexes } = withOnly(whole, [...chosen]);
  const scorer = scorerOf(decision);
  // the same for each, however few: estimates of unlike effort can't be compared
  const each = Math.max(2, Math.floor(effort.beliefs / effort.breadth));
  return inOrder(
    whole,
    first.map(({ index }) => {
      const ends = policyEnds(decision, scorer, indexes.indexOf(index), each);
      return { index, expectedMin: ends.reduce((sum, end) => sum + end.weight * end.minutes, 0) };
    }),
  );
}

/** The decision with these options, and what goes on from them, in it alone; and where each was in the whole. */
function withOnly(
  decision: Decision,
  chosen: readonly Scored[],
): { decision: Decision; indexes: readonly number[] } {
  const wanted = new Set(chosen.map(({ index }) => index));
  const indexes = [...decision.options.keys()].filter(
    (at) => wanted.has(at) || wanted.has(decision.options[at]?.after ?? -1),
  );
  const options = indexes.flatMap((at) => {
    const option = decision.options[at];
    return option === undefined ? [] : [{ ...option, after: indexes.indexOf(option.after) }];
  });
  return { decision: { ...decision, options }, indexes };
}

/** A way of things that the policy was followed along, to a culprit, to the end of the options, or as far as it went. */
export type PolicyEnd = {
  /** Chance of this way, 0..1; those of all ends add up to 1. */
  weight: number;
  /** Minutes along it, with those that are still to be expected at its end. */
  minutes: number;
  chances: Float64Array;
  /** Options taken, by index, the last first. */
  taken: Taken;
};
type Taken = { index: number; before: Taken } | null;

/** Follows the policy after a first option, the likeliest branch first, until the beliefs are used up. */
export function policyEnds(decision: Decision, scorer: Scorer, first: number, beliefs: number): PolicyEnd[] {
  const ends: PolicyEnd[] = [];
  const open: (Branch & { taken: Taken })[] = [];
  const add = (branches: Branch[], from: { weight: number; minutes: number }, taken: Taken) => {
    for (const branch of branches)
      open.push({
        ...branch,
        weight: from.weight * branch.weight,
        minutes: from.minutes + branch.minutes,
        taken,
      });
    open.sort((a, b) => a.weight - b.weight);
  };
  add(
    branchesOf(decision, startOf(decision), first),
    { weight: 1, minutes: 0 },
    { index: first, before: null },
  );
  for (let next = open.pop(), left = beliefs; next !== undefined; next = open.pop()) {
    const { weight, taken, state } = next;
    const end = (furtherMin: number) =>
      ends.push({ weight, minutes: (next?.minutes ?? 0) + furtherMin, chances: state.chances, taken });
    if (scorer.believe(state.chances) >= decision.nameAt) {
      end(0);
      continue;
    }
    const best = bestOf(openOptions(decision, scorer, state));
    left -= 1;
    const toGo = best === null ? Number.POSITIVE_INFINITY : scorer.distance() / best.rate;
    if (best === null || left <= 0 || toGo >= decision.escalationMin)
      end(Math.min(decision.escalationMin, toGo));
    else add(branchesOf(decision, state, best.index), next, { index: best.index, before: taken });
  }
  return ends;
}

function bestOf(options: readonly Scored[]): Scored | null {
  return options.reduce<Scored | null>(
    (top, each) => (top === null || each.rate > top.rate ? each : top),
    null,
  );
}
