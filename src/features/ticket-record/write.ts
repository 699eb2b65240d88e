import { MACHINE_VERSION } from '../../../state-machines/index.ts';
import type { Prisma } from '../../database/index.ts';
import type { Context } from '../../http/index.ts';
import { appendToLog } from './log.ts';
import type { TicketRow } from './ticket.read.ts';

/** An event, and the columns of the ticket's row that follow from it. */
export type NextEvent<Columns> = {
  readonly type: string;
  readonly payload: Record<string, unknown>;
  readonly at: Date;
  readonly columns: Columns;
};

type FirstColumns = Omit<
  Prisma.TicketUncheckedCreateInput,
  'orgId' | 'sequence' | 'openedAt' | 'updatedAt' | 'machineVersion'
>;
type LaterColumns = Omit<Prisma.TicketUncheckedUpdateInput, 'sequence' | 'updatedAt'>;

/** Adds a ticket with the first event of its log. */
export async function insertTicket(
  context: Context,
  { at, columns, type, payload }: NextEvent<FirstColumns & { readonly id: string }>,
): Promise<void> {
  const sequence = 1;
  const stamps = { openedAt: at, updatedAt: at, machineVersion: MACHINE_VERSION };
  await context.tx.ticket.create({ data: { ...columns, ...stamps, orgId: context.actor.orgId, sequence } });
  await append(context, columns.id, { sequence, type, payload, at });
}

/**
 * Writes the next event of a locked ticket: on its log, and what follows from it in its row.
 * @returns the event's number
 */
export async function writeEvent(
  context: Context,
  row: Pick<TicketRow, 'id' | 'sequence'>,
  { type, payload, at, columns }: NextEvent<LaterColumns>,
): Promise<number> {
  const sequence = row.sequence + 1;
  await append(context, row.id, { sequence, type, payload, at });
  await context.tx.ticket.update({
    where: { orgId_id: { orgId: context.actor.orgId, id: row.id } },
    data: { ...columns, sequence, updatedAt: at },
  });
  return sequence;
}

type Numbered = Omit<NextEvent<never>, 'columns'> & { readonly sequence: number };

const append = (context: Context, ticketId: string, { at, ...event }: Numbered): Promise<void> =>
  appendToLog(context, { ...event, ticketId, at: at.toISOString(), machineVersion: MACHINE_VERSION });
