import type { AuditKind } from '../../shared/contract/audit-kinds.ts';
import type { TenantTransaction } from '../database/index.ts';
import type { Services } from '../services.ts';
import type { Context } from './context.ts';
import { forgottenAtOnce } from './forgotten-at-once.ts';

/** What somebody did. No word of any person goes in: who they are stands under their ids. */
export type Act = {
  readonly kind: AuditKind;
  /** Who did it; null for whoever runs the server, and for who tried to sign in. */
  readonly actorId: string | null;
  /** To whom it was done. */
  readonly memberId?: string;
  /** The ticket, packet or site that it was about. */
  readonly aboutId?: string;
  readonly detail?: string;
};

type Noting = {
  readonly tx: TenantTransaction;
  readonly orgId: string;
  readonly services: Pick<Services, 'now' | 'newId'>;
};

/** Enters an act in the organisation's audit log, in the transaction that does it. */
export async function noteAct({ tx, orgId, services }: Noting, act: Act): Promise<void> {
  await tx.auditEntry.create({ data: { ...act, orgId, id: services.newId(), at: services.now() } });
}

/** The same for whoever asks. */
export const noteOwn = ({ tx, actor, services }: Context, act: Omit<Act, 'actorId'>): Promise<void> =>
  noteAct({ tx, orgId: actor.orgId, services }, { ...act, actorId: actor.memberId });

/** Assumed: who is refused again within so long, in ms, is refused for the same; a flood must not fill the disk. */
const sameRefusalMs = 60_000;

/** The same for what was refused: alike ones, of the same member or of nobody known, are entered once a minute. */
export async function noteRefusal(noting: Noting, act: Act): Promise<void> {
  const { tx, orgId, services } = noting;
  const { kind, actorId, memberId = null, detail = null } = act;
  const since = new Date(services.now().getTime() - sameRefusalMs);
  const alike = { orgId, at: { gt: since }, kind, actorId, memberId, detail };
  if ((await tx.auditEntry.findFirst({ where: alike, select: { id: true } })) === null)
    await noteAct(noting, act);
}

/** Takes away entries of before a moment, so many at most; younger ones than 90 days the database keeps. @returns whether there are more */
export async function forgetActs(tx: TenantTransaction, orgId: string, before: Date): Promise<boolean> {
  const count = await tx.$executeRaw`
    delete from audit_entry where org_id = ${orgId}::uuid and id in (
      select id from audit_entry
      where org_id = ${orgId}::uuid and at < ${before}::timestamptz limit ${forgottenAtOnce})`;
  return count === forgottenAtOnce;
}
