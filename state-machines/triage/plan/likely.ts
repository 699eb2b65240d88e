import type { ChangeOption } from '../../../shared/isolation/candidates.ts';
import type { Standing } from '../../../shared/isolation/index.ts';
import { effectsOf } from '../../../shared/isolation/likelihood.ts';
import { testKey } from '../../../shared/isolation/test-record.ts';

/** So many stand before the rest of a list, and none that is less likely than this; assumed. */
const mostLikely = 8;
const leastChance = 0.05;

/**
 * The changes that most likely do something to the fault, by what is known so far: that take it away, or bring it on.
 *
 * @returns their keys (`testKey`), the likeliest first
 */
export function likelyFirst(
  { model, chances }: Standing,
  changes: readonly Pick<ChangeOption, 'kind' | 'target' | 'own'>[],
): string[] {
  return changes
    .map((change) => {
      const { because, provoked } = effectsOf(model, { ...change, test: change.kind });
      const chance = chances.reduce(
        (sum, each, at) => sum + each * Math.max(because[at] ?? 0, provoked[at] ?? 0),
        0,
      );
      return { key: testKey(change.kind, change.target, change.own), chance };
    })
    .filter(({ chance }) => chance >= leastChance)
    .sort((one, other) => other.chance - one.chance)
    .slice(0, mostLikely)
    .map(({ key }) => key);
}
