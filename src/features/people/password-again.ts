import type { FastifyRequest } from 'fastify';
import { message } from '../../../shared/message/index.ts';
import { asCaller } from '../../http/as-caller.ts';
import { noteRefusal, type Refused, refused } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { hashOfMember } from './account.read.ts';
import { passwordFits } from './passwords.ts';
import { claimTry, forgetTries, memberTries } from './sign-in-tries.ts';

/**
 * Asks a member who is signed in for their password once more, so that a session left open is not enough to change how
 * they sign in (and so that nobody guesses the password there, tries are counted).
 * @param pointer where the password stands in the request
 * @returns null where it is right
 */
export async function wrongPassword(
  services: Services,
  request: FastifyRequest,
  { password, pointer }: { password: string; pointer: string },
): Promise<Refused | null> {
  const owner = { orgId: request.user.org, memberId: request.user.sub };
  const tries = memberTries(services, 'own password', owner);
  const claimed = await claimTry(services, tries);
  if (!claimed.mayTry) {
    const { waitS } = claimed;
    return refused('too-many-requests', message('passwordDelayed', { minutes: Math.ceil(waitS / 60) }), {
      retryAfterS: waitS,
    });
  }
  const hash = await asCaller(services, request, ({ tx }) => hashOfMember(tx, owner));
  if (typeof hash !== 'string') return hash;
  const fits = await services.heavyWork.inTurn('passwords', owner, () => passwordFits(hash, password));
  if (!fits) {
    const { orgId, memberId: actorId } = owner;
    await services.database.inTenant(owner, (tx) =>
      noteRefusal({ tx, orgId, services }, { kind: 'passwordRefused', actorId }),
    );
    return refused('invalid-input', message('passwordWrong'), {
      errors: [{ pointer, ...message('passwordWrong') }],
    });
  }
  await forgetTries(services, tries);
  return null;
}
