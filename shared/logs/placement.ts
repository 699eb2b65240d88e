import type { LogClock } from './clock.ts';
import { dayMs, leapYearMs, minuteMs, type Stamp } from './stamp.ts';
import { createYearCounter, firstYear, isLeapDay, utcOfYearless } from './yearless.ts';

/**
 * Where a stamp lies until the whole log has been read. On `clock` the place is ms since 1970, true time; on
 * `yearless` years are still numbers from the first line's (see `createYearCounter`); on `boot` each boot has its own
 * stretch of `bootStretchMs`, begun at the device's start; on `daily` days are numbers from the first line's.
 */
export type Track = 'clock' | 'yearless' | 'boot' | 'daily';
export type Placed = { track: Track; place: number };

export type Placement = {
  /**
   * Places the next line's stamp into `placed`.
   *
   * @returns `unset` for the stamp of a clock that was never set, which has no place; `restarted` where seconds since
   * boot start over
   */
  put(stamp: Stamp, placed: Placed): 'placed' | 'restarted' | 'unset';
  /** True time in ms since 1970 of a place, or null where nothing ties it to one. Only after the last line. */
  momentMs(track: Track, place: number): number | null;
  boots(): number;
};

/** Service records reach from 1990 to 2200 (see the contract's `instant`); device clocks start at 1970 or 1980. */
const earliestMs = Date.UTC(1990, 0, 1);
const latestMs = Date.UTC(2200, 0, 1);
/** Longer than any device has run: 34 years. */
const bootStretchMs = 2 ** 40;
/** Messages of several processor cores may come out of order by less than this: assumed. */
const bootDisorderMs = 5000;
/** A kernel's first messages come within this time of its start: assumed. */
const firstMessagesMs = 1000;

/** One a log: it remembers the lines before. */
export function createPlacement(clock: LogClock): Placement {
  const countYear = createYearCounter();
  const leapYears = new Set<number>();
  let lastLocalMs = Number.NEGATIVE_INFINITY;
  let lastYearless = Number.NaN;
  let boot = -1;
  let day = 0;
  let lastDailyMs = Number.NEGATIVE_INFINITY;
  let lastBootMs = Number.POSITIVE_INFINITY;
  let year: number | null = null;

  const withSkew = (ms: number): number => ms + clock.localSkewMs(ms);

  const putOnClock = (ms: number, placed: Placed) => {
    placed.track = 'clock';
    placed.place = ms;
    return inService(ms) ? 'placed' : 'unset';
  };
  const putLocal = (localMs: number, placed: Placed) => {
    const offsets = clock.zone.offsetsMin(localMs);
    let ms = localMs - (offsets[0] as number) * minuteMs;
    if (offsets.length > 1 && ms < lastLocalMs - minuteMs) ms = localMs - (offsets[1] as number) * minuteMs;
    lastLocalMs = ms;
    return putOnClock(withSkew(ms), placed);
  };
  const putYearless = (ms: number, placed: Placed) => {
    placed.track = 'yearless';
    placed.place = lastYearless = countYear(ms);
    if (isLeapDay(ms)) leapYears.add(Math.floor(lastYearless / leapYearMs));
    return 'placed' as const;
  };
  const putBoot = (ms: number, placed: Placed) => {
    if (ms >= bootStretchMs) return 'unset';
    const starts = ms < lastBootMs - bootDisorderMs;
    if (starts) boot += 1;
    lastBootMs = ms;
    placed.track = 'boot';
    placed.place = boot * bootStretchMs + ms;
    return starts && (boot > 0 || ms < firstMessagesMs) ? 'restarted' : 'placed';
  };

  const putDaily = (ms: number, placed: Placed) => {
    // Back by more than half a day is past midnight.
    if (ms < lastDailyMs - dayMs / 2) day += 1;
    else if (ms > lastDailyMs + dayMs / 2 && day > 0) day -= 1;
    lastDailyMs = ms;
    placed.track = 'daily';
    placed.place = day * dayMs + ms;
    return 'placed' as const;
  };

  const yearlessMs = (place: number): number | null => {
    if (clock.writtenByMs === null) return null;
    year ??= firstYear(lastYearless, clock.writtenByMs, leapYears);
    const number = Math.floor(place / leapYearMs);
    const localMs = utcOfYearless(place - number * leapYearMs, year + number);
    if (localMs > clock.writtenByMs) return null;
    return withSkew(localMs - (clock.zone.offsetsMin(localMs)[0] as number) * minuteMs);
  };
  /** The last line is the latest that its time of day allows before what is known, give or take an hour: assumed. */
  const dailyMs = (place: number): number | null => {
    if (clock.nearMs === null) return null;
    const nearLocalMs =
      clock.nearMs -
      clock.localSkewMs(clock.nearMs) +
      (clock.zone.offsetsMin(clock.nearMs)[0] as number) * minuteMs;
    const lastDay = Math.floor((nearLocalMs + 60 * minuteMs - lastDailyMs) / dayMs);
    const localMs = (lastDay - day) * dayMs + place;
    return withSkew(localMs - (clock.zone.offsetsMin(localMs)[0] as number) * minuteMs);
  };
  const bootMs = (place: number): number | null => {
    const number = Math.floor(place / bootStretchMs);
    return clock.bootedAtMs === null || number !== boot
      ? null
      : clock.bootedAtMs + place - number * bootStretchMs;
  };

  return {
    put: (stamp, placed) => {
      if (stamp.base === 'utc') return putOnClock(stamp.ms + clock.zonedSkewMs(stamp.ms), placed);
      if (stamp.base === 'local') return putLocal(stamp.ms, placed);
      if (stamp.base === 'daily') return putDaily(stamp.ms, placed);
      return stamp.base === 'boot' ? putBoot(stamp.ms, placed) : putYearless(stamp.ms, placed);
    },
    momentMs: (track, place) => {
      if (track === 'clock') return place;
      const ms = track === 'boot' ? bootMs(place) : track === 'daily' ? dailyMs(place) : yearlessMs(place);
      return ms !== null && inService(ms) ? ms : null;
    },
    boots: () => boot + 1,
  };
}

function inService(ms: number): boolean {
  return ms >= earliestMs && ms < latestMs;
}
