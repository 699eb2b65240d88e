import type { TimelineEntry } from '../../../shared/contract/ticket.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { logEventsOf } from '../log-findings/index.ts';
import { timelineOf } from '../packets/index.ts';
import { findTicket, noTicket, snapshotOf } from './ticket-row.ts';

const byName = { select: { name: true } } as const;

/** Everything that happened to a ticket and to its chain meanwhile, oldest first, in sentences. */
export async function readTimeline(
  context: Context,
  ticketId: string,
): Promise<Outcome<{ items: TimelineEntry[] }>> {
  const { tx, actor } = context;
  const ticket = await findTicket(context, ticketId);
  if (ticket === null) return noTicket;
  const { orgId } = actor;
  const events = await tx.ticketEvent.findMany({
    where: { orgId, ticketId },
    include: { actor: byName },
    orderBy: { sequence: 'asc' },
  });
  const versions = await tx.chainVersion.findMany({
    where: { orgId, chainId: ticket.chainId },
    select: { version: true, changes: true, changedAt: true, changedBy: true, member: byName },
    orderBy: { version: 'asc' },
  });
  const packets = await tx.packet.findMany({
    where: { orgId, ticketId },
    select: { id: true, version: true, createdAt: true, member: byName },
    orderBy: { version: 'asc' },
  });
  const record = snapshotOf(ticket).context;
  const logs = await logEventsOf(context, ticketId, record.watches);
  const names = new Map(events.map((event) => [event.actorId, event.actor.name]));
  const chain = {
    id: ticket.chainId,
    versions: versions.map(({ version, changes, changedAt, changedBy, member }) => ({
      version,
      changes: changes as string[],
      changedAt: changedAt.toISOString(),
      changedBy,
      changedByName: member.name,
    })),
  };
  const sources = {
    events: events.map((event) => ({ ...event, at: event.at.toISOString() })),
    chain,
    packets: packets.map(({ id, version, createdAt, member }) => ({
      id,
      version,
      at: createdAt.toISOString(),
      byName: member.name,
    })),
    logs,
  };
  return found({ items: timelineOf(record, sources, (memberId) => names.get(memberId) ?? '') });
}
