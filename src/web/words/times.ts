import { dateFormat, hoursAndMinutes } from '../../../shared/message/figures.ts';
import { language } from './language.ts';

const regional = () => (language.value === 'en' ? 'en-GB' : 'de-DE');
const format = (zone: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat =>
  dateFormat(regional(), zone, options);

/** A moment (UTC, ISO 8601) as clock time in a zone: `14:05`. */
export const clockTime = (moment: string, zone: string): string =>
  format(zone, { hour: '2-digit', minute: '2-digit' }).format(new Date(moment));
/** As day and time: `Wed 25 Nov, 14:05`. */
export const dayAndTime = (moment: string, zone: string): string =>
  format(zone, {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
  }).format(new Date(moment));
/** As a day of the week with its date: `Wed 25 Nov`. */
export const weekday = (moment: string, zone: string): string =>
  format(zone, { weekday: 'short', day: 'numeric', month: 'short' }).format(new Date(moment));
/** As a date: `25 November 2026`. */
export const day = (moment: string, zone: string): string =>
  format(zone, { dateStyle: 'long' }).format(new Date(moment));
const dayKeyFormats = new Map<string, Intl.DateTimeFormat>();
/** The calendar day in a zone, `2026-11-25`, to compare days with. */
export function dayKey(moment: string, zone: string): string {
  const known = dayKeyFormats.get(zone) ?? new Intl.DateTimeFormat('en-CA', { timeZone: zone });
  dayKeyFormats.set(zone, known);
  return known.format(new Date(moment));
}

/** A length of time in minutes, in words: `1 h 20 min`. */
export { hoursAndMinutes as lengthOfTime };

const numberFormats = new Map<string, Intl.NumberFormat>();
/** A number as people of this language write it. */
export function number(value: number, digits = 0): string {
  const key = `${regional()} ${digits}`;
  const known =
    numberFormats.get(key) ?? new Intl.NumberFormat(regional(), { maximumFractionDigits: digits });
  numberFormats.set(key, known);
  return known.format(value);
}
