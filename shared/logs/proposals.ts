import { type Message, message } from '../message/index.ts';
import { clipped, coveredTime, lengthMs } from './covered-time.ts';
import { kindWords } from './event-words.ts';
import type { LogReading } from './reading.ts';

/**
 * Events that interrupt the picture, and the event that says each is over. Which they are: common practice. A restart
 * that somebody asked for is none.
 */
const overWith: Readonly<Record<string, string>> = {
  syncLost: 'syncFound',
  hotPlugDown: 'hotPlugUp',
  authenticationFailed: 'authenticationDone',
  repeaterFailed: 'authenticationDone',
  linkTrainingFailed: 'linkTrained',
  supplyLost: 'supplyFound',
  restart: 'syncFound',
  restartPower: 'syncFound',
  restartWatchdog: 'syncFound',
  restartCrash: 'syncFound',
  restartHeat: 'syncFound',
};

export type ProposalOptions = {
  /** Kinds of event that count as the fault; those that interrupt the picture when left out. */
  faultKinds?: readonly string[];
  /** What comes within this many seconds belongs to the same occurrence; 10 when left out (assumed). */
  debounceS?: number;
};

/** An occurrence of the fault as the log tells it, for the technician to confirm or refuse. */
export type ProposedOccurrence = {
  /** UTC, ISO 8601. */
  at: string;
  /** Until the last of what was lost was back; null where the log doesn't tell. */
  durationS: number | null;
  /** Kinds of event in it, in the order they first came. */
  kinds: string[];
  /** Numbers of its lines in the file, at most 50. */
  lines: number[];
  /** The line it begins with, as it stands in the file. */
  excerpt: string;
  description: Message;
};

export type ProposedOccurrences = {
  proposed: ProposedOccurrence[];
  /** Minutes of the watch that the log covers, and of the whole watch. */
  coveredMin: number;
  watchMin: number;
  /** What keeps the count from being the whole truth. */
  notes: Message[];
};

/** Nobody sits before a black screen for longer and calls it one occurrence: assumed. */
const longestOutageMs = 600_000;
const mostLines = 50;

type TimedEvent = { ms: number; kind: string; line: number; excerpt: string };
type Burst = { events: TimedEvent[]; open: Set<string>; lastMs: number; overMs: number | null };

/**
 * Counts the occurrences of the fault that a log shows inside a watch. Only proposes: whether each was one, a person
 * who was there says.
 *
 * @param watch `endedAt` null for one that is still running: up to the log's end
 */
export function proposeOccurrences(
  reading: LogReading,
  watch: { startedAt: string; endedAt: string | null },
  options: ProposalOptions = {},
): ProposedOccurrences {
  const faultKinds = new Set(options.faultKinds ?? Object.keys(overWith));
  const fromMs = Date.parse(watch.startedAt);
  const toMs = Date.parse(watch.endedAt ?? reading.span?.to ?? watch.startedAt);
  const counted = (kind: string): boolean => faultKinds.has(kind);
  const events = reading.events
    .filter(({ kind }) => counted(kind) || Object.values(overWith).includes(kind))
    .flatMap(({ time, kind, line, excerpt }) =>
      time === null ? [] : [{ ms: Date.parse(time), kind, line, excerpt }],
    )
    .filter(({ ms }) => ms >= fromMs - longestOutageMs && ms <= toMs + longestOutageMs)
    .sort((a, b) => a.ms - b.ms || a.line - b.line);
  const bursts = burstsOf(events, counted, (options.debounceS ?? 10) * 1000, reading.eventCounts);
  const inWatch = bursts.filter(
    ({ events: [first] }) => first !== undefined && first.ms >= fromMs && first.ms <= toMs,
  );
  const coveredMin = lengthMs(clipped(coveredTime(reading), { fromMs, toMs })) / 60_000;
  const watchMin = Math.max(0, toMs - fromMs) / 60_000;
  return {
    proposed: inWatch.map(proposalOf),
    coveredMin,
    watchMin,
    notes: notesOn(reading, counted, { coveredMin, watchMin }),
  };
}

function burstsOf(
  events: readonly TimedEvent[],
  isFault: (kind: string) => boolean,
  debounceMs: number,
  eventCounts: Readonly<Record<string, number>>,
): Burst[] {
  const bursts: Burst[] = [];
  for (const event of events) {
    const current = bursts.at(-1);
    if (!isFault(event.kind)) {
      if (current !== undefined) recover(current, event);
      continue;
    }
    const over = overWith[event.kind];
    const burst = current !== undefined && goesOn(current, event.ms, debounceMs) ? current : begun(bursts);
    burst.events.push(event);
    burst.lastMs = event.ms;
    // A log that never says when something is over can't hold an occurrence open.
    if (over !== undefined && (eventCounts[over] ?? 0) > 0) burst.open.add(over);
    burst.overMs = null;
  }
  return bursts;
}

function begun(bursts: Burst[]): Burst {
  const burst: Burst = { events: [], open: new Set(), lastMs: 0, overMs: null };
  bursts.push(burst);
  return burst;
}

function goesOn(burst: Burst, ms: number, debounceMs: number): boolean {
  const sinceMs = ms - burst.lastMs;
  return sinceMs <= debounceMs || (burst.open.size > 0 && sinceMs <= longestOutageMs);
}

function recover(burst: Burst, event: TimedEvent): void {
  if (event.ms - burst.lastMs > longestOutageMs || !burst.open.delete(event.kind)) return;
  burst.lastMs = event.ms;
  if (burst.open.size === 0) burst.overMs = event.ms;
}

function proposalOf({ events, overMs }: Burst): ProposedOccurrence {
  const first = events[0] as TimedEvent;
  const kinds = [...new Set(events.map(({ kind }) => kind))];
  const durationS = overMs === null ? null : (overMs - first.ms) / 1000;
  return {
    at: new Date(first.ms).toISOString(),
    durationS,
    kinds,
    lines: events.slice(0, mostLines).map(({ line }) => line),
    excerpt: first.excerpt,
    description: shownIn(kinds, first),
  };
}

function shownIn(kinds: readonly string[], { kind, excerpt }: TimedEvent): Message {
  const next = kinds.slice(1).map(kindWords);
  const first = kindWords(kind);
  return next.length === 0
    ? message('logShows', { first, excerpt })
    : message('logShowsInTurn', { first, next, excerpt });
}

function notesOn(
  reading: LogReading,
  counted: (kind: string) => boolean,
  { coveredMin, watchMin }: { coveredMin: number; watchMin: number },
): Message[] {
  const untimed = reading.events.filter(({ kind, time }) => counted(kind) && time === null).length;
  const notes: [boolean, Message][] = [
    [
      watchMin - coveredMin > 1 / 60,
      message('logCoversPartOfWatch', { covered: coveredMin, watch: watchMin }),
    ],
    [untimed > 0, message('eventsWithoutTime', { events: untimed })],
    [Object.keys(reading.notKept).some((kind) => counted(kind)), message('lateOccurrencesMayBeMissing')],
  ];
  return notes.filter(([applies]) => applies).map(([, note]) => note);
}
