import type { FastifyRequest } from 'fastify';
import { message } from '../../shared/message/index.ts';
import type { TenantTransaction } from '../database/index.ts';
import type { Services } from '../services.ts';
import { may, roleNotAllowed } from './access.ts';
import { loadActor } from './actor.read.ts';
import type { Actor } from './actor.ts';
import { noteRefusal } from './audit-log.ts';
import type { Context } from './context.ts';
import { languageOf } from './language.ts';
import { type Refused, refused } from './problem.ts';

/**
 * The caller as the database knows them now, who has to be active still and allowed to use this route. That somebody's role
 * does not allow it stands in the audit log.
 */
export async function allowedActor(
  tx: TenantTransaction,
  request: FastifyRequest,
  services: Services,
): Promise<Actor | Refused> {
  const actor = await loadActor(tx, request.user);
  if (typeof actor === 'string')
    return refused('sign-in-needed', message(actor === 'ended' ? 'signInAgain' : 'accountInactive'));
  const { permission } = request.routeOptions.config;
  if (actor.lacksSecondFactor && permission !== 'own account')
    return refused('second-factor-missing', message('secondFactorWanted'));
  if (permission !== undefined && permission !== 'public' && may(actor.role, permission)) return actor;
  const { orgId, memberId: actorId } = actor;
  const detail = `${request.method} ${request.routeOptions.url ?? ''}`;
  await noteRefusal({ tx, orgId, services }, { kind: 'accessRefused', actorId, detail });
  return roleNotAllowed(actor.role, permission);
}

/**
 * Runs a query in the tenant of a signed-in caller who may use this route. For replies that are not JSON and for
 * uploads; everything else goes through `reply.fromRead` and `reply.fromWrite`.
 */
export function asCaller<Result>(
  services: Services,
  request: FastifyRequest,
  work: (context: Context) => Promise<Result>,
): Promise<Result | Refused> {
  const { org, sub } = request.user;
  return services.database.inTenant({ orgId: org, memberId: sub }, async (tx) => {
    const actor = await allowedActor(tx, request, services);
    return 'ok' in actor ? actor : work({ tx, actor, services, language: languageOf(request).tag });
  });
}
