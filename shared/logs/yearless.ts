import { dayMs, leapYear, leapYearMs } from './stamp.ts';

const leapYearStartMs = Date.UTC(leapYear, 0, 1);
/** 29 February's start within a leap year. */
const leapDayMs = 59 * dayMs;

/** Puts a stamp without a year (ms into a leap year) into `year`; 29 February becomes 1 March where there is none. */
export function utcOfYearless(ms: number, year: number): number {
  const date = new Date(leapYearStartMs + ms);
  return Date.UTC(year, date.getUTCMonth(), date.getUTCDate()) + (ms % dayMs);
}

export function isLeapDay(ms: number): boolean {
  return ms >= leapDayMs && ms < leapDayMs + dayMs;
}

/** The year of a moment, and those beside it. */
export function yearsAround(ms: number): number[] {
  const year = new Date(ms).getUTCFullYear();
  return [year - 1, year, year + 1];
}

const halfYearMs = 183 * dayMs;

/**
 * Numbers the years of stamps that tell none, in the order of the file: the first line's is 0. A step back by more
 * than half a year is a new year. A step forward by as much from 1 January takes it back: a late line of the old
 * year, or a clock that stood at 1 January until it was set.
 *
 * @returns for each stamp its place, ms on a line on which every year has 366 days
 */
export function createYearCounter(): (ms: number) => number {
  let year = 0;
  let lastMs = Number.NaN;
  let wrapped = false;
  return (ms) => {
    if (ms < lastMs - halfYearMs) {
      year += 1;
      wrapped = true;
    } else if (wrapped && lastMs < dayMs && ms > lastMs + halfYearMs) {
      year -= 1;
      wrapped = false;
    }
    lastMs = ms;
    return year * leapYearMs + ms;
  };
}

/**
 * The calendar year of year 0: the latest at which the last stamp is not after `writtenByMs` (taken as though the
 * stamps were UTC) and in which every 29 February seen exists.
 *
 * @param lastPlace place of the last stamp; @param leapYears numbers of the years in which a 29 February was seen
 */
export function firstYear(lastPlace: number, writtenByMs: number, leapYears: Iterable<number>): number {
  const lastNumber = Math.floor(lastPlace / leapYearMs);
  let year = new Date(writtenByMs).getUTCFullYear() - lastNumber;
  if (utcOfYearless(lastPlace - lastNumber * leapYearMs, year + lastNumber) > writtenByMs) year -= 1;
  const seen = [...leapYears];
  for (let back = 0; back < 8; back += 1) {
    if (seen.every((number) => isLeapYear(year - back + number))) return year - back;
  }
  return year;
}

function isLeapYear(year: number): boolean {
  return new Date(Date.UTC(year, 1, 29)).getUTCMonth() === 1;
}
