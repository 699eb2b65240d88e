import type { TimeRecord } from './quiet-length.ts';

/** Assumed: what somebody reports without having watched for it counts as half of what is seen in a watch. */
export const reportWeight = 0.5;
/** Assumed: a home cinema is in use this long on a day, and only then can the fault be seen. */
export const usedHoursPerDay = 4;

/** What came in over days in which somebody could report it, or a device's own log was read. */
export type ReportedRecord = { readonly days: number; readonly occurrences: number };
export type ReportFigures = { readonly weight: number; readonly hoursPerDay: number };
const usual: ReportFigures = { weight: reportWeight, hoursPerDay: usedHoursPerDay };

/**
 * Reports as a watch that would say as much: time and occurrences both count by the weight, so that the rate is what
 * was reported and is only less sure (a power prior, Ibrahim and Chen 2000, Statistical Science 15, from memory).
 */
export const reportedAsWatched = (
  { days, occurrences }: ReportedRecord,
  { weight, hoursPerDay }: ReportFigures = usual,
): TimeRecord => ({
  mode: 'time',
  minutes: days * hoursPerDay * 60 * weight,
  occurrences: occurrences * weight,
});

/**
 * Chance of a time as quiet as this if nothing had changed, 0..1: (T/(T+t))^n, as for watches. Null where nothing came
 * before, so that quiet says nothing.
 *
 * @param before as watched, or reported and weighed; `quiet` in the same minutes
 */
export const quietRisk = (before: TimeRecord, quietMin: number): number | null =>
  before.occurrences > 0 && before.minutes > 0 && quietMin > 0
    ? (before.minutes / (before.minutes + quietMin)) ** before.occurrences
    : null;
