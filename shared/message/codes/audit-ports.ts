import type { CodeTable } from '../values.ts';

/** What the prerequisite audit says of ports, and what to do about it. */
export const auditPortCodes = {
  portSetAboveHighest: { port: 'place', set: 'mode', highest: 'mode' },
  lookUpPortModes: {},
  portSetTooLow: { port: 'place', set: 'mode', needed: 'gbps' },
  portSetBelowNeed: { port: 'place', set: 'mode', needed: 'gbps' },
  setPortMode: { needed: 'gbps' },
  portOfLowerRate: { port: 'place', passes: 'gbps', better: 'port[]' },
  movePlug: { to: 'port[]' },
  swapPlugs: { with: 'port[]' },
  decideWhichPlugGoesFirst: {},
  portWithoutProtection: { port: 'place', better: 'port[]' },
  portOfOlderProtection: { port: 'place', version: 'term', better: 'port[]' },
  outputForSound: { output: 'place' },
  outputForAnotherZone: { output: 'place' },
  movePlugOrLookUp: { to: 'port[]' },
  lookUpOutput: {},
} as const satisfies CodeTable;
