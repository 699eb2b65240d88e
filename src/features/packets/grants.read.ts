import type { GrantedPacket, PacketGrant } from '../../../shared/contract/packet.ts';
import type { Prisma } from '../../database/index.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { caseFileIn, hasPacket, noPacket } from './packet-row.ts';

const withGrantor = { grantor: { select: { name: true } } } as const;
const view = (row: Prisma.PacketGrantGetPayload<{ include: typeof withGrantor }>): PacketGrant => ({
  id: row.id,
  packetId: row.packetId,
  memberAddress: row.granteeMemberId,
  grantedBy: row.grantedBy,
  grantedByName: row.grantor.name,
  grantedAt: row.grantedAt.toISOString(),
  firstOpenedAt: row.firstOpenedAt?.toISOString() ?? null,
  revokedAt: row.revokedAt?.toISOString() ?? null,
});

/** A grant by its id; null where the caller's organisation gave none under it. */
export async function findGrant({ tx, actor }: Context, id: string): Promise<PacketGrant | null> {
  const row = await tx.packetGrant.findUnique({
    where: { orgId_id: { orgId: actor.orgId, id } },
    include: withGrantor,
  });
  return row === null ? null : view(row);
}

/** Who a packet was granted to, newest first, revoked grants too. */
export async function listGrants(
  context: Context,
  packetId: string,
): Promise<Outcome<{ items: PacketGrant[] }>> {
  const { tx, actor } = context;
  if (!(await hasPacket(context, packetId))) return noPacket;
  const rows = await tx.packetGrant.findMany({
    where: { orgId: actor.orgId, packetId },
    include: withGrantor,
    orderBy: [{ grantedAt: 'desc' }, { id: 'desc' }],
  });
  return found({ items: rows.map(view) });
}

/** The packets that other organisations show to the caller now, newest grant first. */
export async function grantedPackets({ tx, actor }: Context): Promise<Outcome<{ items: GrantedPacket[] }>> {
  const rows = await tx.packetGrant.findMany({
    where: { granteeOrgId: actor.orgId, granteeMemberId: actor.memberId, revokedAt: null },
    include: { packet: { select: { caseFile: true } } },
    orderBy: [{ grantedAt: 'desc' }, { id: 'desc' }],
  });
  const items = rows.map(({ id, packetId, grantedAt, packet }) => {
    const { organisation, ticket, packet: about } = caseFileIn(packet);
    return {
      grantId: id,
      packetId,
      organisationName: organisation.name,
      ticketNumber: ticket.number,
      version: about.version,
      question: about.question,
      createdAt: about.createdAt,
      grantedAt: grantedAt.toISOString(),
    };
  });
  return found({ items });
}
