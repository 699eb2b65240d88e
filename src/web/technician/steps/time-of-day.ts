import { DateTime } from 'luxon';

/** A moment (UTC, ISO 8601) as the clock on a wall in a zone shows it, with seconds: `14:05:30`. */
export const wallClock = (moment: string, zone: string): string =>
  DateTime.fromISO(moment, { zone }).toFormat('HH:mm:ss');

/**
 * The moment at which a clock on a wall shows a time, nearest to another moment: on the same day or just across
 * midnight.
 *
 * @param time `14:05:30` or `14:05`
 * @returns UTC, ISO 8601; null where it is no time
 */
export function nearestAt(time: string, near: string, zone: string): string | null {
  const told = DateTime.fromISO(time, { zone });
  if (!told.isValid) return null;
  const { hour, minute, second } = told;
  const moment = DateTime.fromISO(near, { zone });
  const apart = (other: DateTime) => Math.abs(other.toMillis() - moment.toMillis());
  // What a clock shows has no parts of a second: they stay.
  const [nearest] = [-1, 0, 1]
    .map((days) => moment.plus({ days }).set({ hour, minute, second }))
    .sort((one, other) => apart(one) - apart(other));
  return nearest?.toUTC().toISO() ?? null;
}
