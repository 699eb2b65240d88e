import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import { phonePlan, phonePlanQuery, plan, planQuery } from '../../../shared/contract/plan.ts';
import { byId } from '../../../shared/contract/primitives.ts';
import type { Circumstances } from '../../../shared/isolation/index.ts';
import type { Services } from '../../services.ts';
import { phonePlanWork, planWork } from './plan.work.ts';
import { Plans } from './plans.ts';

const read = { permission: 'read tickets' } as const;

/** What to do next on a ticket: on site, and before anybody drives. */
export const planningRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app, { services }) => {
  const onSite = new Plans(services.heavyWork, planWork);
  const fromAfar = new Plans(services.heavyWork, phonePlanWork);
  app.get(
    addresses.plan,
    {
      schema: {
        summary:
          'What to do next and why, the suspects with what speaks for each (`kit`, `people`, `refused`)',
        params: byId,
        querystring: planQuery,
        response: { 200: plan },
      },
      config: read,
    },
    ({ params, query }, reply) => {
      const here = { ...query, kit: query.kit ?? null } as Circumstances;
      return reply.fromReadAnd(
        (context) => onSite.find(context, params.id, here),
        (from, asked, language) => onSite.make(from, asked, language),
      );
    },
  );
  app.get(
    addresses.phonePlan,
    {
      schema: {
        summary: 'What the client can safely try now, how likely a visit is, what to pack (`reachable`)',
        params: byId,
        querystring: phonePlanQuery,
        response: { 200: phonePlan },
      },
      config: read,
    },
    ({ params, query }, reply) =>
      reply.fromReadAnd(
        (context) => fromAfar.find(context, params.id, { reachableDevices: query.reachable }),
        (from, asked, language) => fromAfar.make(from, asked, language),
      ),
  );
};
