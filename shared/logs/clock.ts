import { FixedOffsetZone, IANAZone, Info, type Zone } from 'luxon';
import { type Message, message } from '../message/index.ts';
import { type Anchor, isDrift, skewBetween } from './skew.ts';
import { dayMs, minuteMs, type StampBase } from './stamp.ts';
import type { DayOrder } from './stamp-date.ts';
import { readStamp } from './stamp-reader.ts';
import { utcOfYearless, yearsAround } from './yearless.ts';

/** A line whose true moment somebody knows, such as the plug pulled at 14:32:10 by the technician's phone. */
export type KnownMoment = {
  /** The line, or its time alone, as the log has it; `[  123.456]` for a log in seconds since boot. */
  logTime: string;
  /** When that was, ISO 8601 with a zone. */
  trueTime: string;
};

/** What is known about the clock that stamped a log. Every part may be left out. */
export type ClockReference = {
  /** Zone of stamps that name none: an IANA name such as `Europe/Oslo`, `UTC`, or an offset such as `+01:00`. */
  zone?: string;
  /** When the log was taken from the device, ISO 8601 with a zone: gives stamps without a year theirs. */
  takenAt?: string;
  /** Several of the device's clock, which drifts from one to the next; and at most one in seconds since boot. */
  knownMoments?: readonly KnownMoment[];
  /** When the device started, ISO 8601 with a zone; the short form of a known moment at 0 s since boot. */
  bootedAt?: string;
  /** Whether the day or the month comes first in numeric dates, where somebody said. */
  dayOrder?: 'dayFirst' | 'monthFirst';
};

/** A clock reference that has been read; the only maker is `compileClock`. */
export type LogClock = {
  zone: LocalZone;
  /** False where no zone was given, and UTC is taken. */
  zoneGiven: boolean;
  /** To be added to what the device's clock said, ms since 1970, where its stamps name a zone. */
  zonedSkewMs(toldMs: number): number;
  /** The same where they name none. */
  localSkewMs(toldMs: number): number;
  /** What it was off by at the last moment that is known; null where none is. */
  skewMs: number | null;
  /** Latest moment, as the device's clock tells it, at which the log can have ended; null where nothing is known. */
  writtenByMs: number | null;
  /** Start of the last boot in the log, ms since 1970; null where nothing is known. */
  bootedAtMs: number | null;
  /** A moment close to which the log ends or that lies in it, for stamps without a date; null where nothing is known. */
  nearMs: number | null;
  /** Order of numeric dates; null where nobody said. */
  dayOrder: DayOrder | null;
};

export type ClockResult = { ok: true; clock: LogClock } | { ok: false; why: Message };

/** How far a device's clock may run ahead before a stamp without a year is taken for last year's: assumed. */
const clockErrorMs = dayMs;
/** Half a year: a log without years ends less than this after a moment known in it. */
const halfYearMs = 183 * dayMs;

/**
 * Reads what is known about a log's clock.
 *
 * @returns a refusal where a zone, a moment or a line's time can't be read or contradict each other
 */
export function compileClock(reference: ClockReference = {}): ClockResult {
  const zone = compileZone(reference.zone ?? 'UTC');
  if (zone === null) return refusal(message('zoneUnknown', { zone: reference.zone ?? '' }));
  const takenAtMs = momentMs(reference.takenAt);
  if (Number.isNaN(takenAtMs)) return refusal(message('logTakenAtUnreadable'));
  const bootedAtMs = momentMs(reference.bootedAt);
  if (Number.isNaN(bootedAtMs)) return refusal(message('deviceStartUnreadable'));
  const clock: LogClock = {
    zone,
    zoneGiven: reference.zone !== undefined,
    zonedSkewMs: () => 0,
    localSkewMs: () => 0,
    skewMs: null,
    writtenByMs: takenAtMs === null ? null : takenAtMs + clockErrorMs,
    bootedAtMs,
    nearMs: takenAtMs,
    dayOrder: reference.dayOrder ?? null,
  };
  const known: Known = { local: [], zoned: [] };
  for (const moment of reference.knownMoments ?? []) {
    const why = anchor(clock, moment, known);
    if (why !== null) return refusal(why);
  }
  clock.localSkewMs = skewBetween(known.local);
  clock.zonedSkewMs = skewBetween(known.zoned);
  clock.skewMs = lastOf(known.local)?.skewMs ?? null;
  if (clock.writtenByMs !== null) clock.writtenByMs -= clock.localSkewMs(clock.writtenByMs);
  return { ok: true, clock };
}

