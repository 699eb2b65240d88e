import { escapeCharacter, openBracket, space } from './ascii.ts';
import { textOf } from './bytes.ts';
import { compileClock, type LogClock } from './clock.ts';
import { createEventKeeper } from './event-keeper.ts';
import { LogCutShort, unpacked } from './gunzip.ts';
import { createLineReader, defaultMaxLineBytes } from './line-reader.ts';
import { createPlacement, type Placed } from './placement.ts';
import type { LogEvent, LogReading } from './reading.ts';
import { builtInRecognition, createMatcher, type Recognition } from './recognition.ts';
import { createSilenceKeeper, defaultSilenceRule, type SilenceRule } from './silence.ts';
import { emptyStamp } from './stamp.ts';
import { createDateReader } from './stamp-date.ts';
import { createStampReader } from './stamp-reader.ts';
import { type LineCounts, summarise } from './summary.ts';

export type LogOptions = {
  /** From `compileClock`; nothing known when left out. */
  clock?: LogClock;
  /** From `compileRecognition`; our own table when left out. */
  recognition?: Recognition;
  /** Events kept of each kind, counted beyond; 2000 when left out (assumed). */
  maxEventsPerKind?: number;
  /** 16,384 when left out (assumed). */
  maxLineBytes?: number;
  /** Most bytes read, unpacked; 1 GiB when left out (assumed). Only for `readLog`. */
  maxBytes?: number;
  silence?: SilenceRule;
};

export type LogReader = {
  /** Takes the next piece of the file, unpacked; pieces may end anywhere. */
  push(chunk: Uint8Array | string): void;
  /** What the log said. Nothing may be pushed after it. */
  finish(cutShort?: LogReading['cutShort']): LogReading;
};

const defaultMaxEventsPerKind = 2000;

/**
 * Reads one log, pushed piece by piece, in one pass and bounded memory whatever its length. Nothing in the input makes
 * it throw, and how it is cut into pieces makes no difference.
 */
export function createLogReader(options: LogOptions = {}): LogReader {
  const clock = options.clock ?? unknownClock();
  const recognition = options.recognition ?? builtInRecognition();
  const placement = createPlacement(clock);
  const silence = createSilenceKeeper(options.silence ?? defaultSilenceRule);
  const keeper = createEventKeeper(recognition, options.maxEventsPerKind ?? defaultMaxEventsPerKind);
  const matcher = createMatcher(recognition);
  const dates = createDateReader(clock.dayOrder);
  const readStampOf = createStampReader(dates);
  const stamp = emptyStamp();
  const placed: Placed = { track: 'clock', place: 0 };
  const counts: LineCounts = {
    lines: 0,
    unparsed: 0,
    cutLines: 0,
    unsetClock: 0,
    formats: { rfc5424: 0, rfc3164: 0, iso: 0, json: 0, kernel: 0, ctime: 0, date: 0, epoch: 0, time: 0 },
    bases: { utc: 0, local: 0, yearless: 0, boot: 0, daily: 0 },
  };
  let timeOf: LogEvent['timeFrom'] = null;
  /** Kind of the event of the line before; null where that was none. */
  let lastKind: string | null = null;

  /** Takes up the line's stamp; returns where its message begins. */
  const takeStamp = (bytes: Uint8Array, start: number, end: number): number => {
    if (!readStampOf(bytes, start, end, stamp)) {
      counts.unparsed += 1;
      if (timeOf === 'line') timeOf = 'lineBefore';
      return start;
    }
    counts.formats[stamp.format] += 1;
    counts.bases[stamp.base] += 1;
    const outcome = placement.put(stamp, placed);
    if (outcome === 'unset') {
      counts.unsetClock += 1;
      timeOf = null;
      return stamp.end;
    }
    timeOf = 'line';
    silence.note(placed, counts.lines);
    if (outcome === 'restarted')
      keeper.take('restart', { bytes, start, end, line: counts.lines }, placed, timeOf);
    return stamp.end;
  };

  const lines = createLineReader((bytes, lineStart, end, cut) => {
    counts.lines += 1;
    if (cut) counts.cutLines += 1;
    const start = skipPadding(bytes, lineStart, end);
    if (start === end) return;
    const message = takeStamp(bytes, start, end);
    const times = lastKind === null ? 0 : repeatsIn(bytes, message, end);
    if (times > 0 && lastKind !== null) {
      keeper.take(lastKind, { bytes, start, end, line: counts.lines }, placed, timeOf, times);
      return;
    }
    lastKind = null;
    for (let row = matcher.match(bytes, message, end); row >= 0; row = matcher.matchAfter(row)) {
      const { kind } = recognition.rows[row] as Recognition['rows'][number];
      if (!keeper.take(kind, { bytes, start, end, line: counts.lines }, placed, timeOf)) continue;
      lastKind = kind === 'firmware' ? null : kind;
      return;
    }
  }, options.maxLineBytes ?? defaultMaxLineBytes);

  return {
    push: (chunk) => lines.push(chunk),
    finish: (cutShort = null) => {
      lines.finish();
      return summarise({
        ...{ counts, clock, placement, silence, keeper, cutShort, dates: dates.told() },
        ...{ bytes: lines.bytes(), encoding: lines.encoding() },
      });
    },
  };
}

