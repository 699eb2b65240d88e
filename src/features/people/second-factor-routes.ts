import type { FastifyReply, FastifyRequest } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import {
  appConfirmed,
  newApp,
  passwordAgain,
  recoveryCodes,
  secondFactors,
} from '../../../shared/contract/people.ts';
import { asCaller } from '../../http/as-caller.ts';
import { type Context, type Refused, sendProblem } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { wrongPassword } from './password-again.ts';
import { confirmApp, endApp, listSecondFactors, proposeApp, replaceRecoveryCodes } from './second-factors.ts';
import { sendUnkept } from './send-unkept.ts';

const own = { permission: 'own account' } as const;

/**
 * What a member shows beside their password. Where a reply holds a secret, it is given once and under no Idempotency-Key:
 * a kept reply would keep the secret.
 */
export const secondFactorRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (
  app,
  { services },
) => {
  /** Does what needs the password once more, and sends its reply, of which nothing is kept. */
  async function secretly<Body extends object>(
    request: FastifyRequest & { body: { password: string } },
    reply: FastifyReply,
    work: (context: Context) => Promise<Body | Refused>,
  ): Promise<Body> {
    const wrong = await wrongPassword(services, request, {
      password: request.body.password,
      pointer: '/password',
    });
    const result = wrong ?? (await asCaller(services, request, work));
    return sendUnkept(request, reply, result);
  }

  app.get(
    addresses.ownSecondFactors,
    { schema: { summary: 'What I show beside my password', response: { 200: secondFactors } }, config: own },
    (_request, reply) => reply.fromRead(listSecondFactors),
  );
  app.post(
    addresses.newApp,
    {
      schema: {
        summary: 'A key for an authenticator app (RFC 6238); nothing is on before a first code of it',
        response: { 200: newApp },
      },
      config: own,
    },
    async (request, reply) => {
      const result = await asCaller(services, request, proposeApp);
      return sendUnkept(request, reply, result);
    },
  );
  app.post(
    addresses.confirmApp,
    {
      schema: {
        summary: 'Turn an authenticator app on by a first code of it; gives codes for recovery, once',
        body: appConfirmed,
        response: { 200: recoveryCodes },
      },
      config: own,
    },
    (request, reply) => secretly(request, reply, (context) => confirmApp(context, request.body)),
  );
  app.post(
    addresses.newRecoveryCodes,
    {
      schema: {
        summary: 'New codes for recovery, in place of those that are left',
        body: passwordAgain,
        response: { 200: recoveryCodes },
      },
      config: own,
    },
    (request, reply) => secretly(request, reply, replaceRecoveryCodes),
  );
  app.post(
    addresses.endOwnApp,
    {
      schema: {
        summary: 'Turn my authenticator app off, and the codes for recovery with it',
        body: passwordAgain,
        response: { 200: secondFactors },
      },
      config: own,
    },
    async (request, reply) => {
      const { password } = request.body;
      const wrong = await wrongPassword(services, request, { password, pointer: '/password' });
      return wrong === null ? reply.fromWrite(endApp) : sendProblem(request, reply, wrong);
    },
  );
};
