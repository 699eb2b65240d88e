import type { CodeTable } from '../values.ts';

/** What is said of the checks of a ticket's log. */
export const logCheckCodes = {
  logNumbersCompared: { events: 'count' },
  logHashesCompared: { events: 'count' },
  logTextsCompared: { texts: 'count', erased: 'count' },
  snapshotCompared: { events: 'count', version: 'count' },
  snapshotNotInUse: { events: 'count', snapshot: 'count', program: 'count' },
  logDoesNotReplay: { events: 'count' },
} as const satisfies CodeTable;
