import {
  closeBracket,
  colon,
  comma,
  dot,
  hyphen,
  lowerT,
  lowerZ,
  plus,
  slash,
  space,
  upperT,
  upperZ,
} from './ascii.ts';
import {
  dayStartMs,
  digitsAt,
  fractionMs,
  isDigit,
  minuteMs,
  type Stamp,
  skipDigits,
  threeLetters,
  threeLettersAt,
  timeOfDayMs,
} from './stamp.ts';

/**
 * Reads a date and time of ISO 8601 at `at`: extended (`2026-11-25T10:00:00.5+01:00`) or basic
 * (`20261125T100000Z`) form, a space for the T, comma or dot before the fraction, slashes in the date, seconds
 * and zone left out. Covers RFC 3339 and RFC 5424, 6.2.3.
 *
 * @returns whether there is one; then `stamp` has base, ms and end
 */
export function readIso(bytes: Uint8Array, at: number, end: number, stamp: Stamp): boolean {
  const dated = readDate(bytes, at, end);
  if (dated === 0) return false;
  const dateMs =
    dated === 10 ? dateOf(bytes, at, at + 5, at + 8, end) : dateOf(bytes, at, at + 4, at + 6, end);
  const separator = bytes[at + dated] as number;
  if (Number.isNaN(dateMs) || !(separator === upperT || separator === lowerT || separator === space))
    return false;
  return readClock(bytes, at + dated + 1, end, dateMs, dated === 10, stamp);
}

/** Length of the date at `at`: 10 in extended form, 8 in basic form, 0 for none. */
function readDate(bytes: Uint8Array, at: number, end: number): number {
  if (at + 13 > end) return 0;
  const mark = bytes[at + 4] as number;
  if (mark === hyphen || mark === slash) return bytes[at + 7] === mark ? 10 : 0;
  return bytes[at + 8] === upperT ? 8 : 0;
}

function dateOf(bytes: Uint8Array, year: number, month: number, day: number, end: number): number {
  const value = digitsAt(bytes, year, 4, end);
  return value < 1000
    ? Number.NaN
    : dayStartMs(value, digitsAt(bytes, month, 2, end), digitsAt(bytes, day, 2, end));
}

function readClock(
  bytes: Uint8Array,
  at: number,
  end: number,
  dateMs: number,
  extended: boolean,
  stamp: Stamp,
): boolean {
  const step = extended ? 3 : 2;
  if (extended && bytes[at + 2] !== colon) return false;
  const hour = digitsAt(bytes, at, 2, end);
  const minute = digitsAt(bytes, at + step, 2, end);
  let index = at + step + 2;
  let second = 0;
  if (!extended || (index < end && bytes[index] === colon)) {
    second = digitsAt(bytes, at + 2 * step, 2, end);
    index = at + 2 * step + 2;
  }
  const clockMs = timeOfDayMs(hour, minute, second);
  if (clockMs < 0) return false;
  let ms = dateMs + clockMs;
  const mark = bytes[index];
  if (index + 1 < end && (mark === dot || mark === comma) && isDigit(bytes[index + 1] as number)) {
    const to = skipDigits(bytes, index + 1, end, 9);
    ms += fractionMs(bytes, index + 1, to);
    index = to;
  }
  stamp.ms = ms;
  stamp.base = 'local';
  stamp.end = index;
  readZone(bytes, index, end, stamp);
  return true;
}

/** Takes up `Z`, `+hh:mm`, `+hhmm`, `+hh`, or ` UTC`, ` GMT`, ` +hhmm`, ` +hh:mm` after one space. */
function readZone(bytes: Uint8Array, at: number, end: number, stamp: Stamp): void {
  if (at >= end) return;
  const spaced = bytes[at] === space;
  const from = spaced ? at + 1 : at;
  const first = bytes[from];
  if (!spaced && (first === upperZ || first === lowerZ)) {
    stamp.base = 'utc';
    stamp.end = from + 1;
  } else if (first === plus || first === hyphen) {
    readOffset(bytes, from, end, spaced, stamp);
  } else if (spaced && namesUtc(bytes, from, end)) {
    stamp.base = 'utc';
    stamp.end = from + 3;
  }
}

function readOffset(bytes: Uint8Array, at: number, end: number, needsMinutes: boolean, stamp: Stamp): void {
  const hours = digitsAt(bytes, at + 1, 2, end);
  if (hours < 0 || hours > 18) return;
  const minutesAt = bytes[at + 3] === colon ? at + 4 : at + 3;
  const minutes = digitsAt(bytes, minutesAt, 2, end);
  if (minutes > 59 || (minutes < 0 && needsMinutes)) return;
  const offsetMin = hours * 60 + Math.max(0, minutes);
  stamp.ms += (bytes[at] === plus ? -offsetMin : offsetMin) * minuteMs;
  stamp.base = 'utc';
  stamp.end = minutes < 0 ? at + 3 : minutesAt + 2;
}

function namesUtc(bytes: Uint8Array, at: number, end: number): boolean {
  if (at + 3 > end || (at + 3 < end && bytes[at + 3] !== space && bytes[at + 3] !== closeBracket))
    return false;
  const name = threeLettersAt(bytes, at);
  return name === threeLetters('UTC') || name === threeLetters('GMT');
}
