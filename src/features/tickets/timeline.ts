import type { TimelineEntry } from '../../../shared/contract/ticket.ts';
import { describeEvent } from '../../../state-machines/describe-event.ts';
import type { TenantTransaction } from '../../database/index.ts';
import { type Actor, found, type Outcome } from '../../http/index.ts';
import { findTicket, noTicket, snapshotOf } from './ticket-row.ts';

/** Everything that happened to a ticket and to its chain meanwhile, oldest first, in sentences. */
export async function readTimeline(
  tx: TenantTransaction,
  actor: Actor,
  ticketId: string,
): Promise<Outcome<{ items: TimelineEntry[] }>> {
  const ticket = await findTicket(tx, actor, ticketId);
  if (ticket === null) return noTicket;
  const { orgId } = actor;
  const byName = { select: { name: true } } as const;
  const events = await tx.ticketEvent.findMany({
    where: { orgId, ticketId },
    include: { actor: byName },
    orderBy: { sequence: 'asc' },
  });
  const versions = await tx.chainVersion.findMany({
    where: { orgId, chainId: ticket.chainId, changedAt: { gte: ticket.openedAt } },
    select: { version: true, changes: true, changedAt: true, member: byName },
    orderBy: { version: 'asc' },
  });
  const packets = await tx.packet.findMany({
    where: { orgId, ticketId },
    select: { id: true, version: true, createdAt: true, member: byName },
    orderBy: { version: 'asc' },
  });
  const { asFound } = snapshotOf(ticket).context;
  const entries: TimelineEntry[] = [
    ...events.map((event) => ({
      at: event.at.toISOString(),
      kind: 'event' as const,
      actorName: event.actor.name,
      text: describeEvent({ ...(event.payload as object), type: event.type }, asFound?.chain ?? null),
      ref: { sequence: event.sequence, type: event.type },
    })),
    ...versions.map((version) => ({
      at: version.changedAt.toISOString(),
      kind: 'chain' as const,
      actorName: version.member.name,
      text: (version.changes as string[]).join(' '),
      ref: { chainId: ticket.chainId, version: version.version },
    })),
    ...packets.map((packet) => ({
      at: packet.createdAt.toISOString(),
      kind: 'packet' as const,
      actorName: packet.member.name,
      text: `Case packet, version ${packet.version}.`,
      ref: { packetId: packet.id, version: packet.version },
    })),
  ];
  // A stable sort: what happened in the same millisecond keeps the order above.
  return found({ items: entries.sort((a, b) => a.at.localeCompare(b.at)) });
}
