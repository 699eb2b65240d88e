import type { z } from 'zod';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import type { Member, memberUpdate, newMember, passwordChange } from '../../../shared/contract/people.ts';
import { message } from '../../../shared/message/index.ts';
import {
  type Context,
  created,
  found,
  mismatch,
  noteOwn,
  type Outcome,
  type Refused,
  refused,
  type Update,
} from '../../http/index.ts';
import { accountOf } from './account.read.ts';
import { memberView } from './member-view.ts';
import { weakPassword } from './password-rules.ts';
import { hashPassword } from './passwords.ts';
import { endSecondFactors } from './second-factors.ts';
import { endSessions, sessionsOf } from './sessions.ts';

const noMember = refused('not-found', message('noSuchMember'));

export async function listMembers({ tx, actor }: Context): Promise<Outcome<{ items: Member[] }>> {
  const rows = await tx.member.findMany({
    where: { orgId: actor.orgId },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
  });
  return found({ items: rows.map(memberView) });
}

export async function readMember({ tx, actor }: Context, id: string): Promise<Outcome<Member>> {
  const row = await tx.member.findUnique({ where: { orgId_id: { orgId: actor.orgId, id } } });
  return row === null ? noMember : found(memberView(row));
}

export async function addMember(
  context: Context,
  input: z.infer<typeof newMember>,
): Promise<Outcome<Member>> {
  const { tx, actor, services } = context;
  const { password, ...rest } = input;
  const taken = await tx.member.findUnique({
    where: { orgId_email: { orgId: actor.orgId, email: input.email } },
  });
  if (taken !== null) return refused('already-exists', message('emailTaken'));
  const weak = weakPassword(password, await namesAround(context, input));
  if (weak !== null) return weak;
  const passwordHash = await hashInTurn(context, password);
  const row = await tx.member.create({
    data: { ...rest, orgId: actor.orgId, id: services.newId(), passwordHash },
  });
  await noteOwn(context, { kind: 'memberAdded', memberId: row.id, detail: row.role });
  return created(memberView(row), addressOf(addresses.member, { id: row.id }));
}

export async function updateMember(
  context: Context,
  id: string,
  { ifMatch, input }: Update<z.infer<typeof memberUpdate>>,
): Promise<Outcome<Member>> {
  const { tx, actor, services } = context;
  await lockAdmins(context);
  const row = await tx.member.findUnique({ where: { orgId_id: { orgId: actor.orgId, id } } });
  if (row === null) return noMember;
  const conflict = mismatch(ifMatch, memberView(row)) ?? (await leavesNoAdmin(context, id, input));
  if (conflict !== null) return conflict;
  const updated = await tx.member.update({
    where: { orgId_id: { orgId: actor.orgId, id } },
    data: { ...input, version: { increment: 1 } },
  });
  if (!updated.active)
    await endSessions(tx, sessionsOf({ orgId: actor.orgId, memberId: id }), services.now());
  const detail = updated.active ? updated.role : `${updated.role} inactive`;
  await noteOwn(context, { kind: 'memberChanged', memberId: id, detail });
  return found(memberView(updated));
}

/** Sets a member's password for them; they are signed out everywhere (but here, where it is one's own). */
export async function resetPassword(
  context: Context,
  id: string,
  password: string,
): Promise<Outcome<Member>> {
  const { tx, actor } = context;
  const row = await tx.member.findUnique({ where: { orgId_id: { orgId: actor.orgId, id } } });
  if (row === null) return noMember;
  const weak = weakPassword(password, await namesAround(context, row));
  if (weak !== null) return weak;
  await noteOwn(context, { kind: 'memberPasswordSet', memberId: id });
  return found(await setPassword(context, id, password));
}

/** Takes a member's second factors, who has lost them; they are signed out everywhere (but here, where it is one's own). */
export async function endFactorsOf(context: Context, id: string): Promise<Outcome<Member>> {
  const { tx, actor, services } = context;
  const { orgId } = actor;
  const row = await tx.member.findUnique({ where: { orgId_id: { orgId, id } } });
  if (row === null) return noMember;
  await endSecondFactors(tx, { orgId, memberId: id });
  const but = id === actor.memberId ? actor.sessionId : null;
  await endSessions(tx, sessionsOf({ orgId, memberId: id }, but), services.now());
  await noteOwn(context, { kind: 'memberFactorsTaken', memberId: id });
  return found(memberView(row));
}

/** A member, who has shown that they know their password, changes it; other sign-ins end. */
export async function changePassword(
  context: Context,
  input: z.infer<typeof passwordChange>,
): Promise<Outcome<Member>> {
  const { tx, actor } = context;
  const row = await tx.member.findUniqueOrThrow({
    where: { orgId_id: { orgId: actor.orgId, id: actor.memberId } },
  });
  const weak = weakPassword(input.password, await namesAround(context, row));
  if (weak !== null) return weak;
  await noteOwn(context, { kind: 'passwordChanged' });
  return found(await setPassword(context, actor.memberId, input.password));
}

/** What a guesser would try first for that member. */
async function namesAround(
  { tx, actor }: Context,
  { name, email }: { name: string; email: string },
): Promise<string[]> {
  const { organisation } = await accountOf(tx, actor);
  return [name, email.split('@', 1)[0] ?? '', organisation.handle, organisation.name];
}

async function setPassword(context: Context, memberId: string, password: string): Promise<Member> {
  const { tx, actor, services } = context;
  const { orgId } = actor;
  const but = memberId === actor.memberId ? actor.sessionId : null;
  await endSessions(tx, sessionsOf({ orgId, memberId }, but), services.now());
  const row = await tx.member.update({
    where: { orgId_id: { orgId, id: memberId } },
    data: {
      passwordHash: await hashInTurn(context, password),
      version: { increment: 1 },
    },
  });
  return memberView(row);
}

/**
 * Two admins taking the role from each other at once must not leave none. Not `for update`: the key that each request
 * takes names its member, and two that hold that would wait for each other here.
 */
async function lockAdmins({ tx, actor }: Context): Promise<void> {
  await tx.$queryRaw`
    select id from member where org_id = ${actor.orgId}::uuid and role = 'admin' order by id for no key update`;
}

async function leavesNoAdmin(
  { tx, actor }: Context,
  id: string,
  input: z.infer<typeof memberUpdate>,
): Promise<Refused | null> {
  if (input.role === 'admin' && input.active) return null;
  const others = await tx.member.count({
    where: { orgId: actor.orgId, role: 'admin', active: true, id: { not: id } },
  });
  return others > 0 ? null : refused('last-admin', message('otherAdminNeeded'));
}

const hashInTurn = ({ services, actor }: Context, password: string): Promise<string> =>
  services.heavyWork.inTurn('passwords', actor, () => hashPassword(password));
