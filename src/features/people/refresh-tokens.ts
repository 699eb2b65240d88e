import { createHash, randomBytes } from 'node:crypto';
import type { TenantTransaction } from '../../database/index.ts';
import type { Services } from '../../services.ts';

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');

export type RefreshToken = { readonly orgId: string; readonly token: string };

/** The organisation that a refresh token belongs to stands in it, so that it is looked up inside that tenant only. */
export function readToken(token: string): RefreshToken | null {
  const orgId = token.split('.', 1)[0] ?? '';
  return /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(orgId) ? { orgId, token } : null;
}

type Owner = { readonly orgId: string; readonly memberId: string };
/** The refresh tokens of one sign-in, of which each but the newest is used up. */
export type TokenFamily = Owner & { readonly familyId: string };

/** A new refresh token of a family; the database keeps its hash only. */
export async function issueToken(
  tx: TenantTransaction,
  services: Services,
  family: TokenFamily,
): Promise<string> {
  const token = `${family.orgId}.${randomBytes(32).toString('base64url')}`;
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

/**
 * Uses a refresh token up. A token that was used or revoked before is in two hands: its whole family is revoked.
 * Null when the token is not good (any more).
 */
export async function spendToken(
  tx: TenantTransaction,
  { orgId, token }: RefreshToken,
  now: Date,
): Promise<TokenFamily | null> {
  const [row] = await tx.$queryRaw<
    { id: string; member_id: string; family_id: string; expires_at: Date; gone: boolean }[]
  >`
    select id, member_id, family_id, expires_at, (used_at is not null or revoked_at is not null) as gone
    from refresh_token where org_id = ${orgId}::uuid and token_hash = ${hashOf(token)} for update`;
  if (row === undefined) return null;
  if (row.gone) {
    await revokeFamily(tx, { orgId, familyId: row.family_id }, now);
    return null;
  }
  await tx.refreshToken.update({ where: { orgId_id: { orgId, id: row.id } }, data: { usedAt: now } });
  return row.expires_at <= now ? null : { orgId, memberId: row.member_id, familyId: row.family_id };
}

export async function revokeFamily(
  tx: TenantTransaction,
  { orgId, familyId }: Omit<TokenFamily, 'memberId'>,
  now: Date,
): Promise<void> {
  await tx.refreshToken.updateMany({ where: { orgId, familyId, revokedAt: null }, data: { revokedAt: now } });
}

/** Signs a member out everywhere, e.g. after a new password. */
export async function revokeAllOf(tx: TenantTransaction, owner: Owner, now: Date): Promise<void> {
  await tx.refreshToken.updateMany({ where: { ...owner, revokedAt: null }, data: { revokedAt: now } });
}
