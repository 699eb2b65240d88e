import type { TenantTransaction } from '../../database/index.ts';
import { forgottenAtOnce, noteAct } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { hashOf, newToken } from './secret-token.ts';
import { endSessions } from './sessions.ts';

export type RefreshToken = { readonly orgId: string; readonly token: string };

/** The organisation that a refresh token belongs to stands in it, so that it is looked up inside that tenant only. */
export function readToken(token: string): RefreshToken | null {
  const orgId = token.split('.', 1)[0] ?? '';
  return /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(orgId) ? { orgId, token } : null;
}

type Owner = { readonly orgId: string; readonly memberId: string };
/** The refresh tokens of one sign-in, of which each but the newest is used up; `familyId` is the session's id. */
export type TokenFamily = Owner & { readonly familyId: string };

/** A new refresh token of a family; the database keeps its hash only. */
export async function issueToken(
  tx: TenantTransaction,
  services: Services,
  family: TokenFamily,
): Promise<string> {
  const token = newToken(family.orgId);
  const now = services.now();
  await tx.refreshToken.create({
    data: {
      ...family,
      id: services.newId(),
      tokenHash: hashOf(token),
      createdAt: now,
      expiresAt: new Date(now.getTime() + services.config.refreshTokenDays * 86_400_000),
    },
  });
  return token;
}

/** Assumed: how long, in ms, a reply that was lost may be asked for again. */
const mayRepeatMs = 60_000;
/** Assumed: as many replies in a row as a bad line loses; more is no line but somebody collecting tokens. */
const repliesLostAtMost = 20;

/**
 * Uses a refresh token up. It may be used again for a minute, until one that replaced it is used: only that proves that
 * a reply arrived, and a phone whose reply was lost is not signed out by it. Of those that replaced it the first that is
 * used is good, and the others end with it. Any other use of an old token shows that it is in two hands: its session
 * ends (RFC 9700, section 4.14.2).
 * Null when the token is not good (any more).
 */
export async function spendToken(
  tx: TenantTransaction,
  { orgId, token }: RefreshToken,
  services: Pick<Services, 'now' | 'newId'>,
): Promise<TokenFamily | null> {
  const now = services.now();
  const row = await lockAndRead(tx, { orgId, token });
  if (row === undefined) return null;
  const family = { orgId, memberId: row.member_id, familyId: row.family_id };
  if (
    row.revoked_at !== null ||
    (row.used_at !== null && !(await mayRepeat(tx, row, { usedAt: row.used_at, now })))
  ) {
    await endSessions(tx, { orgId, id: row.family_id }, now);
    if (row.revoked_at === null)
      await noteAct(
        { tx, orgId, services },
        { kind: 'tokenUsedTwice', actorId: null, memberId: row.member_id },
      );
    return null;
  }
  if (row.used_at === null) {
    await tx.refreshToken.update({ where: { orgId_id: { orgId, id: row.id } }, data: { usedAt: now } });
    await tx.refreshToken.updateMany({
      where: { orgId, familyId: row.family_id, usedAt: null, revokedAt: null },
      data: { revokedAt: now },
    });
  }
  return row.expires_at <= now ? null : family;
}

type TokenRow = {
  readonly org_id: string;
  readonly id: string;
  readonly member_id: string;
  readonly family_id: string;
  readonly expires_at: Date;
  readonly used_at: Date | null;
  readonly revoked_at: Date | null;
};

/** One use at a time in a family: what one decides rests on all of its tokens. */
async function lockAndRead(
  tx: TenantTransaction,
  { orgId, token }: RefreshToken,
): Promise<TokenRow | undefined> {
  await tx.$queryRaw`
    select pg_advisory_xact_lock(hashtextextended(family_id::text, 0))::text
    from refresh_token where org_id = ${orgId}::uuid and token_hash = ${hashOf(token)}`;
  const [row] = await tx.$queryRaw<TokenRow[]>`
    select org_id, id, member_id, family_id, expires_at, used_at, revoked_at
    from refresh_token where org_id = ${orgId}::uuid and token_hash = ${hashOf(token)}`;
  return row;
}

/** Whether nothing that replaced a used token has been used, so that its reply may never have arrived. */
async function mayRepeat(
  tx: TenantTransaction,
  row: TokenRow,
  { usedAt, now }: { usedAt: Date; now: Date },
): Promise<boolean> {
  if (now.getTime() - usedAt.getTime() > mayRepeatMs) return false;
  const others = { orgId: row.org_id, familyId: row.family_id, id: { not: row.id } };
  const usedSince = await tx.refreshToken.count({ where: { ...others, usedAt: { gte: usedAt } } });
  const waiting = await tx.refreshToken.count({ where: { ...others, usedAt: null, revokedAt: null } });
  return usedSince === 0 && waiting < repliesLostAtMost;
}

/**
 * Takes away tokens that would be refused for their age alone, so many at most.
 * @returns whether there are more
 */
export async function forgetExpiredTokens(tx: TenantTransaction, orgId: string, now: Date): Promise<boolean> {
  const count = await tx.$executeRaw`
    delete from refresh_token where org_id = ${orgId}::uuid and id in (
      select id from refresh_token
      where org_id = ${orgId}::uuid and expires_at < ${now}::timestamptz limit ${forgottenAtOnce})`;
  return count === forgottenAtOnce;
}
