import canonicalize from 'canonicalize';
import type { TicketEvent as TicketEventView } from '../../../shared/contract/ticket.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import {
  hashOfEntry,
  hasTicket,
  LogDoesNotReplayError,
  type LoggedEvent,
  loggedEventsOf,
  type NamedEvent,
  namedEventsOf,
  noPreviousHash,
  noTicket,
  replayLog,
  rowToCheck,
} from '../ticket-record/index.ts';

const view = ({ event, actorName }: NamedEvent): TicketEventView => {
  const { ticketId, ...shown } = event;
  return { ...shown, actorName };
};

/** The log of a ticket from the event after `after` on. */
export async function readLog(
  context: Context,
  ticketId: string,
  after: number,
): Promise<Outcome<{ items: TicketEventView[] }>> {
  if (!(await hasTicket(context, ticketId))) return noTicket;
  return found({ items: (await namedEventsOf(context, ticketId, after)).map(view) });
}

type LogCheck = { events: number; sequenceHolds: boolean; hashChainHolds: boolean; snapshotMatches: boolean };

/** Reads a ticket's log as an auditor would: the numbers without a gap, every hash anew, the snapshot by replay. */
export async function checkLog(context: Context, ticketId: string): Promise<Outcome<LogCheck>> {
  const ticket = await rowToCheck(context, ticketId);
  if (ticket === null) return noTicket;
  const rows = await loggedEventsOf(context, ticketId);
  return found({
    events: rows.length,
    sequenceHolds: ticket.sequence === rows.length && rows.every((row, index) => row.sequence === index + 1),
    hashChainHolds: rows.every((row, index) => hashHolds(row, rows[index - 1]?.hash ?? noPreviousHash)),
    snapshotMatches: snapshotMatches(ticket.snapshot, replayedOrNull(rows)),
  });
}

/** A snapshot that is not in use, since an older version wrote it, says nothing that could differ. */
const snapshotMatches = (stored: unknown, replayed: unknown): boolean =>
  stored === null ? replayed !== null : canonicalize(replayed) === canonicalize(stored);

function hashHolds({ hash, ...entry }: LoggedEvent, previousHash: string): boolean {
  return entry.previousHash === previousHash && hashOfEntry(entry) === hash;
}

/** A log that was tampered with may not replay at all; that is a finding, not a fault of ours. */
function replayedOrNull(rows: readonly LoggedEvent[]): unknown {
  try {
    return replayLog(rows);
  } catch (error) {
    if (error instanceof LogDoesNotReplayError) return null;
    throw error;
  }
}
