import { openBracket } from './ascii.ts';
import { textOf } from './bytes.ts';
import { dayStartMs, isDigit, minuteMs, type Stamp, timeOfDayMs } from './stamp.ts';

/** Which of two numbers before the year is the day. `unknown`: a date that may be read either way is none. */
export type DayOrder = 'dayFirst' | 'monthFirst' | 'unknown';

/** What a numeric date tells of the order: its only reading, or that it has two. */
export type ToldOrder = 'dayFirst' | 'monthFirst' | 'either';

/** How numeric dates of one log were read. */
export type DateReader = {
  read(bytes: Uint8Array, start: number, end: number, stamp: Stamp): boolean;
  /** Dates by what they tell, and the first that has two readings, as it stands in the log. */
  told(): { dayFirst: number; monthFirst: number; either: number; example: string | null };
};

/** English and German, by their first letters: what parts the names of months is in the first three. */
const months: Readonly<Record<string, number>> = {
  ...{ jan: 1, jän: 1, feb: 2, mar: 3, mär: 3, mrz: 3, apr: 4, may: 5, mai: 5, jun: 6, jul: 7 },
  ...{ aug: 8, sep: 9, oct: 10, okt: 10, nov: 11, dec: 12, dez: 12 },
};

const clock = '(\\d{1,2}):(\\d{2})(?::(\\d{2})(?:[.,](\\d{1,9}))?)?(?:\\s?([ap])\\.?m\\.?\\b)?';
const zone = '(?:\\s?(z|utc|gmt|[+-]\\d{2}:?\\d{2})(?![\\w:]))?';
const numeric = new RegExp(
  `^\\[?(\\d{1,2})([./-])(\\d{1,2})\\2(\\d{4}|\\d{2})[,\\s]\\s*${clock}${zone}`,
  'i',
);
const named = new RegExp(
  `^\\[?(\\d{1,2})\\.?[ /-]([a-zä]{3,9})\\.?[ /,-]+(\\d{4}|\\d{2})[,:\\s]\\s*${clock}${zone}`,
  'i',
);
const epoch = /^\[?(\d{9,10})(?:\.(\d{1,9}))?\]?(?=[\s:,;|\]]|$)|^\[?(\d{12,13})\]?(?=[\s:,;|\]]|$)/;
const daily = new RegExp(`^\\[?${clock}(?=[\\s\\],;|-]|$)`, 'i');
/** As far as any of these reaches. */
const longest = 48;
/** 1990: what counts fewer seconds since 1970 counts something else. */
const earliestS = 631_152_000;

type Parts = readonly (string | undefined)[];

/** `hh, mm, ss, fraction, a or p` as milliseconds into the day; -1 for none. */
function clockMs([hour = '', minute = '', second = '0', fraction = '', half]: Parts): number {
  const twelve = Number(hour) % 12;
  const hours = half === undefined ? Number(hour) : twelve + (half.toLowerCase() === 'p' ? 12 : 0);
  const ms = timeOfDayMs(hours, Number(minute), Number(second));
  return ms < 0 ? -1 : ms + Number(`0.${fraction}0`) * 1000;
}

/** A year in two digits is one of 2000 to 2099: no device of ours is older. */
const fullYear = (digits: string): number => (digits.length === 2 ? 2000 + Number(digits) : Number(digits));

function put(stamp: Stamp, dateMs: number, parts: Parts, zoneText: string | undefined): boolean {
  const timeMs = clockMs(parts);
  if (Number.isNaN(dateMs) || timeMs < 0) return false;
  stamp.format = 'date';
  stamp.base = zoneText === undefined ? 'local' : 'utc';
  stamp.ms = dateMs + timeMs - offsetMin(zoneText) * minuteMs;
  return true;
}

function offsetMin(zoneText = ''): number {
  if (!/^[+-]/.test(zoneText)) return 0;
  const digits = zoneText.replace(/\D/g, '');
  const minutes = Number(digits.slice(0, 2)) * 60 + Number(digits.slice(2));
  return zoneText.startsWith('-') ? -minutes : minutes;
}

