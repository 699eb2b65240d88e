import type { Session } from '../../../shared/contract/people.ts';
import { message } from '../../../shared/message/index.ts';
import type { TenantTransaction } from '../../database/index.ts';
import { type Context, found, type Outcome, refused } from '../../http/index.ts';

type Owner = { readonly orgId: string; readonly memberId: string };

/** Longest part of what a browser says that it is that is kept, in characters. */
const longestDevice = 200;

/** Begins a session, from which all tokens of this sign-in descend. */
export async function startSession(
  tx: TenantTransaction,
  owner: Owner,
  { id, device, now }: { id: string; device: string; now: Date },
): Promise<void> {
  await tx.session.create({
    data: { ...owner, id, device: device.slice(0, longestDevice), startedAt: now, seenAt: now },
  });
}

/** Ends a member's sessions, but for one, with all their tokens: access tokens at once, since each request asks. */
export async function endSessionsOf(
  tx: TenantTransaction,
  { orgId, memberId }: Owner,
  { now, but = null }: { now: Date; but?: string | null },
): Promise<void> {
  const others = but === null ? {} : { not: but };
  await tx.session.updateMany({
    where: { orgId, memberId, endedAt: null, id: others },
    data: { endedAt: now },
  });
  await tx.refreshToken.updateMany({
    where: { orgId, memberId, revokedAt: null, familyId: others },
    data: { revokedAt: now },
  });
}

/** Ends one session of the tenant; it is no matter whether it had ended. */
export async function endSession(
  tx: TenantTransaction,
  { orgId, id }: { orgId: string; id: string },
  now: Date,
): Promise<void> {
  await tx.session.updateMany({ where: { orgId, id, endedAt: null }, data: { endedAt: now } });
  await tx.refreshToken.updateMany({
    where: { orgId, familyId: id, revokedAt: null },
    data: { revokedAt: now },
  });
}

/** My sessions that can still be gone on with, this one first, then the last used. */
export async function listSessions({ tx, actor, services }: Context): Promise<Outcome<{ items: Session[] }>> {
  const { orgId, memberId } = actor;
  const now = services.now();
  const rows = await tx.session.findMany({
    where: { orgId, memberId, endedAt: null, tokens: { some: { revokedAt: null, expiresAt: { gt: now } } } },
    orderBy: [{ seenAt: 'desc' }, { id: 'asc' }],
  });
  const items = rows.map(({ id, device, startedAt, seenAt }) => ({
    id,
    device: device === '' ? null : device,
    startedAt: startedAt.toISOString(),
    seenAt: seenAt.toISOString(),
    isThis: id === actor.sessionId,
  }));
  return found({ items: items.toSorted((a, b) => Number(b.isThis) - Number(a.isThis)) });
}

/** Ends one of my sessions. @returns those that are left */
export async function endMySession(context: Context, id: string): Promise<Outcome<{ items: Session[] }>> {
  const { tx, actor, services } = context;
  const { orgId, memberId } = actor;
  const mine = await tx.session.findFirst({ where: { orgId, memberId, id }, select: { id: true } });
  if (mine === null) return refused('not-found', message('noSuchSession'));
  await endSession(tx, { orgId, id }, services.now());
  return listSessions(context);
}

/** Ends all my sessions but the one that asks. @returns that one */
export async function endMyOtherSessions(context: Context): Promise<Outcome<{ items: Session[] }>> {
  const { tx, actor, services } = context;
  await endSessionsOf(tx, actor, { now: services.now(), but: actor.sessionId });
  return listSessions(context);
}
