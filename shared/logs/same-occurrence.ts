/** A log and a person who both tell of one occurrence differ by less than this, seconds; assumed. */
const differByLessS = 10;

/** Whether two moments, UTC, ISO 8601, tell of one occurrence. */
export const isSameOccurrence = (at: string, other: string): boolean =>
  Math.abs(Date.parse(at) - Date.parse(other)) < differByLessS * 1000;
