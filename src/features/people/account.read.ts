import type { Member, Tokens } from '../../../shared/contract/people.ts';
import type { TenantTransaction } from '../../database/index.ts';
import { memberView } from './member-view.ts';

export type Credentials = {
  readonly organisation: string;
  readonly email: string;
  readonly password: string;
};
export type Account = { readonly orgId: string; readonly memberId: string };

/** The organisation that somebody wants to sign in to; null when there is none of that handle. */
export async function organisationOf(
  tx: TenantTransaction,
  { organisation }: Credentials,
): Promise<string | null> {
  const handle = organisation.trim().toLowerCase();
  return (await tx.organisation.findUnique({ where: { handle }, select: { orgId: true } }))?.orgId ?? null;
}

/** The account that somebody wants to sign in to, looked up across tenants; null when there is none. */
export async function findAccount(
  tx: TenantTransaction,
  credentials: Credentials,
): Promise<(Account & { passwordHash: string; active: boolean }) | null> {
  const orgId = await organisationOf(tx, credentials);
  if (orgId === null) return null;
  const email = credentials.email.trim().toLowerCase();
  const member = await tx.member.findUnique({
    where: { orgId_email: { orgId, email } },
    select: { id: true, passwordHash: true, active: true },
  });
  if (member === null) return null;
  const { id: memberId, passwordHash, active } = member;
  return { orgId, memberId, passwordHash, active };
}

type Shown = { readonly member: Member; readonly organisation: Tokens['organisation'] };

/** A member and their organisation as they are shown to the member. */
export async function accountOf(tx: TenantTransaction, { orgId, memberId }: Account): Promise<Shown> {
  const row = await tx.member.findUniqueOrThrow({
    where: { orgId_id: { orgId, id: memberId } },
    include: { organisation: { select: { handle: true, name: true } } },
  });
  return { member: memberView(row), organisation: { id: orgId, ...row.organisation } };
}

/** The hash of a member's password. */
export async function hashOfMember(tx: TenantTransaction, { orgId, memberId }: Account): Promise<string> {
  const { passwordHash } = await tx.member.findUniqueOrThrow({
    where: { orgId_id: { orgId, id: memberId } },
    select: { passwordHash: true },
  });
  return passwordHash;
}
