import type { ErasedPlace, PacketSummary } from '../../../shared/contract/packet.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { type ErasedOnLog, erasedTextsOf, hasTicket, noTicket } from '../ticket-record/index.ts';
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

type SummaryFacts = {
  readonly createdByName: string;
  /** What was erased from the ticket's log; null where the caller may not know. */
  readonly erased: readonly ErasedOnLog[] | null;
};

export const summaryOf = (row: PacketRow, { createdByName, erased }: SummaryFacts): PacketSummary => ({
  id: row.id,
  ticketId: row.ticketId,
  version: row.version,
  createdAt: row.createdAt.toISOString(),
  createdBy: row.createdBy,
  createdByName,
  news: newsOf(row),
  erasedSince: erased === null ? null : erasedSince(row, erased),
  sizeBytes: filesOf(row).reduce((sum, file) => sum + file.sizeBytes, 0),
});

/** What a packet holds, made when it was, and the log does not any more. */
const erasedSince = ({ createdAt }: PacketRow, erased: readonly ErasedOnLog[]): ErasedPlace[] => {
  const madeAt = createdAt.toISOString();
  return erased
    .filter(({ loggedAt, at }) => loggedAt <= madeAt && at > madeAt)
    .map(({ loggedAt, ...place }) => place);
};

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
  const erased = await erasedTextsOf(context, ticketId);
  return found({ items: rows.map((row) => summaryOf(row, { createdByName: row.member.name, erased })) });
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
