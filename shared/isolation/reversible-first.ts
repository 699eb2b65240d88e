import { changeCatalogue } from './change-catalogue.ts';
import type { Decision, Option } from './decision.ts';
import type { Ranked } from './search-state.ts';

/** Minutes up to this factor apart are near: what can be undone then goes first. Assumed. */
const nearFactor = 1.15;
/** So many times its own minutes a test that can be undone may take and still go first. Assumed. */
const worthFactor = 3;
/** Tests whose outcomes have this share of their spread in common tell the same suspects apart; assumed. */
const sameShare = 0.5;

/** Whether what is done can be put back. */
export const isReversible = ({ candidate: { action } }: Option): boolean =>
  action.kind === 'menu' || changeCatalogue[action.test].canBeUndone;

/**
 * The order with what can't be undone behind every test that can and is nearly as good, or tells the same suspects apart
 * at up to three times the minutes.
 *
 * @param others further options that may come next, beyond those ranked
 */
export function reversibleFirst(
  decision: Decision,
  ranked: readonly Ranked[],
  others: (among: (option: Option) => boolean) => readonly Ranked[],
): Ranked[] {
  const [head, ...rest] = ranked;
  if (head === undefined || isReversible(head.option)) return [...ranked];
  const isBetter = ({ option, expectedMin }: Ranked) =>
    isReversible(option) &&
    option.after === -1 &&
    (expectedMin <= nearFactor * head.expectedMin || partsTheSame(decision, head.option, option));
  const beyond = others(
    (option) => isReversible(option) && option.after === -1 && partsTheSame(decision, head.option, option),
  ).filter(({ option }) => !ranked.some((each) => each.option === option));
  const before = [...rest.filter(isBetter), ...beyond];
  return [...before, head, ...rest.filter((each) => !before.includes(each))];
}

/** Whether one test tells what another tells, for not too many minutes more. */
function partsTheSame({ chances }: Decision, other: Option, one: Option): boolean {
  if (minutesOf(one, chances) > worthFactor * minutesOf(other, chances)) return false;
  let [mean, otherMean] = [0, 0];
  for (const [at, chance] of chances.entries()) {
    mean += chance * (one.first[at] ?? 0);
    otherMean += chance * (other.first[at] ?? 0);
  }
  let [joint, spread, otherSpread] = [0, 0, 0];
  for (const [at, chance] of chances.entries()) {
    const [off, otherOff] = [(one.first[at] ?? 0) - mean, (other.first[at] ?? 0) - otherMean];
    joint += chance * off * otherOff;
    spread += chance * off * off;
    otherSpread += chance * otherOff * otherOff;
  }
  return joint > 0 && joint * joint >= sameShare * spread * otherSpread;
}

function minutesOf({ first, firstMin, secondMin }: Option, chances: Float64Array): number {
  return chances.reduce(
    (sum, chance, at) => sum + chance * ((first[at] ?? 0) * firstMin + (1 - (first[at] ?? 0)) * secondMin),
    0,
  );
}
