import { DateTime } from 'luxon';

/** A moment (UTC) as what a `datetime-local` field shows in a zone; empty for none. */
export const fieldTime = (moment: string | null, zone: string): string =>
  moment === null ? '' : DateTime.fromISO(moment, { zone }).toFormat("yyyy-MM-dd'T'HH:mm");

/** What such a field says, as a moment (UTC); null for an empty field, `invalid` for a time that the zone's clocks skip. */
export function momentOf(field: string, zone: string): string | null | 'invalid' {
  if (field === '') return null;
  const local = DateTime.fromISO(field, { zone });
  if (!local.isValid || local.toFormat("yyyy-MM-dd'T'HH:mm") !== field.slice(0, 16)) return 'invalid';
  return local.toUTC().toISO() ?? 'invalid';
}

/** First moment of a calendar day (`2026-11-25`) in a zone, and of the day after it, UTC. */
export function dayLimits(key: string, zone: string): { from: string; to: string } {
  const start = DateTime.fromISO(key, { zone }).startOf('day');
  return { from: start.toUTC().toISO() ?? '', to: start.plus({ days: 1 }).toUTC().toISO() ?? '' };
}

/** Last moment of a calendar day in a zone, UTC; null for what is no day. */
export const endOfDay = (key: string, zone: string): string | null =>
  DateTime.fromISO(key, { zone }).endOf('day').toUTC().toISO();

/** The calendar day so many days later. */
export const daysLater = (key: string, days: number): string =>
  DateTime.fromISO(key, { zone: 'UTC' }).plus({ days }).toFormat('yyyy-MM-dd');
