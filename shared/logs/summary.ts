import { restartKinds } from '../contract/log-findings.ts';
import { type Message, message } from '../message/index.ts';
import type { LogClock } from './clock.ts';
import { type EventKeeper, isoOf, type Kept } from './event-keeper.ts';
import { kindWords } from './event-words.ts';
import type { TextEncoding } from './line-reader.ts';
import type { Placement } from './placement.ts';
import type { LogClockStep, LogGap, LogReading } from './reading.ts';
import type { Covered, SilenceKeeper } from './silence.ts';
import { firstAtOrAfter } from './sorted.ts';
import type { LogFormat, StampBase } from './stamp.ts';
import type { DateReader } from './stamp-date.ts';

/** What is counted line by line. */
export type LineCounts = {
  lines: number;
  unparsed: number;
  cutLines: number;
  unsetClock: number;
  formats: Record<LogFormat, number>;
  bases: Record<StampBase, number>;
};

export type ReadParts = {
  counts: LineCounts;
  clock: LogClock;
  placement: Placement;
  silence: SilenceKeeper;
  keeper: EventKeeper;
  dates: ReturnType<DateReader['told']>;
  cutShort: LogReading['cutShort'];
  bytes: number;
  encoding: TextEncoding;
};

/** A restart that follows a gap within this time ended it: assumed. */
const restartAfterGapMs = 60_000;

/** Puts the reading of a whole log together. */
export function summarise(parts: ReadParts): LogReading {
  const { counts, clock, placement, silence, keeper, cutShort, bytes, encoding } = parts;
  const kept = keeper.result(placement.momentMs);
  const covered = silence.covered(placement.momentMs);
  const steps = silence.steps();
  return {
    bytes,
    lines: counts.lines,
    unparsed: counts.unparsed,
    cutLines: counts.cutLines,
    encoding,
    formats: counts.formats,
    dayOrder: orderTold(parts.dates),
    span: spanOf(covered),
    events: kept.events,
    eventCounts: kept.counts,
    notKept: kept.notKept,
    firmware: kept.firmware,
    gaps: gapsOf(covered, restartsIn(kept)),
    gapThresholdS: silence.thresholdMs() / 1000,
    clockSteps: steps.kept.map(
      ({ line, track, from, to }): LogClockStep => ({
        line,
        from: isoOf(placement.momentMs(track, from)),
        to: isoOf(placement.momentMs(track, to)),
        byS: (to - from) / 1000,
      }),
    ),
    boots: placement.boots(),
    clock: {
      zone: clock.zoneGiven ? 'given' : 'assumed',
      skewS: clock.skewMs === null ? null : clock.skewMs / 1000,
    },
    cutShort,
    notes: notesOn(parts, kept, steps.count),
  };
}

/** The order of day and month, as dates with one reading tell it; they may not tell against each other. */
function orderTold({ dayFirst, monthFirst, either, example }: ReadParts['dates']): LogReading['dayOrder'] {
  if (dayFirst + monthFirst + either === 0) return null;
  const told = dayFirst > 0 === monthFirst > 0 ? null : dayFirst > 0 ? 'dayFirst' : 'monthFirst';
  return { told, example };
}

function spanOf(covered: readonly Covered[]): LogReading['span'] {
  const first = covered[0];
  const last = covered.at(-1);
  if (first === undefined || last === undefined) return null;
  return { from: new Date(first.fromMs).toISOString(), to: new Date(last.toMs).toISOString() };
}

function gapsOf(covered: readonly Covered[], restartsMs: readonly number[]): LogGap[] {
  return covered.slice(1).map((after, index) => {
    const before = covered[index] as Covered;
    const restartMs = restartsMs[firstAtOrAfter(restartsMs, after.fromMs)] ?? Number.POSITIVE_INFINITY;
    return {
      from: new Date(before.toMs).toISOString(),
      to: new Date(after.fromMs).toISOString(),
      lengthS: (after.fromMs - before.toMs) / 1000,
      afterLine: before.toLine,
      beforeLine: after.fromLine,
      endsInRestart: restartMs - after.fromMs <= restartAfterGapMs,
    };
  });
}

function restartsIn({ events }: Kept): number[] {
  const times = events
    .filter(({ kind }) => restartKinds.includes(kind))
    .map(({ time }) => Date.parse(time ?? ''));
  return times.filter((time) => !Number.isNaN(time)).sort((a, b) => a - b);
}

function notesOn(
  { counts, clock, placement, cutShort, dates }: ReadParts,
  kept: Kept,
  steps: number,
): Message[] {
  const { bases, unparsed, unsetClock, cutLines } = counts;
  const stamped = bases.utc + bases.local + bases.yearless + bases.boot + bases.daily;
  const zoneless = bases.local + bases.yearless + bases.daily;
  const order = orderTold(dates);
  const starts = placement.boots();
  const notes: [boolean, Message][] = [
    [cutShort === 'damaged', message('logDamaged')],
    [cutShort === 'tooLarge', message('logLongerThanRead')],
    [
      zoneless > 0 && !clock.zoneGiven && clock.skewMs === null,
      message('linesWithoutZone', { lines: zoneless }),
    ],
    [
      bases.yearless > 0 && clock.writtenByMs === null,
      message('linesWithoutYear', { lines: bases.yearless }),
    ],
    [bases.daily > 0 && clock.nearMs === null, message('linesWithoutDate', { lines: bases.daily })],
    [
      order?.told === null && order.example !== null && (clock.dayOrder ?? 'unknown') === 'unknown',
      message('dayOrderUnknown', { example: order?.example ?? '' }),
    ],
    [bases.boot > 0 && clock.bootedAtMs === null, message('linesSinceStartOnly', { lines: bases.boot })],
    [starts > 1 && clock.bootedAtMs !== null, message('deviceStartedAnew', { starts })],
    [unsetClock > 0, message('linesOfUnsetClock', { lines: unsetClock })],
    [steps > 0, message('clockWasSet', { times: steps })],
    [unparsed > stamped, message('mostLinesWithoutTime', { lines: unparsed })],
    [cutLines > 0, message('longLinesCut', { lines: cutLines })],
  ];
  const notKept = Object.entries(kept.notKept).map(([kind, { count }]) =>
    message('eventsCountedOnly', { events: count, kind: kindWords(kind) }),
  );
  return [...notes.filter(([applies]) => applies).map(([, note]) => note), ...notKept];
}
