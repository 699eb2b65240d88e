import type { CodeTable } from '../values.ts';

/** How a fault comes, and what it shows with and not without. */
export const patternCodes = {
  comesAlways: {},
  comesOnTrigger: { trigger: 'patternTrigger' },
  comesAtRandom: {},
  comesRarely: {},
  comesInBursts: {},
  comesOnceWarm: { after: 'minutes?' },
  patternNotKnown: {},
  showsOnlyWithOne: { kind: 'onlyWith' },
  showsOnlyWith: { kind: 'onlyWith', what: 'text' },
} as const satisfies CodeTable;
