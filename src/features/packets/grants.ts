import {
  caseFile as caseFileForm,
  type GrantedPacket,
  type PacketGrant,
} from '../../../shared/contract/packet.ts';
import type { Database, Prisma } from '../../database/index.ts';
import { type Context, created, found, type Outcome, refused } from '../../http/index.ts';
import { noPacket } from './read-packets.ts';

/** One refusal for every address that is not a reachable support member elsewhere, so that it tells nothing of whom it is. */
const noGrantee = refused(
  'grant-refused',
  'No support member of another organisation can be reached under that address.',
);
const noGrant = refused('not-found', 'There is no such grant.');

export type Grantee = { readonly orgId: string; readonly memberId: string };

/** An active support member of whichever organisation; null when there is none under that address. */
export async function findGrantee(database: Database, memberAddress: string): Promise<Grantee | null> {
  const member = await database.lookUp((tx) =>
    tx.member.findFirst({
      where: { id: memberAddress },
      select: { orgId: true, id: true, role: true, active: true },
    }),
  );
  if (member === null || member.role !== 'support' || !member.active) return null;
  return { orgId: member.orgId, memberId: member.id };
}

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

/** Shows a packet to a support member of another organisation. Granting it to them again gives the running grant. */
export async function grantPacket(
  { tx, actor, services }: Context,
  packetId: string,
  grantee: Grantee | null,
): Promise<Outcome<PacketGrant>> {
  const { orgId } = actor;
  const packet = await tx.packet.findUnique({
    where: { orgId_id: { orgId, id: packetId } },
    select: { id: true },
  });
  if (packet === null) return noPacket;
  if (grantee === null || grantee.orgId === orgId) return noGrantee;
  const running = await tx.packetGrant.findFirst({
    where: { orgId, packetId, granteeMemberId: grantee.memberId, revokedAt: null },
    include: withGrantor,
  });
  if (running !== null) return found(view(running));
  const row = await tx.packetGrant.create({
    data: {
      orgId,
      id: services.newId(),
      packetId,
      granteeOrgId: grantee.orgId,
      granteeMemberId: grantee.memberId,
      grantedBy: actor.memberId,
      grantedAt: services.now(),
    },
    include: withGrantor,
  });
  return created(view(row), `/grants/${row.id}`);
}

/** Who a packet was granted to, newest first, revoked grants too. */
export async function listGrants(
  { tx, actor }: Context,
  packetId: string,
): Promise<Outcome<{ items: PacketGrant[] }>> {
  const { orgId } = actor;
  const packet = await tx.packet.findUnique({
    where: { orgId_id: { orgId, id: packetId } },
    select: { id: true },
  });
  if (packet === null) return noPacket;
  const rows = await tx.packetGrant.findMany({
    where: { orgId, packetId },
    include: withGrantor,
    orderBy: [{ grantedAt: 'desc' }, { id: 'desc' }],
  });
  return found({ items: rows.map(view) });
}

/** Ends a grant for good; revoking it again changes nothing. */
export async function revokeGrant(
  { tx, actor, services }: Context,
  id: string,
): Promise<Outcome<PacketGrant>> {
  const { orgId } = actor;
  await tx.packetGrant.updateMany({
    where: { orgId, id, revokedAt: null },
    data: { revokedAt: services.now() },
  });
  const row = await tx.packetGrant.findUnique({ where: { orgId_id: { orgId, id } }, include: withGrantor });
  return row === null || row.orgId !== orgId ? noGrant : found(view(row));
}

/** The packets that other organisations show to the caller now, newest grant first. */
export async function grantedPackets({ tx, actor }: Context): Promise<Outcome<{ items: GrantedPacket[] }>> {
  const rows = await tx.packetGrant.findMany({
    where: { granteeOrgId: actor.orgId, granteeMemberId: actor.memberId, revokedAt: null },
    include: { packet: { select: { caseFile: true } } },
    orderBy: [{ grantedAt: 'desc' }, { id: 'desc' }],
  });
  const items = rows.map(({ id, packetId, grantedAt, packet }) => {
    const { organisation, ticket, packet: about } = caseFileForm.parse(packet.caseFile);
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
