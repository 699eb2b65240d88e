import type { Device } from '../contract/chain.ts';
import { checkMinimum, type MinimumCheck } from './firmware.ts';

/** The lowest firmware an organisation accepts for a model. */
export type FirmwareMinimum = { model: string; minimum: string };
export type LevelCheck = MinimumCheck & { minimum: string };

/**
 * A device's firmware against every level set for its model; empty where there is none, or its model isn't known.
 * Models are the same whatever their letter case, spaces, dashes and underscores.
 */
export function checkLevels(
  { model, firmware }: Pick<Device, 'model' | 'firmware'>,
  levels: readonly FirmwareMinimum[],
): LevelCheck[] {
  if (model === null) return [];
  return levels
    .filter((level) => sameModel(level.model, model))
    .map(({ minimum }) => ({ ...checkMinimum(firmware, minimum), minimum }));
}

/** Whether a device is known to be below a level set for its model. */
export function isBelowLevel(
  device: Pick<Device, 'model' | 'firmware'>,
  levels: readonly FirmwareMinimum[],
): boolean {
  return checkLevels(device, levels).some(({ result }) => result === 'below');
}

/** Whether two people who typed a model meant the same one. */
export const sameModel = (one: string, other: string): boolean => modelKey(one) === modelKey(other);

const modelKey = (model: string): string =>
  model
    .normalize('NFKC')
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, '');
