import type { Ticket, TicketUpdate } from '../../../../shared/contract/ticket.ts';

type Change = Partial<Omit<TicketUpdate, 'intake'>> & { intake?: Partial<TicketUpdate['intake']> };

/** What an update of a ticket sends: all that it may change, with these parts changed. */
export function updateOf(ticket: Ticket, { intake: part, ...columns }: Change): TicketUpdate {
  const { symptom: _symptom, whatChanged: _whatChanged, ...intake } = ticket.intake;
  const { priority, assigneeId, visitAt, visitMin } = ticket;
  return { priority, assigneeId, visitAt, visitMin, ...columns, intake: { ...intake, ...part } };
}
