import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Services } from '../../services.ts';

const state = z.object({ status: z.enum(['ok', 'starting']) });

/** `/healthz`: the process answers. `/readyz`: it can also reach its database. */
export const healthRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app, { services }) => {
  app.get(
    '/healthz',
    {
      schema: { summary: 'The process answers', response: { 200: state } },
      config: { permission: 'public', rateLimit: false },
    },
    async () => ({ status: 'ok' as const }),
  );
  app.get(
    '/readyz',
    {
      schema: { summary: 'The process reaches its database', response: { 200: state, 503: state } },
      config: { permission: 'public', rateLimit: false },
    },
    async (_request, reply) => {
      const ready = await services.database.isReady();
      return reply.code(ready ? 200 : 503).send({ status: ready ? 'ok' : 'starting' });
    },
  );
};
