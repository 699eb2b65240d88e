import type { CodeTable } from '../values.ts';

/** Things to have at hand. */
export const kitCodes = {
  kitCable: { lengthM: 'metres', category: 'category' },
  kitOpticalCable: { lengthM: 'metres', category: 'category' },
  kitActiveCopperCable: { lengthM: 'metres', category: 'category' },
  /** A cable of no category that anybody could name. */
  kitCertifiedCable: { lengthM: 'metres' },
  kitCoupler: {},
  kitSyncSwitch: {},
  kitDisplay: {},
  kitSource: {},
  kitExtenderPair: {},
  kitPowerSupply: {},
} as const satisfies CodeTable;
