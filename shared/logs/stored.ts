import type { LogFinding } from '../contract/log-findings.ts';
import { type Message, storedMessage } from '../message/index.ts';
import type { LogReading } from './reading.ts';

/** As version 1 stored it: with English sentences in place of every message. */
type InSentences<Of> = Of extends Message
  ? Of | string
  : Of extends (infer Item)[]
    ? InSentences<Item>[]
    : Of extends object
      ? { [Key in keyof Of]: InSentences<Of[Key]> }
      : Of;

/** The reading of a log as it was stored, in today's form; what an earlier version said stays as it was written. */
export const readingAsToday = (stored: InSentences<LogReading>): LogReading => ({
  ...(stored as LogReading),
  // Earlier versions read no such dates.
  dayOrder: stored.dayOrder ?? null,
  notes: stored.notes.map(storedMessage),
});

/** What a log was found to say, as a case file holds it, in today's form. */
export function logFindingAsToday(stored: InSentences<LogFinding>): LogFinding {
  const { events, coverage, precursors, watches, notes } = stored;
  return {
    ...(stored as LogFinding),
    events: events.map(eventAsToday),
    coverage: {
      ...coverage,
      sentence: storedMessage(coverage.sentence),
      occurrences: coverage.occurrences.map(({ shows, ...occurrence }) => ({
        ...occurrence,
        shows: shows === null ? null : eventAsToday(shows),
      })),
    },
    precursors: precursors.map(({ words, sentence, ...found }) => ({
      ...found,
      words: storedMessage(words),
      sentence: storedMessage(sentence),
    })),
    watches: watches.map(({ proposed, notes: onWatch, ...watch }) => ({
      ...watch,
      proposed: proposed.map(({ description, ...each }) => ({
        ...each,
        excerpt: each.excerpt ?? '',
        description: storedMessage(description),
      })),
      notes: onWatch.map(storedMessage),
    })),
    notes: notes.map(storedMessage),
  };
}

const eventAsToday = ({
  words,
  ...event
}: InSentences<LogFinding['events'][number]>): LogFinding['events'][number] => ({
  ...event,
  words: storedMessage(words),
});
