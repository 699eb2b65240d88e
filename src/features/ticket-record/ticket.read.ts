import type { UnreadKind } from '../../../shared/contract/ticket.ts';
import { dueOf, type TriageSnapshot } from '../../../state-machines/index.ts';
import { type Prisma, UnreadableDataError } from '../../database/index.ts';
import type { Context } from '../../http/index.ts';
import { lastHashOf } from './log.ts';
import { columnsOf, readSnapshot } from './snapshot.ts';

/** What a ticket is shown with. */
export const withNames = {
  site: { select: { clientName: true } },
  chain: { select: { name: true } },
  assignee: { select: { name: true } },
} as const;
/** What a ticket is searched by is of no use to whoever reads it. */
export const withoutSearchText = { pastText: true } as const;
type StoredTicket = Prisma.TicketGetPayload<{ include: typeof withNames; omit: typeof withoutSearchText }>;
/** A ticket without what was asked in the call and what triage knows of it. */
export type TicketHead = Omit<StoredTicket, 'intake' | 'snapshot' | 'machineVersion'>;
export type TicketRow = Omit<StoredTicket, 'snapshot'> & { readonly snapshot: TriageSnapshot };

type WithName = StoredTicket & {
  readonly siteName: string;
  readonly chainName: string;
  readonly assigneeName: string | null;
};

/** One statement, where a query with `include` is one for each name; a test finds a column that it lacks. */
async function storedTicket({ tx, actor }: Context, id: string): Promise<StoredTicket | null> {
  const [row] = await tx.sql<WithName>`
    select ticket.org_id as "orgId", ticket.id, ticket.number, ticket.site_id as "siteId", ticket.chain_id as "chainId",
      ticket.intake, ticket.symptom, ticket.priority, ticket.assignee_id as "assigneeId", ticket.visit_at as "visitAt",
      ticket.visit_min as "visitMin", ticket.state, ticket.snapshot, ticket.machine_version as "machineVersion", ticket.sequence,
      ticket.opened_at as "openedAt", ticket.updated_at as "updatedAt", ticket.closed_at as "closedAt", ticket.due,
      ticket.due_by as "dueBy", site.client_name as "siteName", chain.name as "chainName", member.name as "assigneeName"
    from ticket join site on site.org_id = ticket.org_id and site.id = ticket.site_id
      join chain on chain.org_id = ticket.org_id and chain.id = ticket.chain_id
      left join member on member.org_id = ticket.org_id and member.id = ticket.assignee_id
    where ticket.org_id = ${actor.orgId}::uuid and ticket.id = ${id}::uuid`;
  if (row === undefined) return null;
  const { siteName, chainName, assigneeName, ...columns } = row;
  return {
    ...columns,
    site: { clientName: siteName },
    chain: { name: chainName },
    assignee: assigneeName === null ? null : { name: assigneeName },
  };
}

const withSnapshot = async (context: Context, row: StoredTicket): Promise<TicketRow> => ({
  ...row,
  snapshot: (await readSnapshot(context, row)).snapshot,
});

/** Null when there is no such ticket. @throws UnreadableDataError */
export async function findTicket(context: Context, id: string): Promise<TicketRow | null> {
  const row = await storedTicket(context, id);
  return row === null ? null : withSnapshot(context, row);
}

/** A ticket whose row is locked, and the hash of the last event on its log. */
export type LockedTicket = TicketRow & { readonly lastHash: string };

/**
 * Locks a ticket for the rest of the transaction and reads it; null when there is none. A snapshot that had to be
 * read off the log is stored on the way.
 *
 * @throws UnreadableDataError
 */
export async function lockTicket(context: Context, id: string): Promise<LockedTicket | null> {
  const { tx, actor } = context;
  // Three statements that travel together: what is read is as it was once the lock was there.
  const [, row, lastHash] = await Promise.all([
    tx.sql`select id from ticket where org_id = ${actor.orgId}::uuid and id = ${id}::uuid for update`,
    storedTicket(context, id),
    lastHashOf(context, id),
  ]);
  if (row === null) return null;
  const { snapshot, isStored } = await readSnapshot(context, row);
  if (isStored) return { ...row, snapshot, lastHash };
  const columns = columnsOf(snapshot);
  await tx.ticket.update({ where: { orgId_id: { orgId: actor.orgId, id } }, data: columns });
  return { ...row, ...columns, due: dueOf(snapshot.context), snapshot, lastHash };
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
  // By the partial index: its condition has to stand in the statement, and not in a parameter.
  const waiting = await tx.sql<{ id: string }>`
    select id from ticket where org_id = ${actor.orgId}::uuid and state like 'escalated%'`;
  if (waiting.length === 0) return [];
  const rows = await tx.ticket.findMany({
    where: { orgId: actor.orgId, id: { in: waiting.map(({ id }) => id) } },
    include: withNames,
    omit: withoutSearchText,
    orderBy: { number: 'asc' },
  });
  const tickets: ReadTicket[] = [];
  for (const row of rows) tickets.push(await tryWithSnapshot(context, row));
  return tickets;
}
