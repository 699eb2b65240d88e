import { randomBytes } from 'node:crypto';
import type { Member } from '../../../shared/contract/people.ts';
import { noteAct } from '../../http/index.ts';
import type { CommandLineServices } from '../../services.ts';
import { findAccount } from './account.read.ts';
import { memberView } from './member-view.ts';
import { hashPassword } from './passwords.ts';
import { endSecondFactors } from './second-factors.ts';
import { endSessions, sessionsOf } from './sessions.ts';

type Recovery = { readonly organisation: string; readonly email: string; readonly makeAdmin: boolean };

/** A password of 120 random bits, for somebody to sign in with once and change. */
export const randomPassword = (): string => randomBytes(15).toString('base64url');

/**
 * Lets a member in again whom nobody in the organisation can help: gives them another password, makes them active and,
 * where it is asked for, an admin. All their sign-ins end, and they need no second factor until they turn one on again. For the command line, never for a route.
 * @param organisation its handle
 * @returns null where there is no such account
 */
export async function recoverMember(
  services: CommandLineServices,
  { organisation, email, makeAdmin }: Recovery,
): Promise<{ readonly member: Member; readonly password: string } | null> {
  const password = randomPassword();
  const account = await services.database.lookUp((tx) => findAccount(tx, { organisation, email, password }));
  if (account === null) return null;
  const { orgId, memberId } = account;
  const passwordHash = await hashPassword(password);
  return services.database.inTenant({ orgId, memberId: null }, async (tx) => {
    const row = await tx.member.update({
      where: { orgId_id: { orgId, id: memberId } },
      data: {
        passwordHash,
        active: true,
        version: { increment: 1 },
        ...(makeAdmin ? { role: 'admin' } : {}),
      },
    });
    await endSecondFactors(tx, { orgId, memberId });
    await endSessions(tx, sessionsOf({ orgId, memberId }), services.now());
    await noteAct({ tx, orgId, services }, { kind: 'memberRecovered', actorId: null, memberId });
    return { member: memberView(row), password };
  });
}
