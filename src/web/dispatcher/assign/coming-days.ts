import { DateTime } from 'luxon';
import type { TicketSummary } from '../../../../shared/contract/ticket.ts';
import { dayLimits, fieldTime, momentOf } from '../../words/zone-time.ts';

/** Assumed: a visit begins at one of these times, in the morning or after noon. */
const begins = ['09:00', '13:00'] as const;
const noon = '12:00';
/** Assumed: a working week is looked ahead. */
const dayCount = 5;
const saturday = 6;

/** Half a day of a technician: when a visit would begin there, and the visits that are in it already. */
export type HalfDay = {
  /** What a `datetime-local` field says, in the site's zone. */
  readonly begin: string;
  /** The same moment, UTC. */
  readonly at: string;
  readonly isOver: boolean;
  readonly visits: readonly TicketSummary[];
};

/** The working days from today on, `2026-11-30`, with Saturdays and Sundays left out. @param now UTC */
export function comingDays(now: string, zone: string): string[] {
  const today = DateTime.fromISO(now, { zone }).startOf('day');
  return Array.from({ length: 2 * dayCount }, (_, later) => today.plus({ days: later }))
    .filter(({ weekday }) => weekday < saturday)
    .slice(0, dayCount)
    .map((one) => one.toFormat('yyyy-MM-dd'));
}

/** @returns first and last moment of these days, UTC */
export const limitsOf = (days: readonly string[], zone: string): { from: string; to: string } => ({
  from: dayLimits(days[0] ?? '', zone).from,
  to: dayLimits(days.at(-1) ?? '', zone).to,
});

/** Morning and afternoon of one day. @param visits of one technician */
export function halvesOf(
  key: string,
  visits: readonly TicketSummary[],
  { zone, now }: { zone: string; now: string },
): HalfDay[] {
  const ofDay = visits
    .map((visit) => ({ visit, local: fieldTime(visit.visitAt, zone) }))
    .filter(({ local }) => local.startsWith(key))
    .toSorted((one, other) => one.local.localeCompare(other.local));
  return begins.map((time) => {
    const begin = `${key}T${time}`;
    const at = momentOf(begin, zone) ?? '';
    const isMorning = time < noon;
    return {
      begin,
      at,
      isOver: at < now,
      visits: ofDay.filter(({ local }) => local.slice(11) < noon === isMorning).map(({ visit }) => visit),
    };
  });
}
