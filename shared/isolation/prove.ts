import { type ChangeOption, type Circumstances, candidatesFor, whyNotHere } from './candidates.ts';
import { effectAt, effectsOf, staysAway } from './likelihood.ts';
import type { Standing } from './standing.ts';
import { testKey } from './test-record.ts';

/** Of changes that show nearly the same, the quickest is taken; assumed. */
const nearlyTheSame = 0.1;
/** A change that parts a suspect from all others by less than this proves nothing; assumed. */
const leastContrast = 0.4;

/**
 * The change that best proves one suspect: likely to keep the fault away if it is the suspect, and unlikely if it is
 * anything else; of those that are nearly as good, the one that takes the fewest minutes.
 *
 * @param component as in `Suspect`
 * @param changes that apply, and that can show a culprit
 * @returns null when none can be made here that would prove anything
 */
export function provingChange(
  { model, chances }: Standing,
  component: string,
  changes: readonly ChangeOption[],
  here: Circumstances,
): ChangeOption | null {
  const possible = new Set(
    candidatesFor(model, changes)
      .filter((candidate) => whyNotHere(candidate, here) === null)
      .map(({ id }) => id),
  );
  const judged = changes
    .filter(({ kind, target, own }) => possible.has(testKey(kind, target, own)))
    .map((change) => {
      const effects = effectsOf(model, { ...change, test: change.kind });
      let [own, ownAway, other, otherAway] = [0, 0, 0, 0];
      for (const [at, hypothesis] of model.hypotheses.entries()) {
        const chance = chances[at] ?? 0;
        const away = chance * staysAway(effectAt(effects, at));
        if (hypothesis.component === component) [own, ownAway] = [own + chance, ownAway + away];
        else [other, otherAway] = [other + chance, otherAway + away];
      }
      const contrast = (own > 0 ? ownAway / own : 0) - (other > 0 ? otherAway / other : 0);
      return { change, contrast, minutes: change.setupMin + change.restoreMin };
    });
  const best = Math.max(0, ...judged.map(({ contrast }) => contrast));
  if (best < leastContrast) return null;
  const good = judged.filter(({ contrast }) => contrast >= best - nearlyTheSame);
  return good.sort((a, b) => a.minutes - b.minutes)[0]?.change ?? null;
}
