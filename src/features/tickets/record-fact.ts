import type { Ticket } from '../../../shared/contract/ticket.ts';
import type { Prisma } from '../../database/index.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { type FactType, findTicket, noTicket, type TicketRow, writeEvents } from '../ticket-record/index.ts';
import { refusalOfForgedErasure } from './forged-erasure.ts';
import { ticketView } from './ticket-view.ts';

type Fact = {
  readonly type: FactType;
  readonly payload: Record<string, unknown>;
  /** What follows from it in the ticket's row. */
  readonly columns: Prisma.TicketUncheckedUpdateInput;
};

/** Writes a fact about a locked ticket that triage does not decide on: an event and the columns that follow from it. */
export async function recordFact(
  context: Context,
  row: TicketRow,
  { type, payload, columns }: Fact,
): Promise<Outcome<Ticket>> {
  const { actor, services } = context;
  const forged = refusalOfForgedErasure(payload, row.intake);
  if (forged !== null) return forged;
  await writeEvents(context, row, { events: [{ type, payload, at: services.now() }], columns });
  const updated = await findTicket(context, row.id);
  return updated === null ? noTicket : found(ticketView(updated, actor, services.now()));
}
