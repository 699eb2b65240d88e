import type { CodeTable } from '../values.ts';

/** What is wrong with an organisation's own figure of the fault model. */
export const figureCodes = {
  noSuchFigure: {},
  chanceOutOfBounds: {},
  minutesOutOfBounds: { most: 'number' },
  doubtOutOfBounds: { most: 'number' },
  weightOutOfBounds: { most: 'number' },
} as const satisfies CodeTable;
