import { withTextReplaced } from '../../../shared/contract/person-text.ts';
import { type Intake, intake as intakeForm } from '../../../shared/contract/ticket.ts';
import { type Due, due as dueForm } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/index.ts';
import type { TriageSnapshot } from '../../../state-machines/index.ts';
import type { Prisma } from '../../database/index.ts';
import { type Context, refused } from '../../http/index.ts';
import { readSnapshot, storedSnapshot } from './snapshot.ts';
import type { Tenancy } from './tenancy.ts';

export const noTicket = refused('not-found', message('noSuchTicket'));

/** What somebody has to see to by a date, as a ticket's column holds it. */
export const dueIn = (row: { readonly due: unknown }): Due | null => dueForm.nullable().parse(row.due);

type WithIntake = { readonly intake: unknown; readonly snapshot: TriageSnapshot };

/** What was asked in the call; the symptom is what triage holds it for by now. */
export const intakeOf = (row: WithIntake): Intake => ({
  ...intakeForm.parse(row.intake),
  symptom: row.snapshot.context.symptom,
});

/** A ticket's intake with some of its answers changed, as its column keeps it. */
export const withIntake = (row: { readonly intake: unknown }, changed: object): Prisma.InputJsonObject =>
  ({ ...(row.intake as object), ...changed }) as Prisma.InputJsonObject;

/** A ticket's intake with one text in the place of another, as its column keeps it. */
export const intakeWithout = (
  row: { readonly intake: unknown },
  replacement: { readonly text: string; readonly by: string },
): Prisma.InputJsonObject => withTextReplaced(intakeForm, row.intake, replacement) as Prisma.InputJsonObject;

/** What a ticket is about, without the names that it is shown with. */
export type TicketCase = {
  readonly chainId: string;
  readonly intake: Intake;
  readonly snapshot: TriageSnapshot;
};

/** Null when there is no such ticket. @throws UnreadableDataError */
export async function findCase(context: Context, id: string): Promise<TicketCase | null> {
  const { tx, actor } = context;
  const row = await tx.ticket.findUnique({
    where: { orgId_id: { orgId: actor.orgId, id } },
    select: { id: true, chainId: true, intake: true, snapshot: true, machineVersion: true },
  });
  if (row === null) return null;
  const { snapshot } = await readSnapshot(context, row);
  return { chainId: row.chainId, intake: intakeOf({ ...row, snapshot }), snapshot };
}

/** A ticket's row as its log is checked against it: the snapshot as it is stored, null where it is not in use. */
export type RowToCheck = {
  readonly sequence: number;
  readonly snapshot: unknown;
  readonly machineVersion: number;
};

/** Null when there is no such ticket. @throws NewerDataError */
export async function rowToCheck({ tx, actor }: Tenancy, id: string): Promise<RowToCheck | null> {
  const row = await tx.ticket.findUnique({
    where: { orgId_id: { orgId: actor.orgId, id } },
    select: { id: true, sequence: true, snapshot: true, machineVersion: true },
  });
  if (row === null) return null;
  const { sequence, machineVersion } = row;
  return { sequence, machineVersion, snapshot: storedSnapshot(row) === null ? null : row.snapshot };
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
