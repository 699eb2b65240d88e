import { statfs } from 'node:fs/promises';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Services } from '../../services.ts';

const states = ['ok', 'starting', 'stopping', 'diskFull'] as const;
type State = (typeof states)[number];
const state = z.object({ status: z.enum(states) });

/**
 * `/healthz`: the process answers. `/readyz`: it also reaches its database, has room to write, and isn't about to end;
 * where one of these is not so, requests had better go to another server.
 */
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
      schema: { summary: 'The process can do its work', response: { 200: state, 503: state } },
      config: { permission: 'public', rateLimit: false },
    },
    async (_request, reply) => {
      const status = await stateOf(services);
      return reply.code(status === 'ok' ? 200 : 503).send({ status });
    },
  );
};

async function stateOf({ config, database, isStopping }: Services): Promise<State> {
  if (isStopping()) return 'stopping';
  const { bavail, bsize } = await statfs(config.dataFolder);
  if (bavail * bsize < config.leastFreeBytes) return 'diskFull';
  return (await database.isReady()) ? 'ok' : 'starting';
}
