import type { Chain, Device } from '../../../../shared/contract/chain.ts';

/** Version 1 did not ask what a device's menu does by itself. */
type DeviceThen = Omit<Device, 'menuSurvivesLossOfInput' | 'menuKeepsFormat'>;
export type ChainThen = Omit<Chain, 'devices'> & { devices: DeviceThen[] };

/** A chain as version 1 found it, as today's. */
export const chainAsToday = (then: ChainThen): Chain => ({
  ...then,
  devices: then.devices.map((device) => ({
    menuSurvivesLossOfInput: 'unknown',
    menuKeepsFormat: 'unknown',
    ...device,
  })),
});
