import type { PacketSummary } from '../../../shared/contract/packet.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { hasTicket, noTicket } from '../ticket-record/index.ts';
import { filesOf, newsOf } from './packet-row.ts';
import type { PacketRef } from './timeline.ts';

export type PacketRow = {
  readonly orgId: string;
  readonly id: string;
  readonly ticketId: string;
  readonly version: number;
  readonly files: unknown;
  readonly news: unknown;
  readonly createdAt: Date;
  readonly createdBy: string;
};

export const summaryOf = (row: PacketRow, createdByName: string): PacketSummary => ({
  id: row.id,
  ticketId: row.ticketId,
  version: row.version,
  createdAt: row.createdAt.toISOString(),
  createdBy: row.createdBy,
  createdByName,
  news: newsOf(row),
  sizeBytes: filesOf(row).reduce((sum, file) => sum + file.sizeBytes, 0),
});

/** A ticket's packets, newest version first. */
export async function listPackets(
  context: Context,
  ticketId: string,
): Promise<Outcome<{ items: PacketSummary[] }>> {
  const { tx, actor } = context;
  if (!(await hasTicket(context, ticketId))) return noTicket;
  const rows = await tx.packet.findMany({
    where: { orgId: actor.orgId, ticketId },
    omit: { caseFile: true },
    include: { member: { select: { name: true } } },
    orderBy: { version: 'desc' },
  });
  return found({ items: rows.map((row) => summaryOf(row, row.member.name)) });
}

/** The packets of a ticket as its timeline names them, oldest first. */
export async function packetRefsOf({ tx, actor }: Context, ticketId: string): Promise<PacketRef[]> {
  const rows = await tx.packet.findMany({
    where: { orgId: actor.orgId, ticketId },
    select: { id: true, version: true, createdAt: true, member: { select: { name: true } } },
    orderBy: { version: 'asc' },
  });
  return rows.map(({ id, version, createdAt, member }) => ({
    id,
    version,
    at: createdAt.toISOString(),
    byName: member.name,
  }));
}
