import type { CodeTable } from '../values.ts';

/** A place that stands by itself. */
export const placeCodes = {
  thePlace: { place: 'place' },
} as const satisfies CodeTable;
