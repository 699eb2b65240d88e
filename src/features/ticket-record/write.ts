import { MACHINE_VERSION } from '../../../state-machines/index.ts';
import { Prisma } from '../../database/index.ts';
import type { Context } from '../../http/index.ts';
import { appendToLog, type NewEntry, noPreviousHash } from './log.ts';
import type { columnsOf } from './snapshot.ts';
import type { LockedTicket } from './ticket.read.ts';

type EventToWrite = {
  readonly type: string;
  readonly payload: Record<string, unknown>;
  readonly at: Date;
};

type FirstColumns = Omit<
  Prisma.TicketUncheckedCreateInput,
  'orgId' | 'sequence' | 'openedAt' | 'updatedAt' | 'machineVersion'
>;
/** What an event may change in a ticket's row; what is left out stays. */
export type LaterColumns = Partial<ReturnType<typeof columnsOf>> & {
  readonly symptom?: string;
  readonly priority?: string;
  readonly assigneeId?: string | null;
  readonly visitAt?: Date | string | null;
  readonly visitMin?: number | null;
  readonly intake?: Prisma.InputJsonObject;
};

/** Adds a ticket with the first event of its log. */
export async function insertTicket(
  context: Context,
  { columns, ...event }: EventToWrite & { readonly columns: FirstColumns & { readonly id: string } },
): Promise<void> {
  const { at } = event;
  const sequence = 1;
  const stamps = { openedAt: at, updatedAt: at, machineVersion: MACHINE_VERSION };
  await context.tx.ticket.create({ data: { ...columns, ...stamps, orgId: context.actor.orgId, sequence } });
  const events = [entryOf({ ...event, sequence })];
  await appendToLog(context, columns.id, { events, previousHash: noPreviousHash });
}

/**
 * Writes the next events of a locked ticket: each as a row of its log, and in its row the columns that follow. Two
 * statements, which travel together.
 * @param events at least one, in order
 * @returns the ticket as it is now, under the names that it had
 */
export async function writeEvents(
  context: Context,
  row: LockedTicket,
  { events, columns }: { readonly events: readonly EventToWrite[]; readonly columns: LaterColumns },
): Promise<LockedTicket> {
  const entries = events.map((event, at) => entryOf({ ...event, sequence: row.sequence + at + 1 }));
  const sequence = row.sequence + events.length;
  const { due, ...plain } = columns;
  const next = {
    ...row,
    ...plain,
    due: due === undefined ? row.due : due === Prisma.DbNull ? null : due,
    visitAt: dateOf(columns.visitAt === undefined ? row.visitAt : columns.visitAt),
    sequence,
    updatedAt: events.at(-1)?.at ?? row.updatedAt,
  } as LockedTicket;
  const [lastHash] = await Promise.all([
    appendToLog(context, row.id, { events: entries, previousHash: row.lastHash }),
    writeRow(context, next, columns),
  ]);
  return { ...next, lastHash };
}

const dateOf = (moment: Date | string | null): Date | null => (moment === null ? null : new Date(moment));

async function writeRow(
  { tx, actor }: Context,
  row: LockedTicket,
  { snapshot, intake }: LaterColumns,
): Promise<void> {
  const json = (value: unknown): string | null =>
    value === undefined || value === null ? null : JSON.stringify(value);
  // Every column at once, so that it is one prepared statement; the two large ones only where they changed.
  await tx.sql`
    update ticket set symptom = ${row.symptom}, priority = ${row.priority}, assignee_id = ${row.assigneeId}::uuid,
      visit_at = ${row.visitAt}::timestamptz, visit_min = ${row.visitMin}::int, state = ${row.state}, machine_version = ${row.machineVersion}::int,
      sequence = ${row.sequence}::int, updated_at = ${row.updatedAt}::timestamptz,
      closed_at = ${row.closedAt}::timestamptz, due = ${json(row.due)}::jsonb, due_by = ${row.dueBy}::timestamptz,
      snapshot = coalesce(${json(snapshot)}::jsonb, snapshot), intake = coalesce(${json(intake)}::jsonb, intake)
    where org_id = ${actor.orgId}::uuid and id = ${row.id}::uuid`;
}

type Numbered = EventToWrite & { readonly sequence: number };

const entryOf = ({ at, ...event }: Numbered): NewEntry => ({
  ...event,
  at: at.toISOString(),
  machineVersion: MACHINE_VERSION,
});
