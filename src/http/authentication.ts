import { createHash } from 'node:crypto';
import jwt from '@fastify/jwt';
import type { FastifyRequest } from 'fastify';
import fastifyPlugin from 'fastify-plugin';
import { LRUCache } from 'lru-cache';
import { message } from '../../shared/message/index.ts';
import type { Services } from '../services.ts';
import { may, type Permission } from './access.ts';
import type { AccessClaims } from './access-claims.ts';
import { asCaller } from './as-caller.ts';
import { refused, sendProblem } from './problem.ts';

declare module '@fastify/jwt' {
  interface FastifyJWT {
    payload: AccessClaims;
    user: AccessClaims;
  }
}
declare module 'fastify' {
  interface FastifyContextConfig {
    /** What a caller needs; `public` routes need nothing. A route that says neither stops the start. */
    permission?: Permission | 'public';
  }
}

/** Checks the bearer token and the role of every route before its body is read. */
export const authentication = fastifyPlugin<{ services: Services }>(async (app, { services }) => {
  const { tokenSecrets, accessTokenS } = services.config;
  const [newest] = tokenSecrets;
  const byKeyId = new Map(tokenSecrets.map((secret) => [keyIdOf(secret), secret]));
  await app.register(jwt, {
    secret: {
      private: newest,
      // A token of before keys had ids names none.
      public: (_request, token, done) => done(null, byKeyId.get(keyIdIn(token) ?? '') ?? newest),
    },
    decode: { complete: true },
    sign: { expiresIn: accessTokenS, iss: 'halfsplit', aud: 'halfsplit-api', kid: keyIdOf(newest) },
    verify: { allowedIss: 'halfsplit', allowedAud: 'halfsplit-api', algorithms: ['HS256'] },
  });
  const { requestsPerMin } = services.config.quotas;
  const limited = app.createRateLimit({
    max: requestsPerMin,
    timeWindow: '1 minute',
    keyGenerator: (request) => request.user.org,
  });
  const asked = new LRUCache<string, number>({ max: 10_000, ttl: 60_000 });
  app.quotas.measureBy('requestsPerMin', (orgId) => asked.get(orgId) ?? 0);
  app.addHook('onRoute', (route) => {
    if (route.method === 'OPTIONS' || route.method === 'HEAD') return;
    // These routes come from a package that knows nothing of permissions.
    if (route.url.startsWith('/reference/openapi')) route.config = { ...route.config, permission: 'public' };
    if (route.config?.permission === undefined)
      throw new Error(`${route.method} ${route.url} names no permission`);
  });
  app.addHook('onRequest', async (request, reply) => {
    const permission = request.routeOptions.config.permission;
    if (request.is404 || permission === 'public') return;
    if (!(await hasGoodToken(request))) {
      return sendProblem(request, reply, refused('sign-in-needed', message('accessTokenNeeded')));
    }
    const rate = await limited(request);
    if (!rate.isAllowed) {
      asked.set(request.user.org, rate.max - rate.remaining);
      if (rate.isExceeded) return sendProblem(request, reply, app.quotas.refusal('requestsPerMin'));
    }
    if (permission === undefined || !may(request.user.role, permission)) {
      // A token may be older than its owner's role: the database says, and keeps in mind whom it refuses.
      const allowed = await asCaller(services, request, async ({ actor }) => actor);
      if ('ok' in allowed) return sendProblem(request, reply, allowed);
    }
  });
});

/** What a token names its secret by (RFC 7515, section 4.1.4); it tells nobody the secret. */
const keyIdOf = (secret: string): string =>
  createHash('sha256').update(`key id ${secret}`).digest('hex').slice(0, 16);

function keyIdIn(token: unknown): string | undefined {
  const { header } = token as { header?: { kid?: unknown } };
  return typeof header?.kid === 'string' ? header.kid : undefined;
}

async function hasGoodToken(request: FastifyRequest): Promise<boolean> {
  try {
    await request.jwtVerify();
    // One of a version that named no session; its owner gets another for the refresh token.
    return typeof request.user.sid === 'string';
  } catch {
    return false;
  }
}
