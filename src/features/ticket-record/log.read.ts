import type { Context } from '../../http/index.ts';
import { type LoggedEvent, loggedEventOf, withTexts } from './log.ts';

export type NamedEvent = { readonly event: LoggedEvent; readonly actorName: string };

/** A ticket's events after that number, with who caused each, oldest first. */
export async function namedEventsOf(
  { tx, actor }: Context,
  ticketId: string,
  after = 0,
): Promise<NamedEvent[]> {
  const rows = await tx.ticketEvent.findMany({
    where: { orgId: actor.orgId, ticketId, sequence: { gt: after } },
    include: { ...withTexts, actor: { select: { name: true } } },
    orderBy: { sequence: 'asc' },
  });
  return rows.map((row) => ({ event: loggedEventOf(row), actorName: row.actor.name }));
}
