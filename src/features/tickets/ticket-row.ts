import { intake as intakeForm, type Ticket, type TicketSummary } from '../../../shared/contract/ticket.ts';
import {
  allowedCommands,
  completeness,
  MACHINE_VERSION,
  stateName,
  type TriageSnapshot,
} from '../../../state-machines/index.ts';
import type { Prisma, TenantTransaction } from '../../database/index.ts';
import { type Actor, refused } from '../../http/index.ts';

export const noTicket = refused('not-found', 'There is no such ticket.');

/** What a ticket is shown with. */
export const withNames = {
  site: { select: { clientName: true } },
  chain: { select: { name: true } },
  assignee: { select: { name: true } },
} as const;
export type TicketRow = Prisma.TicketGetPayload<{ include: typeof withNames }>;

/** Locks a ticket for the rest of the transaction and reads it; null when there is none. */
export async function lockTicket(tx: TenantTransaction, actor: Actor, id: string): Promise<TicketRow | null> {
  await tx.$queryRaw`select id from ticket where org_id = ${actor.orgId}::uuid and id = ${id}::uuid for update`;
  return findTicket(tx, actor, id);
}

export const findTicket = (tx: TenantTransaction, actor: Actor, id: string): Promise<TicketRow | null> =>
  tx.ticket.findUnique({ where: { orgId_id: { orgId: actor.orgId, id } }, include: withNames });

export const snapshotOf = (row: { snapshot: unknown }): TriageSnapshot => row.snapshot as TriageSnapshot;

/** The columns that follow from a snapshot. */
export const columnsOf = (snapshot: TriageSnapshot) => ({
  snapshot: snapshot as unknown as Prisma.InputJsonObject,
  state: stateName(snapshot),
  machineVersion: MACHINE_VERSION,
  closedAt: snapshot.context.closedAt === null ? null : new Date(snapshot.context.closedAt),
});

export const summaryView = (row: TicketRow): TicketSummary => ({
  id: row.id,
  number: row.number,
  siteId: row.siteId,
  chainId: row.chainId,
  client: row.site.clientName,
  chainName: row.chain.name,
  symptom: row.symptom as TicketSummary['symptom'],
  priority: row.priority as TicketSummary['priority'],
  state: row.state,
  assigneeId: row.assigneeId,
  assigneeName: row.assignee?.name ?? null,
  visitAt: row.visitAt?.toISOString() ?? null,
  openedAt: row.openedAt.toISOString(),
  updatedAt: row.updatedAt.toISOString(),
  closedAt: row.closedAt?.toISOString() ?? null,
});

/** A ticket as one member sees it: with what they may do to it now. */
export function ticketView(row: TicketRow, actor: Actor, now: Date): Ticket {
  const snapshot = snapshotOf(row);
  return {
    ...summaryView(row),
    intake: { ...intakeForm.parse(row.intake), symptom: snapshot.context.symptom },
    sequence: row.sequence,
    triage: snapshot.context,
    allowedNow: allowedCommands(snapshot, actor.role, now.toISOString()),
    missing: completeness(snapshot.context),
  };
}
