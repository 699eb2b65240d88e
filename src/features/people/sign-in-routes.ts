import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import { refresh, secondStepTaken, signIn as signInBody, tokens } from '../../../shared/contract/people.ts';
import type { AccessClaims } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { sendUnkept } from './send-unkept.ts';
import { refreshTokens, signIn, signOut, takeSecondStep } from './sign-in.ts';

const open = { permission: 'public' } as const;

/** Sign-in, refresh and sign-out. Not idempotent by key: a kept reply would keep tokens. */
export const signInRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app, { services }) => {
  const sign = (claims: AccessClaims) => app.jwt.sign(claims);
  app.post(
    addresses.signIn,
    {
      schema: {
        summary: 'Sign in; gives an access and a refresh token',
        body: signInBody,
        response: { 200: tokens },
      },
      config: open,
    },
    async (request, reply) => {
      const caller = { address: request.ip, device: request.headers['user-agent'] ?? '' };
      const result = await signIn({ services, sign }, request.body, caller);
      return sendUnkept(request, reply, result);
    },
  );
  app.post(
    addresses.secondStep,
    {
      schema: {
        summary:
          'The second step of a sign-in, where a member has a second factor; gives tokens as the first one does',
        body: secondStepTaken,
        response: { 200: tokens },
      },
      config: open,
    },
    async (request, reply) => {
      const device = request.headers['user-agent'] ?? '';
      const result = await takeSecondStep({ services, sign }, request.body, device);
      return sendUnkept(request, reply, result);
    },
  );
  app.post(
    addresses.refresh,
    {
      schema: {
        summary: 'New tokens for a refresh token, which is used up by it',
        body: refresh,
        response: { 200: tokens },
      },
      config: open,
    },
    async (request, reply) => {
      const result = await refreshTokens(services, sign, request.body.refreshToken);
      return sendUnkept(request, reply, result);
    },
  );
  app.post(
    addresses.signOut,
    {
      schema: {
        summary: 'End the sign-in that a refresh token belongs to',
        body: refresh,
        response: { 204: z.null() },
      },
      config: open,
    },
    async (request, reply) => {
      await signOut(services, request.body.refreshToken);
      return reply.code(204).send(null);
    },
  );
};
