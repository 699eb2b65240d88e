/** A person who sees the fault says so this much later at most: to the phone, and to the button; seconds, assumed. */
const reactionS = 12;
/** The clocks of a log and a phone differ by less than this, once the log's was set right; seconds, assumed. */
const clocksDifferS = 5;

/**
 * Whether a moment in a log and an occurrence on record tell of one occurrence: the one rule for proposals, for what a
 * log shows at an occurrence, and for what is refused as recorded already. All times UTC, ISO 8601.
 */
export function isLoggedOf(recordedAt: string, loggedAt: string): boolean {
  const lateS = (Date.parse(recordedAt) - Date.parse(loggedAt)) / 1000;
  return lateS >= -clocksDifferS && lateS <= reactionS + clocksDifferS;
}

/** Whether two logs tell of one occurrence at these moments. */
export const isOneInLogs = (at: string, other: string): boolean =>
  Math.abs(Date.parse(at) - Date.parse(other)) <= 2 * clocksDifferS * 1000;
