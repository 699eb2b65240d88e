import type { TriageEvent } from '../events.ts';
import { foldLog, stateName, type TriageSnapshot } from '../evolve.ts';
import { MACHINE_VERSION } from '../machine.ts';
import type { Opening } from '../opening.ts';
import * as version1 from './1/as-today.ts';

/** Something of a log as it was stored: JSON, and the version of the machine that wrote it. */
export type Stored = { version: number; content: unknown };
type Before = Pick<TriageSnapshot, 'value' | 'context'>;

type Reader = {
  opening: (content: unknown) => Opening;
  /** @param before where the log up to this event leads */
  events: (content: unknown, before: Before) => TriageEvent[];
};

/**
 * How a log of each version is read. A release reads a version before any release writes it, so that servers can be
 * replaced one by one: its reader comes first, and MACHINE_VERSION goes up in the release after.
 */
const readers: Readonly<Record<number, Reader>> = {
  1: {
    opening: (content) => version1.openingAsToday(content as version1.OpeningThen),
    events: (content, before) =>
      version1.eventsAsToday(
        // No log of version 1 has a watch that it did not know of.
        { state: stateName(before), record: before.context as version1.Before['record'] },
        content as version1.EventThen,
      ),
  },
  [MACHINE_VERSION]: {
    opening: (content) => content as Opening,
    events: (content) => [content as TriageEvent],
  },
};

/** Whether this program reads logs of that version. */
export const isReadable = (version: number): boolean => version in readers;
export const newestReadable = Math.max(...Object.keys(readers).map(Number));

/** An event that a newer version of the program wrote. */
export class EventOfNewerVersion extends Error {
  override readonly name = 'EventOfNewerVersion';
  readonly found: number;

  constructor(found: number) {
    super(`An event of version ${found} can't be read; versions up to ${newestReadable} are known.`);
    this.found = found;
  }
}

function readerOf({ version }: Stored): Reader {
  const reader = readers[version];
  if (reader === undefined) throw new EventOfNewerVersion(version);
  return reader;
}

/**
 * A stored opening as today's.
 *
 * @throws EventOfNewerVersion
 */
export const openingAsToday = (stored: Stored): Opening => readerOf(stored).opening(stored.content);

/**
 * A stored event as today's: the events that say the same, in order. What its version did not store is computed as
 * that version did, or marked `notRecorded`.
 *
 * @param before where the log up to this event leads
 * @throws EventOfNewerVersion
 */
export const asToday = (stored: Stored, before: Before): TriageEvent[] =>
  readerOf(stored).events(stored.content, before);

/**
 * The snapshot that a stored log leads to, whichever versions wrote it.
 *
 * @throws EventOfNewerVersion; EventNotTaken with the event's number, when an event of the log is not taken
 */
export const replayStored = (opening: Stored, events: readonly Stored[]): TriageSnapshot =>
  foldLog(openingAsToday(opening), events, asToday);

/**
 * What each event of a stored log says, as today's events, in its order.
 *
 * @throws as `replayStored`; of a log that is all of today's version nothing is replayed
 */
export function logAsToday(opening: Stored, events: readonly Stored[]): TriageEvent[][] {
  const older = events.slice(0, events.findLastIndex(({ version }) => version !== MACHINE_VERSION) + 1);
  const read: TriageEvent[][] = [];
  foldLog(openingAsToday(opening), older, (stored, before) => {
    const today = asToday(stored, before);
    read.push(today);
    return today;
  });
  return [...read, ...events.slice(older.length).map(({ content }) => [content as TriageEvent])];
}
