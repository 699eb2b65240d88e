import { MACHINE_VERSION } from '../../../state-machines/index.ts';
import type { Prisma } from '../../database/index.ts';
import type { Context } from '../../http/index.ts';
import { appendToLog } from './log.ts';
import type { TicketRow } from './ticket.read.ts';

type EventToWrite = {
  readonly type: string;
  readonly payload: Record<string, unknown>;
  readonly at: Date;
};

type FirstColumns = Omit<
  Prisma.TicketUncheckedCreateInput,
  'orgId' | 'sequence' | 'openedAt' | 'updatedAt' | 'machineVersion'
>;
type LaterColumns = Omit<Prisma.TicketUncheckedUpdateInput, 'sequence' | 'updatedAt'>;

/** Adds a ticket with the first event of its log. */
export async function insertTicket(
  context: Context,
  { columns, ...event }: EventToWrite & { readonly columns: FirstColumns & { readonly id: string } },
): Promise<void> {
  const { at } = event;
  const sequence = 1;
  const stamps = { openedAt: at, updatedAt: at, machineVersion: MACHINE_VERSION };
  await context.tx.ticket.create({ data: { ...columns, ...stamps, orgId: context.actor.orgId, sequence } });
  await append(context, columns.id, { ...event, sequence });
}

/**
 * Writes the next events of a locked ticket: each as a row of its log, and in its row the columns that follow.
 * @param events at least one, in order
 * @returns the number of the last one
 */
export async function writeEvents(
  context: Context,
  row: Pick<TicketRow, 'id' | 'sequence'>,
  { events, columns }: { readonly events: readonly EventToWrite[]; readonly columns: LaterColumns },
): Promise<number> {
  let { sequence } = row;
  for (const event of events) {
    sequence += 1;
    await append(context, row.id, { ...event, sequence });
  }
  const updatedAt = events.at(-1)?.at;
  await context.tx.ticket.update({
    where: { orgId_id: { orgId: context.actor.orgId, id: row.id } },
    data: { ...columns, sequence, ...(updatedAt && { updatedAt }) },
  });
  return sequence;
}

type Numbered = EventToWrite & { readonly sequence: number };

const append = (context: Context, ticketId: string, { at, ...event }: Numbered): Promise<void> =>
  appendToLog(context, { ...event, ticketId, at: at.toISOString(), machineVersion: MACHINE_VERSION });
