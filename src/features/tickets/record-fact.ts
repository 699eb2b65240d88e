import type { Ticket } from '../../../shared/contract/ticket.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import {
  type FactType,
  findTicket,
  type LaterColumns,
  type LockedTicket,
  noTicket,
  writeEvents,
} from '../ticket-record/index.ts';
import { refusalOfForgedErasure } from './forged-erasure.ts';
import { ticketView } from './ticket-view.ts';

type Fact = {
  readonly type: FactType;
  readonly payload: Record<string, unknown>;
  /** What follows from it in the ticket's row. */
  readonly columns: LaterColumns;
};

/** Writes a fact about a locked ticket that triage does not decide on: an event and the columns that follow from it. */
export async function recordFact(
  context: Context,
  row: LockedTicket,
  { type, payload, columns }: Fact,
): Promise<Outcome<Ticket>> {
  const { actor, services } = context;
  const forged = refusalOfForgedErasure(payload, row.intake);
  if (forged !== null) return forged;
  await writeEvents(context, row, { events: [{ type, payload, at: services.now() }], columns });
  // Read again, since the names that it is shown with may be others.
  const updated = await findTicket(context, row.id);
  return updated === null ? noTicket : found(ticketView(updated, actor, services.now()));
}
