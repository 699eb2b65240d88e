import type { ChainVersionRef } from '../../../shared/contract/site.ts';
import type { TimelineEntry } from '../../../shared/contract/ticket.ts';
import type { TriageRecord } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/index.ts';
import { describeEvent } from '../../../state-machines/index.ts';
import type { LogEvents } from '../log-findings/index.ts';
import { type LoggedEvent, logAsReadToday } from '../ticket-record/index.ts';

export type PacketRef = {
  readonly id: string;
  readonly version: number;
  readonly at: string;
  readonly byName: string;
};

export type TimelineSources = {
  /** The whole log. */
  readonly events: readonly LoggedEvent[];
  readonly chain: { readonly id: string; readonly versions: readonly ChainVersionRef[] };
  readonly packets: readonly PacketRef[];
  readonly logs: readonly LogEvents[];
};

/**
 * All that happened to a case, oldest first by the time it happened, in sentences: its log, the versions of its chain
 * since it was opened, the packets before this one, what its logs show around its watches.
 */
export function timelineOf(
  record: TriageRecord,
  { events, chain, packets, logs }: TimelineSources,
  nameOf: (memberId: string) => string,
): TimelineEntry[] {
  const opened = events[0]?.at ?? '';
  const entries: TimelineEntry[] = [
    ...logAsReadToday(events).map((event) => eventEntry(event, record, nameOf)),
    ...chain.versions
      .filter(({ changedAt }) => changedAt >= opened)
      .map(({ version, changedAt, changedByName, changes }) => ({
        at: changedAt,
        kind: 'chain' as const,
        actorName: changedByName,
        text: message('log/chainChanged', { changes: [...changes] }),
        ref: { chainId: chain.id, version },
      })),
    ...packets.map(({ id, version, at, byName }) => ({
      at,
      kind: 'packet' as const,
      actorName: byName,
      text: message('log/packetMade', { version }),
      ref: { packetId: id, version },
    })),
    ...logs.flatMap(logEntries),
  ];
  // A stable sort: what happened in the same millisecond keeps the order above.
  return entries.sort((one, other) => one.at.localeCompare(other.at));
}

/** At the time it happened; where a phone was out of signal, `ref.receivedAt` says when the server heard of it. */
function eventEntry(
  { at, actorId, type, payload, sequence }: LoggedEvent,
  record: TriageRecord,
  nameOf: (memberId: string) => string,
): TimelineEntry {
  const { happenedAt } = payload as { readonly happenedAt?: string };
  return {
    at: happenedAt ?? at,
    kind: 'event',
    actorName: nameOf(actorId),
    text: describeEvent({ ...payload, type, at }, record),
    ref: { sequence, type, ...(happenedAt === undefined ? {} : { receivedAt: at }) },
  };
}

function logEntries({ evidenceId, fileName, events }: LogEvents): TimelineEntry[] {
  return events.map(({ at, words: kind, line, excerpt }) => {
    const said =
      fileName === null
        ? message('unnamedLogLine', { line, kind, excerpt })
        : message('logLine', { fileName, line, kind, excerpt });
    return {
      at,
      kind: 'log' as const,
      actorName: '',
      text: said,
      ref: { evidenceId, line },
    };
  });
}
