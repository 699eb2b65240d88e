import swagger from '@fastify/swagger';
import swaggerUi from '@fastify/swagger-ui';
import fastifyPlugin from 'fastify-plugin';
import { jsonSchemaTransform } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { addresses } from '../../shared/contract/addresses.ts';
import { problemKinds, problemStatuses, spokenProblem } from '../../shared/contract/problem.ts';
import { typeOfKind } from '../../shared/contract/problem-type.ts';
import { message } from '../../shared/message/index.ts';
import { languages } from '../replies/spoken.ts';
import { access } from './access.ts';
import { keptText } from './kept-text.ts';
import { nameLanguage, problemInWords } from './language.ts';
import { refused, sendProblem } from './problem.ts';

/** What a route answers with that is no JSON of the contract. */
export type Sends = {
  readonly says: string;
  /** Of a success's body; none for a reply without a body. */
  readonly mediaTypes?: readonly string[];
  readonly status?: 200 | 201 | 204;
  /** Whether a part of it can be had (RFC 9110, section 14). */
  readonly inParts?: boolean;
  /** Headers that a success comes with, by what each says. */
  readonly headers?: Readonly<Record<string, string>>;
};
declare module 'fastify' {
  interface FastifyContextConfig {
    /** For the description of a route that has no schema for its success. */
    sends?: Sends;
  }
}

const problemPage = z.object({ kind: z.string(), status: z.int(), title: z.string() });

const header = (description: string) => ({ type: 'string', description });
const writes = ['POST', 'PUT', 'PATCH', 'DELETE'];

const spoken = languages.map(({ tag }) => tag);
const acceptLanguage = {
  'accept-language': header(
    `Which language sentences are to be in (RFC 9110, section 12.5.4): ${spoken.join(' or ')}; without it, ${spoken[0]}`,
  ),
};
/** Headers of every reply, for messages are in all of them. */
const replyHeaders = {
  'content-language': { type: 'string', enum: spoken, description: 'Which language its sentences are in' },
  vary: header('Names accept-language: the same address has a body in each language'),
};

/** Headers that a route needs beside its description; uploads follow a protocol of their own. */
function headersOf(method: string, url: string): Record<string, object> {
  if (url.startsWith('/uploads') || url.startsWith('/auth') || !writes.includes(method)) return {};
  const key = header('8 to 200 visible characters, new for each thing that is meant; on a retry the same');
  const version = header('The ETag of what the update is based on');
  return { 'idempotency-key': key, ...(method === 'POST' ? {} : { 'if-match': version }) };
}

const problemReply = {
  description: 'Why not (RFC 9457)',
  headers: replyHeaders,
  content: { 'application/problem+json': { schema: z.toJSONSchema(spokenProblem, { io: 'output' }) } },
};

/** How the description's maker is told that a reply has no body. */
const noBody = { type: 'null' };

/** RFC 9110, section 15.4.5. */
const unchangedReply = { ...noBody, description: 'The caller has it already (If-None-Match)' };

/** The replies of a route that are described, with the headers that say which language they are in. */
const spokenReplies = (response: unknown): Record<string, object> =>
  Object.fromEntries(
    Object.entries((response ?? {}) as Record<string, object>).map(([status, schema]) => [
      status,
      { ...schema, headers: replyHeaders },
    ]),
  );

/** The successes of a route whose body is a file, a stream, or none. */
function sentReplies(sends: Sends): Record<string, object> {
  const { says, mediaTypes = [], status = 200, inParts = false, headers = {} } = sends;
  // A body of bytes has no schema beside its media type (OpenAPI 3.1.0, section 4.8.14.2).
  const content = Object.fromEntries(mediaTypes.map((type) => [type, { schema: {} }]));
  const whole = {
    description: says,
    ...(mediaTypes.length === 0 ? noBody : { content }),
    headers: Object.fromEntries(Object.entries(headers).map(([name, words]) => [name, header(words)])),
  };
  if (!inParts) return { [status]: whole };
  return {
    [status]: whole,
    206: { description: 'The part that Range asks for', content },
    416: { ...noBody, description: 'It has no such part; Content-Range says how long it is' },
  };
}

/** A route's description, with the roles that it is for, the headers that it asks for, and how it refuses. */
const described: typeof jsonSchemaTransform = (input) => {
  const { schema, url } = jsonSchemaTransform(input);
  const { permission, sends } = input.route?.config ?? {};
  if (permission === undefined || schema.hide) return { schema, url };
  const method = [input.route.method].flat()[0] ?? '';
  const needed = headersOf(method, url);
  const headers = {
    type: 'object',
    properties: { ...needed, ...acceptLanguage },
    required: Object.keys(needed),
  };
  const response = {
    ...spokenReplies(schema.response),
    ...(sends === undefined ? {} : sentReplies(sends)),
    ...(method === 'GET' && permission !== 'public' ? { 304: unchangedReply } : {}),
    default: problemReply,
  };
  const roles = permission === 'public' ? ['anyone'] : access[permission];
  return { schema: { ...schema, headers, response, 'x-roles': roles }, url };
};

/** `/openapi.json` from the contract, pages to read it on, and a page for every `type` of problem. */
export const openapi = fastifyPlugin(async (app) => {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Halfsplit',
        version: '0.1.0',
        description:
          'Service tickets for signal-chain faults: one change at a time, retests that mean something.',
        license: { name: 'Apache-2.0', identifier: 'Apache-2.0' },
      },
      components: {
        securitySchemes: { accessToken: { type: 'http', scheme: 'bearer', bearerFormat: 'JWT' } },
      },
      security: [{ accessToken: [] }],
    },
    transform: described,
  });
  await app.register(swaggerUi, { routePrefix: '/reference/openapi', staticCSP: true });
  // As text: nothing in it is a message to be put into the reader's language.
  const description = keptText(() => JSON.stringify(app.swagger()));
  app.get('/openapi.json', { schema: { hide: true }, config: { permission: 'public' } }, (request, reply) =>
    description(request, reply.type('application/json').header('content-language', 'en')),
  );
  app.get<{ Params: { kind: string } }>(
    addresses.problem,
    { schema: { hide: true, response: { 200: problemPage } }, config: { permission: 'public' } },
    async (request, reply) => {
      const kind = problemKinds.find((one) => one === request.params.kind);
      if (kind === undefined)
        return sendProblem(request, reply, refused('not-found', message('noSuchProblemKind')));
      const status = problemStatuses[kind];
      return {
        kind,
        status,
        title: problemInWords({ type: typeOfKind(kind), status }, nameLanguage(request, reply)).title,
      };
    },
  );
});
