import type { MemberRole } from '../../shared/contract/primitives.ts';
import type { TenantTransaction } from '../database/index.ts';
import type { Actor } from './actor.ts';
import type { AccessClaims } from './authentication.ts';

/** The member behind the token; null when they were made inactive since. */
export async function loadActor(tx: TenantTransaction, claims: AccessClaims): Promise<Actor | null> {
  const member = await tx.member.findUnique({
    where: { orgId_id: { orgId: claims.org, id: claims.sub } },
    select: { role: true, active: true, name: true },
  });
  if (member === null || !member.active) return null;
  return { orgId: claims.org, memberId: claims.sub, role: member.role as MemberRole, name: member.name };
}
