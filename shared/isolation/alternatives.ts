import type { Chain } from '../contract/chain.ts';
import { clustersOf, sparedMin } from './clusters.ts';
import type { Decision } from './decision.ts';
import type { Ranked } from './search-state.ts';

/** The best test and two more. */
export const most = 3;
/** Tests that come out the same way more often than this tell the same; assumed. */
const alike = 0.9;

/** The first three, leaving out what tells the same as one before it: of no use as a second choice. */
export function unlike(decision: Decision, ranked: readonly Ranked[]): Ranked[] {
  const kept: Ranked[] = [];
  for (const each of ranked) {
    const tellsAsBefore = ({ option }: Ranked) =>
      decision.chances.reduce(
        (sum, chance, at) => sum + chance * Math.abs((option.first[at] ?? 0) - (each.option.first[at] ?? 0)),
        0,
      ) <
      1 - alike;
    if (kept.length < most && !kept.some(tellsAsBefore)) kept.push(each);
  }
  return kept;
}

/** What comes after the first, nearest by what it shares with it: what the first sets up, the others need not. */
export function groupedWithFirst(chain: Chain, [first, ...others]: readonly Ranked[]): Ranked[] {
  if (first === undefined) return [];
  const needed = ({ option: { candidate } }: Ranked) =>
    candidate.action.kind === 'menu' ? [] : clustersOf(chain, candidate.action);
  const standing = new Set(needed(first));
  const minutesOf = (each: Ranked) =>
    each.expectedMin - sparedMin(each.option.candidate.setupMin, needed(each), standing);
  return [first, ...others.toSorted((a, b) => minutesOf(a) - minutesOf(b))];
}
