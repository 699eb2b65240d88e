import type { UnreadKind } from '../../../shared/contract/ticket.ts';
import { dueOf, type TriageSnapshot } from '../../../state-machines/index.ts';
import { type Prisma, UnreadableDataError } from '../../database/index.ts';
import type { Context } from '../../http/index.ts';
import { columnsOf, readSnapshot } from './snapshot.ts';

/** What a ticket is shown with. */
export const withNames = {
  site: { select: { clientName: true } },
  chain: { select: { name: true } },
  assignee: { select: { name: true } },
} as const;
type StoredTicket = Prisma.TicketGetPayload<{ include: typeof withNames }>;
/** A ticket without what was asked in the call and what triage knows of it. */
export type TicketHead = Omit<StoredTicket, 'intake' | 'snapshot' | 'machineVersion'>;
export type TicketRow = Omit<StoredTicket, 'snapshot'> & { readonly snapshot: TriageSnapshot };

const storedTicket = ({ tx, actor }: Context, id: string): Promise<StoredTicket | null> =>
  tx.ticket.findUnique({ where: { orgId_id: { orgId: actor.orgId, id } }, include: withNames });

const withSnapshot = async (context: Context, row: StoredTicket): Promise<TicketRow> => ({
  ...row,
  snapshot: (await readSnapshot(context, row)).snapshot,
});

/** Null when there is no such ticket. @throws UnreadableDataError */
export async function findTicket(context: Context, id: string): Promise<TicketRow | null> {
  const row = await storedTicket(context, id);
  return row === null ? null : withSnapshot(context, row);
}

/**
 * Locks a ticket for the rest of the transaction and reads it; null when there is none. A snapshot that had to be
 * read off the log is stored on the way.
 *
 * @throws UnreadableDataError
 */
export async function lockTicket(context: Context, id: string): Promise<TicketRow | null> {
  const { tx, actor } = context;
  await tx.$queryRaw`select id from ticket where org_id = ${actor.orgId}::uuid and id = ${id}::uuid for update`;
  const row = await storedTicket(context, id);
  if (row === null) return null;
  const { snapshot, isStored } = await readSnapshot(context, row);
  if (isStored) return { ...row, snapshot };
  const columns = columnsOf(snapshot);
  await tx.ticket.update({ where: { orgId_id: { orgId: actor.orgId, id } }, data: columns });
  return { ...row, ...columns, due: dueOf(snapshot.context), snapshot };
}

/** A ticket, or of one that can't be read what its row says, and why. */
export type ReadTicket =
  | { readonly kind: 'read'; readonly row: TicketRow }
  | { readonly kind: 'unread'; readonly row: TicketHead; readonly because: UnreadKind };

async function tryWithSnapshot(context: Context, row: StoredTicket): Promise<ReadTicket> {
  try {
    return { kind: 'read', row: await withSnapshot(context, row) };
  } catch (error) {
    if (error instanceof UnreadableDataError) return { kind: 'unread', row, because: error.kind };
    throw error;
  }
}

/** The cases that second line has, those that can't be read among them. */
export async function escalatedTickets(context: Context): Promise<ReadTicket[]> {
  const { tx, actor } = context;
  const rows = await tx.ticket.findMany({
    where: { orgId: actor.orgId, state: { startsWith: 'escalated' } },
    include: withNames,
    orderBy: { number: 'asc' },
  });
  const tickets: ReadTicket[] = [];
  for (const row of rows) tickets.push(await tryWithSnapshot(context, row));
  return tickets;
}
