import type { Intake, Ticket } from '../../../shared/contract/ticket.ts';
import type { Prisma } from '../../database/index.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { type FactType, findTicket, noTicket, type TicketRow, writeEvents } from '../ticket-record/index.ts';
import { refusalOfForgedErasure } from './forged-erasure.ts';
import { ticketView } from './ticket-view.ts';

/**
 * The intake as the log keeps it. The log never forgets and goes into every packet, so whoever called is in it by
 * relation only; name and telephone number stay on the ticket.
 */
export function withoutContact<Facts extends Pick<Intake, 'reporter'>>(intake: Facts) {
  return { ...intake, reporter: { relation: intake.reporter.relation } };
}

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
