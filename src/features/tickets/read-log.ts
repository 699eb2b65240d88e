import canonicalize from 'canonicalize';
import type { TicketEvent as TicketEventView } from '../../../shared/contract/ticket.ts';
import { type openTriage, replay, type TriageEvent } from '../../../state-machines/index.ts';
import type { Prisma } from '../../database/index.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { hashOfEntry, noPreviousHash } from './log.ts';
import { isFact } from './record-fact.ts';
import { findTicket, noTicket } from './ticket-row.ts';

const withActor = { actor: { select: { name: true } } } as const;
type EventRow = Prisma.TicketEventGetPayload<{ include: typeof withActor }>;

const eventsOf = ({ tx, actor }: Context, ticketId: string, after = 0): Promise<EventRow[]> =>
  tx.ticketEvent.findMany({
    where: { orgId: actor.orgId, ticketId, sequence: { gt: after } },
    include: withActor,
    orderBy: { sequence: 'asc' },
  });

const view = (row: EventRow): TicketEventView => ({
  sequence: row.sequence,
  type: row.type,
  payload: row.payload as Record<string, unknown>,
  actorId: row.actorId,
  actorName: row.actor.name,
  at: row.at.toISOString(),
  machineVersion: row.machineVersion,
  previousHash: row.previousHash,
  hash: row.hash,
});

/** The log of a ticket from the event after `after` on. */
export async function readLog(
  context: Context,
  ticketId: string,
  after: number,
): Promise<Outcome<{ items: TicketEventView[] }>> {
  if ((await findTicket(context, ticketId)) === null) return noTicket;
  return found({ items: (await eventsOf(context, ticketId, after)).map(view) });
}

type LogCheck = { events: number; sequenceHolds: boolean; hashChainHolds: boolean; snapshotMatches: boolean };

/** Reads a ticket's log as an auditor would: the numbers without a gap, every hash anew, the snapshot by replay. */
export async function checkLog(context: Context, ticketId: string): Promise<Outcome<LogCheck>> {
  const ticket = await findTicket(context, ticketId);
  if (ticket === null) return noTicket;
  const rows = await eventsOf(context, ticketId);
  return found({
    events: rows.length,
    sequenceHolds: ticket.sequence === rows.length && rows.every((row, index) => row.sequence === index + 1),
    hashChainHolds: rows.every((row, index) => hashHolds(row, rows[index - 1]?.hash ?? noPreviousHash)),
    snapshotMatches: canonicalize(replayedOrNull(ticketId, rows)) === canonicalize(ticket.snapshot),
  });
}

function hashHolds(row: EventRow, previousHash: string): boolean {
  const { actorName, hash, ...entry } = view(row);
  return row.previousHash === previousHash && hashOfEntry({ ...entry, ticketId: row.ticketId }) === hash;
}

/** A log that was tampered with may not replay at all; that is a finding, not a fault of ours. */
function replayedOrNull(ticketId: string, rows: readonly EventRow[]): unknown {
  try {
    return replayRows(ticketId, rows);
  } catch {
    return null;
  }
}

function replayRows(ticketId: string, rows: readonly EventRow[]): unknown {
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
    at: first.at.toISOString(),
    by: first.actorId,
  } satisfies Parameters<typeof openTriage>[0];
  const events = rest
    .filter((row) => !isFact(row.type))
    .map(
      (row) =>
        ({
          ...(row.payload as object),
          type: row.type,
          at: row.at.toISOString(),
          by: row.actorId,
        }) as unknown as TriageEvent,
    );
  return replay(opening, events);
}
