import type { kitCodes } from '../codes/kit.ts';
import type { Sentences } from '../sentences.ts';

export const kitEn: Sentences<typeof kitCodes> = {
  kitCable: ({ lengthM, category }, say) => `a ${say.metres(lengthM)} ${say.category(category)} cable`,
  kitOpticalCable: ({ lengthM, category }, say) =>
    `a ${say.metres(lengthM)} active optical cable, ${say.category(category)}, its ends fitted in the factory`,
  kitActiveCopperCable: ({ lengthM, category }, say) =>
    `a ${say.metres(lengthM)} active copper cable, ${say.category(category)}`,
  kitCertifiedCable: ({ lengthM }, say) => `a ${say.metres(lengthM)} certified cable`,
  kitCoupler: () => 'a coupler that passes the full rate',
  kitSyncSwitch: () => 'a switch that regenerates sync',
  kitDisplay: () => 'a test display with the same content protection',
  kitSource: () => 'a second source known to be good',
  kitPowerSupply: () => 'a power supply that fits the device, as its maker allows',
  kitExtenderPair: () => 'a pair of twisted-pair extenders known to be good',
};