/**
 * A reader of what else stands at the head of lines: numeric dates with the day or the month first, days with the name
 * of their month in English or German, seconds and milliseconds since 1970, and times alone.
 *
 * @param order of dates parted by slashes or hyphens; null: by what the dates before told, else the day first. Dots part
 *   dates with the day first (DIN 1355-1; common practice where dots are used).
 */
export function createDateReader(order: DayOrder | null): DateReader {
  const told = { dayFirst: 0, monthFirst: 0, either: 0, example: null as string | null };
  let last: readonly [number, number] | null = null;

  /** Two dates in a row whose one number went on by a day, the other standing, tell too: the log went past midnight. */
  const noteTurn = (first: number, second: number): void => {
    if (last !== null && last[1] === second && first === last[0] + 1) told.dayFirst += 1;
    if (last !== null && last[0] === first && second === last[1] + 1) told.monthFirst += 1;
    last = [first, second];
  };
  const orderOf = (first: number, second: number, text: string): DayOrder => {
    if (first > 12 && second <= 12) told.dayFirst += 1;
    else if (second > 12 && first <= 12) told.monthFirst += 1;
    else if (first !== second) {
      told.either += 1;
      told.example ??= text;
    }
    noteTurn(first, second);
    if (first > 12) return 'dayFirst';
    if (second > 12) return 'monthFirst';
    return first === second
      ? 'dayFirst'
      : (order ?? (told.monthFirst > told.dayFirst ? 'monthFirst' : 'dayFirst'));
  };
  const readNumeric = (text: string, stamp: Stamp): boolean => {
    const found = numeric.exec(text);
    if (found === null) return false;
    const [whole, a = '', mark, b = '', year = '', ...rest] = found;
    const [first, second] = [Number(a), Number(b)];
    if (first > 31 || second > 31 || first < 1 || second < 1) return false;
    const taken = mark === '.' ? 'dayFirst' : orderOf(first, second, whole.replace('[', ''));
    if (taken === 'unknown') return false;
    const [day, month] = taken === 'dayFirst' ? [first, second] : [second, first];
    stamp.end = whole.length;
    return put(stamp, dayStartMs(fullYear(year), month, day), rest.slice(0, 5), rest[5]);
  };

  return {
    read(bytes, start, end, stamp) {
      const at = bytes[start] === openBracket ? start + 1 : start;
      if (at >= end || !isDigit(bytes[at] as number)) return false;
      const text = textOf(bytes, start, Math.min(end, start + longest));
      if (
        !readNumeric(text, stamp) &&
        !readNamed(text, stamp) &&
        !readEpoch(text, stamp) &&
        !readDaily(text, stamp)
      )
        return false;
      // All of what these match is ASCII but for a month's umlaut, which takes one byte more.
      const umlauts = [...text.slice(0, stamp.end)].filter(
        (letter) => letter === 'ä' || letter === 'Ä',
      ).length;
      stamp.end = Math.min(end, start + stamp.end + umlauts);
      return true;
    },
    told: () => ({ ...told }),
  };
}

function readNamed(text: string, stamp: Stamp): boolean {
  const found = named.exec(text);
  if (found === null) return false;
  const [whole, day, name = '', year = '', ...rest] = found;
  const month = months[name.slice(0, 3).toLowerCase()];
  if (month === undefined) return false;
  stamp.end = whole.length;
  return put(stamp, dayStartMs(fullYear(year), month, Number(day)), rest.slice(0, 5), rest[5]);
}

function readEpoch(text: string, stamp: Stamp): boolean {
  const found = epoch.exec(text);
  if (found === null) return false;
  const [whole, seconds, fraction = '', milliseconds] = found;
  const ms = milliseconds === undefined ? Number(`${seconds}.${fraction}0`) * 1000 : Number(milliseconds);
  if (ms < earliestS * 1000) return false;
  stamp.format = 'epoch';
  stamp.base = 'utc';
  stamp.ms = ms;
  stamp.end = whole.length;
  return true;
}

function readDaily(text: string, stamp: Stamp): boolean {
  const found = daily.exec(text);
  if (found === null || found[3] === undefined) return false;
  const ms = clockMs(found.slice(1));
  if (ms < 0) return false;
  stamp.format = 'time';
  stamp.base = 'daily';
  stamp.ms = ms;
  stamp.end = found[0].length;
  return true;
}
