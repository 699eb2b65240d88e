import type { Session } from '../../../shared/contract/people.ts';
import { message } from '../../../shared/message/index.ts';
import type { TenantTransaction } from '../../database/index.ts';
import { type Context, found, noteOwn, type Outcome, refused } from '../../http/index.ts';

type Owner = { readonly orgId: string; readonly memberId: string };

/** Longest part of what a browser says that it is that is kept, in characters. */
const longestDevice = 200;

/** Begins a session, from which all tokens of this sign-in descend. */
export async function startSession(
  tx: TenantTransaction,
  owner: Owner,
  { id, device, secondFactor, now }: { id: string; device: string; secondFactor: boolean; now: Date },
): Promise<void> {
  await tx.session.create({
    data: {
      ...owner,
      id,
      device: device.slice(0, longestDevice),
      secondFactor,
      startedAt: now,
      seenAt: now,
    },
  });
}

/** Which sessions of a tenant: of one member, or of all; with this id, or any but it. */
type Which = { readonly orgId: string; readonly memberId?: string; readonly id?: string | { not: string } };

/** Ends sessions with all their tokens: access tokens at once, since each request asks. It is no matter which had ended. */
export async function endSessions(tx: TenantTransaction, { id, ...whose }: Which, now: Date): Promise<void> {
  await tx.session.updateMany({
    where: { ...whose, endedAt: null, ...(id === undefined ? {} : { id }) },
    data: { endedAt: now },
  });
  await tx.refreshToken.updateMany({
    where: { ...whose, revokedAt: null, ...(id === undefined ? {} : { familyId: id }) },
    data: { revokedAt: now },
  });
}

/** A member's sessions, all or all but one. */
export const sessionsOf = ({ orgId, memberId }: Owner, but: string | null = null): Which => ({
  orgId,
  memberId,
  ...(but === null ? {} : { id: { not: but } }),
});

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
  await endSessions(tx, { orgId, id }, services.now());
  await noteOwn(context, { kind: 'sessionsEnded' });
  return listSessions(context);
}

/** Ends all my sessions but the one that asks. @returns that one */
export async function endMyOtherSessions(context: Context): Promise<Outcome<{ items: Session[] }>> {
  const { tx, actor, services } = context;
  await endSessions(tx, sessionsOf(actor, actor.sessionId), services.now());
  await noteOwn(context, { kind: 'sessionsEnded' });
  return listSessions(context);
}
