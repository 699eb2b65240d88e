import type { CodeTable } from '../values.ts';

/** Where something that is said is from. */
export const sourceCodes = {
  commonPractice: {},
  levelOfOrganisation: {},
  cableCategories: {},
  computedCapacity: {},
  standardFromMemory: { standard: 'term', clause: 'term' },
  streamTypeFromMemory: {},
} as const satisfies CodeTable;
