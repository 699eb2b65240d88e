import { randomUUID } from 'node:crypto';
import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import fastify, { type FastifyBaseLogger, type FastifyInstance, type FastifyServerOptions } from 'fastify';
import { serializerCompiler, type ZodTypeProvider } from 'fastify-type-provider-zod';
import type { Logger } from 'pino';
import type { TlsFiles, TrustedProxies } from '../config.ts';
import type { Services } from '../services.ts';
import { authentication } from './authentication.ts';
import { answerClientError, maxHeaderKiB } from './client-errors.ts';
import { answerUnreadableAddress, installErrorHandling } from './errors.ts';
import { spokenReplies } from './language.ts';
import { openapi } from './openapi.ts';
import { sendProblem } from './problem.ts';
import { Quotas } from './quotas.ts';
import { readTlsPair } from './tls.ts';
import { transactions } from './transactions.ts';
import { invalidInput, validatorCompiler } from './validation.ts';
import { findUnstorable } from './well-formed.ts';

/** JSON bodies; the largest is a chain whose ports carry their EDIDs. */
const bodyLimitBytes = 4 * 1024 * 1024;

/** A server with everything that all routes share: limits, log, problems, sign-in check, transactions, description. */
export async function createServer(services: Services, logger: Logger): Promise<FastifyInstance> {
  const { config } = services;
  const options = {
    loggerInstance: logger as FastifyBaseLogger,
    genReqId: () => randomUUID(),
    trustProxy: trustedHops(config.trustProxy),
    bodyLimit: bodyLimitBytes,
    requestTimeout: 600_000,
    connectionTimeout: 120_000,
    keepAliveTimeout: 10_000,
    forceCloseConnections: 'idle',
    clientErrorHandler: answerClientError,
    frameworkErrors: answerUnreadableAddress,
    routerOptions: { maxParamLength: 200 },
  } satisfies FastifyServerOptions;
  const app = serverOver(options, config.tls).withTypeProvider<ZodTypeProvider>();
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  installErrorHandling(app);
  app.addHook('onRequest', async (request, reply) => {
    reply.header('x-request-id', request.id);
  });
  app.addHook('preValidation', async (request, reply) => {
    for (const part of ['body', 'params', 'query'] as const) {
      const unstorable = findUnstorable(request[part]);
      if (unstorable !== null) return sendProblem(request, reply, invalidInput([unstorable], part));
    }
    return undefined;
  });
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    hsts: config.tls !== null || config.trustProxy !== false,
  });
  app.decorate('quotas', new Quotas(config.quotas));
  await app.register(rateLimit, { max: config.requestsPerMin, timeWindow: '1 minute' });
  await app.register(authentication, { services });
  await app.register(transactions, { services });
  await app.register(spokenReplies);
  await app.register(openapi);
  return app;
}

const headerLimits = { maxHeaderSize: maxHeaderKiB * 1024, headersTimeout: 20_000 };

/** Fastify's types tell a server with TLS from one without; to all that is built on it they are the same. */
const serverOver = (options: FastifyServerOptions, tls: TlsFiles | null): FastifyInstance =>
  tls === null
    ? fastify({ ...options, http: headerLimits })
    : (fastify({
        ...(options as object),
        https: { ...readTlsPair(tls), ...headerLimits },
      }) as unknown as FastifyInstance);

/** Fastify's types know no count of proxies: the last so many addresses that a request came by are theirs. */
const trustedHops = (
  trusted: TrustedProxies,
): false | string[] | ((address: string, hop: number) => boolean) =>
  typeof trusted === 'number' ? (_address, hop) => hop < trusted : trusted;
