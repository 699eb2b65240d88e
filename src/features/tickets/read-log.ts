import { erasureOf } from '../../../shared/contract/erased-text.ts';
import type { TicketEvent as TicketEventView } from '../../../shared/contract/ticket.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { hasTicket, type NamedEvent, namedEventsOf, noTicket } from '../ticket-record/index.ts';

const view = ({ event, actorName }: NamedEvent): TicketEventView => {
  const { ticketId, texts, ...shown } = event;
  const listed = texts.map(({ pointer, sha256, salt, text }) => ({
    pointer,
    sha256,
    salt,
    erased: erasureOf(text),
  }));
  return { ...shown, actorName, texts: listed };
};

/** The log of a ticket from the event after `after` on. */
export async function readLog(
  context: Context,
  ticketId: string,
  after: number,
): Promise<Outcome<{ items: TicketEventView[] }>> {
  if (!(await hasTicket(context, ticketId))) return noTicket;
  return found({ items: (await namedEventsOf(context, ticketId, after)).map(view) });
}
