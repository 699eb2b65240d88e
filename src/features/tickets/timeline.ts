import type { TimelineEntry } from '../../../shared/contract/ticket.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { versionsOf } from '../chains/index.ts';
import { logEventsOf } from '../log-findings/index.ts';
import { packetRefsOf, timelineOf } from '../packets/index.ts';
import { findTicket, namedEventsOf, noTicket } from '../ticket-record/index.ts';

/** Everything that happened to a ticket and to its chain meanwhile, oldest first, in sentences. */
export async function readTimeline(
  context: Context,
  ticketId: string,
): Promise<Outcome<{ items: TimelineEntry[] }>> {
  const ticket = await findTicket(context, ticketId);
  if (ticket === null) return noTicket;
  const events = await namedEventsOf(context, ticketId);
  const names = new Map(events.map(({ event, actorName }) => [event.actorId, actorName]));
  const record = ticket.snapshot.context;
  const sources = {
    events: events.map(({ event }) => event),
    chain: { id: ticket.chainId, versions: (await versionsOf(context, ticket.chainId)).toReversed() },
    packets: await packetRefsOf(context, ticketId),
    logs: await logEventsOf(context, ticketId, record.watches),
  };
  return found({ items: timelineOf(record, sources, (memberId) => names.get(memberId) ?? '') });
}
