import swagger from '@fastify/swagger';
import swaggerUi from '@fastify/swagger-ui';
import fastifyPlugin from 'fastify-plugin';
import { jsonSchemaTransform } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { problemKinds } from '../../shared/contract/problem.ts';
import { access } from './access.ts';
import { refused, sendProblem } from './problem.ts';

const problemPage = z.object({ kind: z.string(), status: z.int(), title: z.string() });

/** A route's description, with the roles that it is for. */
const withRoles: typeof jsonSchemaTransform = (input) => {
  const { schema, url } = jsonSchemaTransform(input);
  const permission = input.route?.config?.permission;
  if (permission === undefined) return { schema, url };
  return { schema: { ...schema, 'x-roles': permission === 'public' ? ['anyone'] : access[permission] }, url };
};

/** `/openapi.json` from the contract, a page to read it on, and a page for every `type` of problem. */
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
    transform: withRoles,
  });
  await app.register(swaggerUi, { routePrefix: '/reference', staticCSP: true });
  app.get('/openapi.json', { schema: { hide: true }, config: { permission: 'public' } }, async () =>
    app.swagger(),
  );
  app.get<{ Params: { kind: string } }>(
    '/problems/:kind',
    { schema: { hide: true, response: { 200: problemPage } }, config: { permission: 'public' } },
    async (request, reply) => {
      const known = Object.entries(problemKinds).find(([kind]) => kind === request.params.kind);
      if (known === undefined)
        return sendProblem(request, reply, refused('not-found', 'There is no such problem.'));
      return { kind: known[0], ...known[1] };
    },
  );
});