/** Moments of a clock that are known: all of them, and those that hold where stamps name a zone. */
type Known = { local: Anchor[]; zoned: Anchor[] };

const lastOf = (anchors: readonly Anchor[]): Anchor | undefined =>
  anchors.toSorted((a, b) => a.toldMs - b.toldMs).at(-1);

/** Takes one known moment into `clock` and `known`; says why where it can't. */
function anchor(clock: LogClock, moment: KnownMoment, known: Known): Message | null {
  const trueMs = momentMs(moment.trueTime);
  const stamp = readStamp(moment.logTime);
  if (trueMs === null || Number.isNaN(trueMs))
    return message('knownMomentUnreadable', { moment: moment.trueTime });
  if (stamp === null) return message('noTimeInLine', { line: moment.logTime });
  if (stamp.base === 'boot') {
    if (clock.bootedAtMs !== null) return message('twoMomentsSinceStart');
    clock.bootedAtMs = trueMs - stamp.ms;
    return null;
  }
  const told = toldMs(clock, stamp.base, stamp.ms, trueMs);
  const found: Anchor = { toldMs: told, skewMs: trueMs - told };
  if (known.local.some((other) => !isDrift(other, found))) return message('twoMomentsOfClock');
  known.local.push(found);
  if (clock.zoneGiven || stamp.base === 'utc') known.zoned.push(found);
  clock.writtenByMs ??= trueMs + halfYearMs;
  clock.nearMs ??= trueMs;
  return null;
}

/** The moment that a stamp tells, before any correction; of the years that fit a stamp without one, the nearest. */
function toldMs(clock: LogClock, base: StampBase, ms: number, nearMs: number): number {
  if (base === 'utc') return ms;
  const offsetOf = (localMs: number): number =>
    localMs - (clock.zone.offsetsMin(localMs)[0] as number) * minuteMs;
  if (base === 'local') return offsetOf(ms);
  if (base === 'daily') {
    const day = Math.round((nearMs - offsetOf(ms)) / dayMs);
    return offsetOf(day * dayMs + ms);
  }
  const candidates = yearsAround(nearMs).map((year) => offsetOf(utcOfYearless(ms, year)));
  return candidates.reduce((best, next) => (Math.abs(next - nearMs) < Math.abs(best - nearMs) ? next : best));
}

function refusal(why: Message): ClockResult {
  return { ok: false, why };
}

/** Milliseconds since 1970; null for none given, NaN for text that is no moment with a zone. */
function momentMs(text: string | undefined): number | null {
  if (text === undefined) return null;
  const stamp = readStamp(text);
  return stamp !== null && stamp.base === 'utc' ? stamp.ms : Number.NaN;
}

export type LocalZone = {
  /** Minutes ahead of UTC at a local time, given as though it were UTC; two, that of the earlier moment first, when clocks go back. */
  offsetsMin(localMs: number): readonly number[];
};

const quarterMs = 15 * minuteMs;
const halfDayMs = dayMs / 2;

function compileZone(name: string): LocalZone | null {
  const zone = Info.normalizeZone(/^[+-]\d/.test(name) ? `UTC${name}` : name);
  if (zone instanceof FixedOffsetZone) {
    const fixed = [zone.offset(0)];
    return { offsetsMin: () => fixed };
  }
  if (!(zone instanceof IANAZone) || !zone.isValid) return null;
  // Zones change their offset on quarters of an hour, so one answer holds for all of one: lines come by thousands.
  let quarter = Number.NaN;
  let offsets: readonly number[] = [0];
  return {
    offsetsMin(localMs) {
      const wanted = Math.floor(localMs / quarterMs);
      if (wanted !== quarter) {
        quarter = wanted;
        offsets = possibleOffsets(zone, wanted * quarterMs);
      }
      return offsets;
    },
  };
}

/** Both offsets around a change are tried; a local time that the change skips is read by the one before it. */
function possibleOffsets(zone: Zone, localMs: number): number[] {
  const before = zone.offset(localMs - halfDayMs);
  const after = zone.offset(localMs + halfDayMs);
  if (before === after) return [before];
  const fits = [before, after].filter((offset) => zone.offset(localMs - offset * minuteMs) === offset);
  return fits.length > 0 ? fits : [before];
}
