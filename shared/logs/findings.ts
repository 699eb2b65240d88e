import type { LogEventSeen, LogFinding } from '../contract/log-findings.ts';
import type { Occurrence, Watch } from '../contract/triage.ts';
import { coverage } from './coverage.ts';
import { kindWords } from './event-words.ts';
import { precursors } from './precursors.ts';
import { proposeOccurrences } from './proposals.ts';
import type { LogEvent, LogReading } from './reading.ts';
import { isLoggedOf } from './same-occurrence.ts';

/** A log on a ticket, read on arrival. */
export type TicketLog = {
  evidenceId: string;
  /** The device it is from; null where nobody said. */
  deviceId: string | null;
  fileName: string | null;
  reading: LogReading;
};

/** Events this long before and after a watch are shown with it, minutes; assumed. */
const aroundWatchMin = 2;
/** Events shown of one log at most, the earliest ones; assumed. */
const mostEvents = 400;

/**
 * What a log says about the fault that the watches were for.
 *
 * @param watches of the ticket; occurrences that were withdrawn don't count, a running watch is left out of proposals
 */
export function logFindings({ reading, ...log }: TicketLog, watches: readonly Watch[]): LogFinding {
  const seen = watches.flatMap((watch) => standing(watch).map((occurrence) => ({ watch, occurrence })));
  const covered = coverage(
    reading,
    seen.map(({ occurrence }) => occurrence),
  );
  const before = precursors(
    reading,
    seen.map(({ occurrence }) => occurrence),
  );
  return {
    ...log,
    span: reading.span,
    lines: reading.lines,
    eventCounts: reading.eventCounts,
    events: eventsNear(reading, watches),
    firmware: reading.firmware.map(({ version, time, excerpt }) => ({ version, at: time, excerpt })),
    gaps: reading.gaps.map(({ from, to, lengthS, endsInRestart }) => ({ from, to, lengthS, endsInRestart })),
    coverage: {
      complete: covered.complete,
      covered: covered.covered,
      of: seen.length,
      sentence: covered.sentence,
      occurrences: seen.flatMap(({ watch, occurrence }, index) => {
        const found = covered.occurrences[index];
        if (found === undefined) return [];
        const [shows = null] = found.shows === null ? [] : shown(found.shows);
        return [
          { watchId: watch.id, occurrenceId: occurrence.id, at: occurrence.at, status: found.status, shows },
        ];
      }),
    },
    precursors: before.kinds.map(({ pValue: _, ...kind }) => ({ ...kind, words: kindWords(kind.kind) })),
    watches: watches.filter(({ endedAt }) => endedAt !== null).map((watch) => proposedIn(reading, watch)),
    notes: [...reading.notes, ...(seen.length === 0 ? [] : before.notes)],
  };
}

/** What a log shows in or near these watches, as it stands in the file. */
export const eventsNear = (reading: LogReading, watches: readonly Watch[]): LogEventSeen[] =>
  reading.events.flatMap((event) => (isNear(event, watches) ? shown(event) : [])).slice(0, mostEvents);

const standing = (watch: Watch): Occurrence[] =>
  watch.occurrences.filter(({ withdrawn }) => withdrawn === null);

const shown = ({ kind, time, line, excerpt }: LogEvent): LogEventSeen[] =>
  time === null ? [] : [{ kind, words: kindWords(kind), at: time, line, excerpt }];

function isNear({ time }: LogEvent, watches: readonly Watch[]): boolean {
  if (time === null) return false;
  const at = Date.parse(time);
  const marginMs = aroundWatchMin * 60_000;
  return watches.some(
    ({ startedAt, endedAt }) =>
      at >= Date.parse(startedAt) - marginMs && (endedAt === null || at <= Date.parse(endedAt) + marginMs),
  );
}

function proposedIn(reading: LogReading, watch: Watch): LogFinding['watches'][number] {
  const { proposed, coveredMin, watchMin, notes } = proposeOccurrences(reading, watch);
  const recordedAs = (at: string): string | null =>
    standing(watch).find((each) => isLoggedOf(each.at, at))?.id ?? null;
  return {
    watchId: watch.id,
    purpose: watch.purpose,
    coveredMin,
    watchMin,
    proposed: proposed.map((each) => ({ ...each, recordedAs: recordedAs(each.at) })),
    notes,
  };
}
