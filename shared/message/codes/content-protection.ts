import type { CodeTable } from '../values.ts';

/** Which content protection goes over a chain. */
export const contentProtectionCodes = {
  hopDoes: { link: 'place', version: 'term' },
  hopTooOldForType1: { link: 'place', ends: 'message[]' },
  hopUnprotected: { link: 'place', ends: 'message[]' },
  hopUnknown: { link: 'place', ends: 'message[]' },
  endDoesNone: { port: 'port' },
  endNotRecorded: { port: 'port' },
  endDoes: { port: 'port', version: 'term' },
  type1Shown: { source: 'device', display: 'device' },
  type1ShownUnknown: { source: 'device', display: 'device', hop: 'message?' },
  type1NotShown: { source: 'device', display: 'device', hop: 'message?' },
  protectedShown: { source: 'device', display: 'device' },
  protectedShownUnknown: { source: 'device', display: 'device', hop: 'message?' },
  protectedNotShown: { source: 'device', display: 'device', hop: 'message?' },
  behindSource: {
    source: 'device',
    first: 'place',
    devices: 'count',
    levels: 'count',
    allowedDevices: 'count',
    allowedLevels: 'count',
  },
  tooMuchBehindSource: {
    source: 'device',
    first: 'place',
    devices: 'count',
    levels: 'count',
    allowedDevices: 'count',
    allowedLevels: 'count',
  },
  suspectCable: { cable: 'place', construction: 'construction', length: 'metres' },
  suspectOpticalCable: { cable: 'place', construction: 'construction', length: 'metres' },
  findProtectionVersions: {},
  hangFewerBehindSource: {},
} as const satisfies CodeTable;
