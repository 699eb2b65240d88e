import { textOf, utf8Of } from './bytes.ts';
import { versionIn } from './firmware.ts';
import type { Placed, Placement } from './placement.ts';
import type { FirmwareString, LogEvent, LogReading } from './reading.ts';
import type { Recognition } from './recognition.ts';

/** Where in the file an event was found. */
export type FoundAt = { bytes: Uint8Array; start: number; end: number; line: number };

export type EventKeeper = {
  /**
   * Counts an event, and keeps it where its kind has room left. One that came so many times unseen is kept once.
   *
   * @returns false where the line turns out not to be of that kind: `firmware` without a version
   */
  take(kind: string, at: FoundAt, placed: Placed, timeFrom: LogEvent['timeFrom'], times?: number): boolean;
  /** All that was kept, its times told. Only after the last line. */
  result(momentMs: Placement['momentMs']): Kept;
};

export type Kept = {
  events: LogEvent[];
  counts: Record<string, number>;
  notKept: LogReading['notKept'];
  firmware: FirmwareString[];
};

const excerptLength = 300;
/** Three bytes of UTF-8 hold one UTF-16 unit at most. */
const excerptBytes = 3 * excerptLength;
const mostFirmwareStrings = 200;

type Untimed = { track: Placed['track']; place: number; timeFrom: LogEvent['timeFrom'] };
type RawEvent = Untimed & { kind: string; line: number; excerpt: string };
type RawFirmware = RawEvent & { version: string; times: number };

export function createEventKeeper(recognition: Recognition, maxPerKind: number): EventKeeper {
  const events: RawEvent[] = [];
  const counts = new Map(recognition.kinds.map((kind) => [kind, 0]));
  const firmware = new Map<string, RawFirmware>();
  const dropped = new Map<string, { count: number; first: Untimed }>();

  const takeFirmware = (event: RawEvent): boolean => {
    const version = versionIn(event.excerpt);
    if (version === null) return false;
    // The same words at another time are the same string.
    const key = `${version} ${event.excerpt.replace(/[\d.:TZ+-]{5,}/g, '#')}`;
    const known = firmware.get(key);
    if (known !== undefined) known.times += 1;
    else if (firmware.size < mostFirmwareStrings) {
      firmware.set(key, { ...event, version, times: 1 });
      events.push(event);
    } else drop(event.kind, event);
    return true;
  };
  const drop = (kind: string, { track, place, timeFrom }: Untimed): void => {
    const before = dropped.get(kind);
    if (before === undefined) dropped.set(kind, { count: 1, first: { track, place, timeFrom } });
    else before.count += 1;
  };

  return {
    take(kind, at, placed, timeFrom, times = 1) {
      const last = events.at(-1);
      if (last !== undefined && last.line === at.line && last.kind === kind) return true;
      const count = counts.get(kind) ?? 0;
      const untimed = { track: placed.track, place: placed.place, timeFrom };
      if (kind === 'firmware') {
        if (!takeFirmware({ ...untimed, kind, line: at.line, excerpt: excerptOf(at) })) return false;
      } else if (count < maxPerKind) events.push({ ...untimed, kind, line: at.line, excerpt: excerptOf(at) });
      else drop(kind, untimed);
      counts.set(kind, count + times);
      return true;
    },
    result(momentMs) {
      const timeOf = ({ track, place, timeFrom }: Untimed): string | null =>
        timeFrom === null ? null : isoOf(momentMs(track, place));
      return {
        events: events.map((event) => {
          const time = timeOf(event);
          const { kind, line, excerpt } = event;
          return { kind, time, timeFrom: time === null ? null : event.timeFrom, line, excerpt };
        }),
        counts: Object.fromEntries([...counts].filter(([, count]) => count > 0)),
        notKept: Object.fromEntries(
          [...dropped].map(([kind, { count, first }]) => [kind, { count, from: timeOf(first) }]),
        ),
        firmware: [...firmware.values()].map((event) => {
          const { version, line, excerpt, times } = event;
          return { version, time: timeOf(event), line, excerpt, times };
        }),
      };
    },
  };
}

/** UTC, ISO 8601, to the millisecond. */
export function isoOf(ms: number | null): string | null {
  return ms === null ? null : new Date(ms).toISOString();
}

const colourSequence = new RegExp(`${String.fromCharCode(27)}\\[[0-9;]*[A-Za-z]`, 'g');

function excerptOf({ bytes, start, end }: FoundAt): string {
  const text = textOf(bytes, start, Math.min(end, start + excerptBytes));
  const clean = text
    .replace(colourSequence, '')
    .replace(/\p{Cc}+/gu, ' ')
    .trimEnd();
  if (clean.length <= excerptLength) return clean;
  // A slice would hold on to the longer text for as long as the reading lives.
  const bounded = utf8Of(clean.slice(0, excerptLength - 1).toWellFormed());
  return `${textOf(bounded, 0, bounded.length)}…`;
}