/**
 * Reads a log file, plain or gzip (told by its first bytes), in one pass and bounded memory.
 *
 * @param chunks the file's bytes in order: a Node stream as it is, a web stream through `chunksOf`
 * @returns what the log says; where packed data is damaged or too large, what came before, and `cutShort`
 * @throws only what `chunks` itself throws
 */
export async function readLog(
  chunks: AsyncIterable<Uint8Array>,
  options: LogOptions = {},
): Promise<LogReading> {
  const reader = createLogReader(options);
  try {
    for await (const chunk of unpacked(chunks, options.maxBytes)) reader.push(chunk);
  } catch (error) {
    if (!(error instanceof LogCutShort)) throw error;
    return reader.finish(error.reason);
  }
  return reader.finish();
}

/**
 * Reads a log file that can be read more than once. Where its dates tell the order of day and month only further down,
 * it is read again by that order; where they don't tell at all and nobody said, those dates are left untold.
 *
 * @param open the file's bytes from its start, each time
 */
export async function readLogFile(
  open: () => AsyncIterable<Uint8Array>,
  options: LogOptions = {},
): Promise<LogReading> {
  const clock = options.clock ?? unknownClock();
  const first = await readLog(open(), { ...options, clock });
  if (clock.dayOrder !== null || first.dayOrder === null || first.dayOrder.told === 'dayFirst') return first;
  const order = first.dayOrder.told ?? 'unknown';
  const again = await readLog(open(), { ...options, clock: { ...clock, dayOrder: order } });
  return { ...again, dayOrder: first.dayOrder };
}

function unknownClock(): LogClock {
  const compiled = compileClock();
  if (!compiled.ok) throw new Error(compiled.why.code);
  return compiled.clock;
}

/** How often the line before came once more, where a line says so: `last message repeated 3 times`; 0 where not. */
function repeatsIn(bytes: Uint8Array, start: number, end: number): number {
  const text = textOf(bytes, start, Math.min(end, start + 120));
  const [, times = '0', goesOn = ''] = /\bmessage repeated (\d{1,6}) times?(.?)/i.exec(text) ?? [];
  // What names the message once more is read as that message.
  return goesOn === ':' ? 0 : Number(times);
}

/** Skips what stands before a line's first character: blanks, NULs left by a power cut, colour sequences (ECMA-48). */
function skipPadding(bytes: Uint8Array, start: number, end: number): number {
  let at = start;
  while (at < end) {
    const byte = bytes[at] as number;
    if (byte === escapeCharacter && at + 1 < end && bytes[at + 1] === openBracket)
      at = skipSequence(bytes, at + 2, end);
    else if (byte <= space) at += 1;
    else return at;
  }
  return end;
}

/** Parameters and intermediates are below 64, the final byte is not: ECMA-48, 5.4. */
function skipSequence(bytes: Uint8Array, start: number, end: number): number {
  let at = start;
  while (at < end && (bytes[at] as number) < 64) at += 1;
  return Math.min(end, at + 1);
}
