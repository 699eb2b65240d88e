import type { CodeTable } from '../values.ts';

/** What work can hurt somebody with, or break for good. */
export const cautionCodes = {
  cautionOpticalLight: {},
  cautionDisplay: {},
  cautionMains: {},
  cautionCableInWall: {},
  cautionCableAcrossFloor: {},
  cautionFirmwareUpdate: {},
} as const satisfies CodeTable;
