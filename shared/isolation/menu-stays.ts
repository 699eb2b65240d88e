import { chainKey, deviceKey, relationOf } from './components.ts';
import { outside } from './failure-modes.ts';
import { figureIn } from './figures.ts';
import type { FaultModel, Hypothesis } from './hypotheses.ts';
import { liesOverPicture } from './menu-symptoms.ts';

/** What menus do under a model doesn't depend on results, so that replanning can use it again. */
const known = new WeakMap<FaultModel, Map<string, Float64Array>>();

/** Chance, for each hypothesis of the model, that a device's menu stays in the picture when the fault comes. */
export function menuStaysIn(model: FaultModel, deviceId: string): Float64Array {
  const ofModel = known.get(model) ?? new Map<string, Float64Array>();
  known.set(model, ofModel);
  const found =
    ofModel.get(deviceId) ??
    Float64Array.from(model.hypotheses, (hypothesis) => menuStaysChance(model, deviceId, hypothesis));
  ofModel.set(deviceId, found);
  return found;
}

/** Chance that the menu stays in the picture when the fault comes, if the hypothesis holds. */
export function menuStaysChance(
  { table, components, facts }: Pick<FaultModel, 'table' | 'components' | 'facts'>,
  deviceId: string,
  { component, mode }: Hypothesis,
): number {
  if (component === outside || component === chainKey) return figureIn(table.menuStays.apart, mode) ?? 0.5;
  const relation = relationOf(components, deviceKey(deviceId), component);
  const survives =
    liesOverPicture(facts.symptom) ||
    components.known.get(deviceKey(deviceId))?.device?.menuSurvivesLossOfInput === 'yes';
  const row = relation === 'upstream' && survives ? 'upstreamSurvives' : relation;
  return figureIn(table.menuStays[row], mode) ?? 0.5;
}

/**
 * Chance that a device's menu vanishes whatever is at fault, so that it tells nothing: surely where it was seen to fall
 * with its input, not at all where it is known to stay, and to come in a format that is known.
 */
export function tellsNothingChance(
  { table, components, facts }: Pick<FaultModel, 'table' | 'components' | 'facts'>,
  deviceId: string,
): number {
  if (liesOverPicture(facts.symptom)) return 0;
  const device = components.known.get(deviceKey(deviceId))?.device ?? null;
  if (device?.menuSurvivesLossOfInput === 'no') return 1;
  if (device?.menuSurvivesLossOfInput === 'yes' && device.menuKeepsFormat !== 'unknown') return 0;
  return figureIn(table.menuStays.notKnown, 'any') ?? 1;
}
