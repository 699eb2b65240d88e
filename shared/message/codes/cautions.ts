import type { CodeTable } from '../values.ts';

/**
 * What work can hurt somebody with, or break for good. Where law or trade rules apply, they and the people licensed for
 * the work come first.
 */
export const cautionCodes = {
  cautionOpticalLight: {},
  cautionDisplay: {},
  cautionMains: {},
  cautionCableInWall: {},
  cautionCableAcrossFloor: {},
  cautionConduit: {},
  cautionLifting: {},
  cautionFirmwareUpdate: {},
  cautionFlexByHand: {},
  cautionMainsOrder: {},
  cautionPowerOff: {},
  cautionSupply: {},
  cautionHeat: {},
  cautionEarth: {},
  cautionThunderstorm: {},
  cautionOthersAppliances: {},
  cautionReturnAudio: {},
  cautionBeam: {},
} as const satisfies CodeTable;
