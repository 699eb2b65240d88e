import type { MemberRole } from '../../shared/contract/primitives.ts';
import type { TenantTransaction } from '../database/index.ts';
import type { AccessClaims } from './access-claims.ts';
import type { Actor } from './actor.ts';

type Found = {
  readonly role: MemberRole;
  readonly active: boolean;
  readonly name: string;
  readonly ended: boolean;
  readonly lacks: boolean;
};

/**
 * The member behind the token. `inactive` when they were made so since, `ended` when the session was that the token
 * came of: by signing out, by a new password, or because a refresh token was in two hands.
 */
export async function loadActor(
  tx: TenantTransaction,
  claims: AccessClaims,
): Promise<Actor | 'inactive' | 'ended'> {
  const [member] = await tx.sql<Found>`
    select member.role, member.active, member.name, session.ended_at is not null as ended,
      member.role = 'admin' and not session.second_factor
        and coalesce((organisation.settings->>'adminsNeedSecondFactor')::boolean, false) as lacks
    from session join member on member.org_id = session.org_id and member.id = session.member_id
      join organisation on organisation.org_id = session.org_id
    where session.org_id = ${claims.org}::uuid and session.id = ${claims.sid}::uuid
      and session.member_id = ${claims.sub}::uuid`;
  if (member === undefined || member.ended) return 'ended';
  if (!member.active) return 'inactive';
  const { role, name, lacks } = member;
  const { org: orgId, sub: memberId, sid: sessionId } = claims;
  return { orgId, memberId, role, name, sessionId, lacksSecondFactor: lacks };
}
