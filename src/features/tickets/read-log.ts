import canonicalize from 'canonicalize';
import type { TicketEvent as TicketEventView } from '../../../shared/contract/ticket.ts';
import { type openTriage, replay, type TriageEvent } from '../../../state-machines/index.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import {
  findTicket,
  hashOfEntry,
  type LoggedEvent,
  loggedEventsOf,
  type NamedEvent,
  namedEventsOf,
  noPreviousHash,
  noTicket,
  snapshotOf,
} from '../ticket-record/index.ts';
import { isFact } from './record-fact.ts';

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
  if ((await findTicket(context, ticketId)) === null) return noTicket;
  return found({ items: (await namedEventsOf(context, ticketId, after)).map(view) });
}

type LogCheck = { events: number; sequenceHolds: boolean; hashChainHolds: boolean; snapshotMatches: boolean };

/** Reads a ticket's log as an auditor would: the numbers without a gap, every hash anew, the snapshot by replay. */
export async function checkLog(context: Context, ticketId: string): Promise<Outcome<LogCheck>> {
  const ticket = await findTicket(context, ticketId);
  if (ticket === null) return noTicket;
  const rows = await loggedEventsOf(context, ticketId);
  return found({
    events: rows.length,
    sequenceHolds: ticket.sequence === rows.length && rows.every((row, index) => row.sequence === index + 1),
    hashChainHolds: rows.every((row, index) => hashHolds(row, rows[index - 1]?.hash ?? noPreviousHash)),
    snapshotMatches: canonicalize(replayedOrNull(ticketId, rows)) === canonicalize(snapshotOf(ticket)),
  });
}

function hashHolds({ hash, ...entry }: LoggedEvent, previousHash: string): boolean {
  return entry.previousHash === previousHash && hashOfEntry(entry) === hash;
}

/** A log that was tampered with may not replay at all; that is a finding, not a fault of ours. */
function replayedOrNull(ticketId: string, rows: readonly LoggedEvent[]): unknown {
  try {
    return replayRows(ticketId, rows);
  } catch {
    return null;
  }
}

function replayRows(ticketId: string, rows: readonly LoggedEvent[]): unknown {
  const [first, ...rest] = rows;
  if (first === undefined) return null;
  const { settings, intake } = first.payload as {
    settings: never;
    intake: { symptom: never; whatChanged: never };
  };
  const opening = {
    ticketId,
    settings,
    symptom: intake.symptom,
    whatChanged: intake.whatChanged,
    at: first.at,
    by: first.actorId,
  } satisfies Parameters<typeof openTriage>[0];
  const events = rest
    .filter((row) => !isFact(row.type))
    .map(
      (row) =>
        ({
          ...row.payload,
          type: row.type,
          at: row.at,
          by: row.actorId,
        }) as unknown as TriageEvent,
    );
  return replay(opening, events);
}
