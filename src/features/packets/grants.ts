import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import type { PacketGrant } from '../../../shared/contract/packet.ts';
import { message } from '../../../shared/message/index.ts';
import { type Context, created, found, noteOwn, type Outcome, refused } from '../../http/index.ts';
import type { Grantee } from './grantee.read.ts';
import { findGrant } from './grants.read.ts';
import { hasPacket, noPacket } from './packet-row.ts';

/** One refusal for every address that is not a reachable support member elsewhere, so that it tells nothing of whom it is. */
const noGrantee = refused('grant-refused', message('granteeUnreachable'));
const noGrant = refused('not-found', message('noSuchGrant'));

/** Shows a packet to a support member of another organisation. Granting it to them again gives the running grant. */
export async function grantPacket(
  context: Context,
  packetId: string,
  grantee: Grantee | null,
): Promise<Outcome<PacketGrant>> {
  const { tx, actor, services } = context;
  const { orgId } = actor;
  if (!(await hasPacket(context, packetId))) return noPacket;
  if (grantee === null || grantee.orgId === orgId) return noGrantee;
  const running = await tx.packetGrant.findFirst({
    where: { orgId, packetId, granteeMemberId: grantee.memberId, revokedAt: null },
    select: { id: true },
  });
  if (running !== null) return outcomeOf(await findGrant(context, running.id));
  const id = services.newId();
  await tx.packetGrant.create({
    data: {
      orgId,
      id,
      packetId,
      granteeOrgId: grantee.orgId,
      granteeMemberId: grantee.memberId,
      grantedBy: actor.memberId,
      grantedAt: services.now(),
    },
  });
  await noteOwn(context, { kind: 'packetGranted', aboutId: packetId });
  const made = outcomeOf(await findGrant(context, id));
  return made.ok ? created(made.body, addressOf(addresses.packetGrants, { id: packetId })) : made;
}

/** Ends a grant for good; revoking it again changes nothing. */
export async function revokeGrant(context: Context, id: string): Promise<Outcome<PacketGrant>> {
  const { tx, actor, services } = context;
  const { orgId } = actor;
  const { count } = await tx.packetGrant.updateMany({
    where: { orgId, id, revokedAt: null },
    data: { revokedAt: services.now() },
  });
  const grant = await findGrant(context, id);
  if (grant !== null && count > 0) await noteOwn(context, { kind: 'grantRevoked', aboutId: grant.packetId });
  return outcomeOf(grant);
}

const outcomeOf = (grant: PacketGrant | null): Outcome<PacketGrant> =>
  grant === null ? noGrant : found(grant);
