import { type Intake, intake as intakeForm } from '../../../shared/contract/ticket.ts';
import { MACHINE_VERSION, stateName, type TriageSnapshot } from '../../../state-machines/index.ts';
import type { Prisma } from '../../database/index.ts';
import { type Context, refused } from '../../http/index.ts';

export const noTicket = refused('not-found', 'There is no such ticket.');

export const snapshotOf = (row: { readonly snapshot: unknown }): TriageSnapshot =>
  row.snapshot as TriageSnapshot;

type WithIntake = { readonly intake: unknown; readonly snapshot: unknown };

/** What was asked in the call; the symptom is what triage holds it for by now. */
export const intakeOf = (row: WithIntake): Intake => ({
  ...intakeForm.parse(row.intake),
  symptom: snapshotOf(row).context.symptom,
});

/** A ticket's intake with some of its answers changed, as its column keeps it. */
export const withIntake = (row: { readonly intake: unknown }, changed: object): Prisma.InputJsonObject =>
  ({ ...(row.intake as object), ...changed }) as Prisma.InputJsonObject;

/** The columns that follow from a snapshot. */
export const columnsOf = (snapshot: TriageSnapshot) => ({
  snapshot: snapshot as unknown as Prisma.InputJsonObject,
  state: stateName(snapshot),
  machineVersion: MACHINE_VERSION,
  closedAt: snapshot.context.closedAt === null ? null : new Date(snapshot.context.closedAt),
});

/** What a ticket is about, without the names that it is shown with. */
export type TicketCase = {
  readonly chainId: string;
  readonly intake: Intake;
  readonly snapshot: TriageSnapshot;
};

/** Null when there is no such ticket. */
export async function findCase({ tx, actor }: Context, id: string): Promise<TicketCase | null> {
  const row = await tx.ticket.findUnique({
    where: { orgId_id: { orgId: actor.orgId, id } },
    select: { chainId: true, intake: true, snapshot: true },
  });
  return row === null ? null : { chainId: row.chainId, intake: intakeOf(row), snapshot: snapshotOf(row) };
}

export const hasTicket = async ({ tx, actor }: Context, id: string): Promise<boolean> =>
  (await tx.ticket.count({ where: { orgId: actor.orgId, id } })) > 0;

/** The tickets at a chain that are not closed, the oldest first. */
export const openTicketsAt = ({ tx, actor }: Context, chainId: string) =>
  tx.ticket.findMany({
    where: { orgId: actor.orgId, chainId, state: { not: 'closed' } },
    select: { id: true, number: true, state: true },
    orderBy: { number: 'asc' },
  });
