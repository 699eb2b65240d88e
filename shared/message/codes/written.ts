import type { CodeTable } from '../values.ts';

/** What was stored as a sentence before messages were data, and what this version does not know. */
export const writtenCodes = {
  /** A sentence of an earlier version, in the language it was written in (English). */
  asWritten: { sentence: 'text' },
  /** In the place of what a person wrote. */
  erased: { at: 'moment' },
  erasedBy: { at: 'moment', by: 'name' },
  /** A message of a later version that this one has no sentence for. */
  unknownMessage: {},
} as const satisfies CodeTable;
