import { colon, dot, space } from './ascii.ts';
import {
  dayStartMs,
  digitsAt,
  fractionMs,
  isDigit,
  type Stamp,
  skipDigits,
  threeLetters,
  threeLettersAt,
  timeOfDayMs,
  yearlessDayMs,
} from './stamp.ts';

const monthNumber = new Map(
  ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'].map((name, index) => [
    threeLetters(name),
    index + 1,
  ]),
);
for (const [name, month] of [
  ['Mrz', 3],
  ['Mai', 5],
  ['Okt', 10],
  ['Dez', 12],
] as const)
  monthNumber.set(threeLetters(name), month);
const weekdays = new Set(['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'].map(threeLetters));

/**
 * Reads `Mmm dd hh:mm:ss` at `at` (RFC 3164, 4.1.2), the day padded or not, and the habits around it: a year after
 * the day (`Nov 25 2026 10:00:00`), a fraction of a second.
 */
export function readMonthDay(bytes: Uint8Array, at: number, end: number, stamp: Stamp): boolean {
  if (!readDayAndClock(bytes, at, end, stamp)) return false;
  stamp.format = 'rfc3164';
  return true;
}

/** Reads `Www Mmm dd hh:mm:ss yyyy` at `at`: asctime of ISO C (ISO/IEC 9899:2018, 7.27.3.1). */
export function readCtime(bytes: Uint8Array, at: number, end: number, stamp: Stamp): boolean {
  if (at + 24 > end || bytes[at + 3] !== space || !weekdays.has(threeLettersAt(bytes, at))) return false;
  if (!readDayAndClock(bytes, at + 4, end, stamp) || stamp.base !== 'yearless') return false;
  const year = bytes[stamp.end] === space ? digitsAt(bytes, stamp.end + 1, 4, end) : -1;
  const month = monthNumber.get(threeLettersAt(bytes, at + 4)) ?? 0;
  const day = dayAt(bytes, at + 8, end);
  const date = year < 1000 ? Number.NaN : dayStartMs(year, month, day);
  if (Number.isNaN(date)) return false;
  stamp.ms = date + (stamp.ms - yearlessDayMs(month, day));
  stamp.base = 'local';
  stamp.format = 'ctime';
  stamp.end += 5;
  return true;
}

function readDayAndClock(bytes: Uint8Array, at: number, end: number, stamp: Stamp): boolean {
  if (at + 14 > end || bytes[at + 3] !== space) return false;
  const month = monthNumber.get(threeLettersAt(bytes, at));
  const day = dayAt(bytes, at + 4, end);
  if (month === undefined || day < 0) return false;
  let index = dayEnd(bytes, at + 4);
  let dateMs = yearlessDayMs(month, day);
  stamp.base = 'yearless';
  const year = bytes[index] === space ? digitsAt(bytes, index + 1, 4, end) : -1;
  if (year >= 1000 && bytes[index + 5] === space) {
    dateMs = dayStartMs(year, month, day);
    stamp.base = 'local';
    index += 5;
  }
  return !Number.isNaN(dateMs) && bytes[index] === space && readClock(bytes, index + 1, end, dateMs, stamp);
}

function readClock(bytes: Uint8Array, at: number, end: number, dateMs: number, stamp: Stamp): boolean {
  if (at + 8 > end || bytes[at + 2] !== colon || bytes[at + 5] !== colon) return false;
  const clockMs = timeOfDayMs(
    digitsAt(bytes, at, 2, end),
    digitsAt(bytes, at + 3, 2, end),
    digitsAt(bytes, at + 6, 2, end),
  );
  if (clockMs < 0) return false;
  stamp.ms = dateMs + clockMs;
  stamp.end = at + 8;
  if (bytes[at + 8] === dot && at + 9 < end && isDigit(bytes[at + 9] as number)) {
    stamp.end = skipDigits(bytes, at + 9, end, 9);
    stamp.ms += fractionMs(bytes, at + 9, stamp.end);
  }
  return true;
}

/** The day of the month in one digit, two digits, or a space and a digit; -1 for none. */
function dayAt(bytes: Uint8Array, at: number, end: number): number {
  if (bytes[at] === space) return digitsAt(bytes, at + 1, 1, end);
  return digitsAt(bytes, at, bytes[at + 1] === space ? 1 : 2, end);
}

function dayEnd(bytes: Uint8Array, at: number): number {
  return bytes[at] !== space && bytes[at + 1] === space ? at + 1 : at + 2;
}
