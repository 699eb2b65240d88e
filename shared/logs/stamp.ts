import { nine, zero } from './ascii.ts';
/** How a line says when it was written. `ctime` is the form of ISO C's asctime, as in `[Wed Nov 25 10:00:00 2026]`. */
export const logFormats = [
  'rfc5424',
  'rfc3164',
  'iso',
  'json',
  'kernel',
  'ctime',
  'date',
  'epoch',
  'time',
] as const;
export type LogFormat = (typeof logFormats)[number];

/**
 * What `ms` of a stamp counts from. `utc`: the stamp named its zone. `local`: it named none, `ms` is as though it were
 * UTC. `yearless`: neither zone nor year, ms into a leap year. `boot`: ms since the device started. `daily`:
 * neither zone nor date, ms into the day.
 */
export type StampBase = 'utc' | 'local' | 'yearless' | 'boot' | 'daily';

/** Filled by the readers below and used again for the next line: one log has millions of them. */
export type Stamp = {
  format: LogFormat;
  base: StampBase;
  /** Milliseconds, with fractions where the line has them. */
  ms: number;
  /** Index of the first byte after the stamp. */
  end: number;
};

export function emptyStamp(): Stamp {
  return { format: 'iso', base: 'utc', ms: 0, end: 0 };
}

export const dayMs = 86_400_000;
export const minuteMs = 60_000;
/** A leap year, so that 29 February has its place in every stamp without a year. */
export const leapYear = 2000;
export const leapYearMs = 366 * dayMs;
const leapYearStartMs = Date.UTC(leapYear, 0, 1);

/** The value of `count` digits at `at`, or -1 where they are not all digits. */
export function digitsAt(bytes: Uint8Array, at: number, count: number, end: number): number {
  if (at + count > end) return -1;
  let value = 0;
  for (let index = at; index < at + count; index += 1) {
    const digit = (bytes[index] as number) - zero;
    if (digit < 0 || digit > 9) return -1;
    value = value * 10 + digit;
  }
  return value;
}

/** Index after the digits that begin at `at`, at most `most` of them. */
export function skipDigits(bytes: Uint8Array, at: number, end: number, most: number): number {
  const limit = Math.min(end, at + most);
  let index = at;
  while (index < limit && isDigit(bytes[index] as number)) index += 1;
  return index;
}

export function isDigit(byte: number): boolean {
  return byte >= zero && byte <= nine;
}

/** Milliseconds of a fraction of a second whose digits lie at `from` up to `to`; 0 for none. */
export function fractionMs(bytes: Uint8Array, from: number, to: number): number {
  let value = 0;
  let unit = 100;
  for (let index = from; index < to; index += 1) {
    value += ((bytes[index] as number) - zero) * unit;
    unit /= 10;
  }
  return Math.round(value * 1e6) / 1e6;
}

/** Milliseconds into the day of `hh:mm:ss`, a leap second (60) being the next one; -1 where it is no time of day. */
export function timeOfDayMs(hour: number, minute: number, second: number): number {
  if (hour < 0 || hour > 23 || minute < 0 || minute > 59 || second < 0 || second > 60) return -1;
  return ((hour * 60 + minute) * 60 + second) * 1000;
}

/**
 * Start of a day, month 1..12, as milliseconds since 1970 in UTC; NaN where the calendar has no such day. Counts from
 * 1 March of the year before, as Date.UTC would, but without its conversions: every line of a log asks.
 */
export function dayStartMs(year: number, month: number, day: number): number {
  if (!(month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month))) return Number.NaN;
  const marchYear = month > 2 ? year : year - 1;
  const marchMonth = month > 2 ? month - 3 : month + 9;
  const leapDays = Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400);
  const dayNumber = marchYear * 365 + leapDays + Math.floor((153 * marchMonth + 2) / 5) + day - 1;
  return (dayNumber - dayNumberOf1970) * dayMs;
}

/** Days from 1 March of year 0 to 1 January 1970. */
const dayNumberOf1970 = 719_468;

function daysIn(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

/** Milliseconds from the start of a leap year to the start of this day of it; NaN where there is no such day. */
export function yearlessDayMs(month: number, day: number): number {
  return dayStartMs(leapYear, month, day) - leapYearStartMs;
}

/** Three letters as one number, so that names of months and zones can be told without making text. */
export function threeLetters(name: string): number {
  return (name.charCodeAt(0) << 16) | (name.charCodeAt(1) << 8) | name.charCodeAt(2);
}

export function threeLettersAt(bytes: Uint8Array, at: number): number {
  return ((bytes[at] as number) << 16) | ((bytes[at + 1] as number) << 8) | (bytes[at + 2] as number);
}
