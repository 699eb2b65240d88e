import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import { phonePlan, phonePlanQuery, plan, planQuery } from '../../../shared/contract/plan.ts';
import { byId } from '../../../shared/contract/primitives.ts';
import type { Services } from '../../services.ts';
import { readPhonePlan, readPlan } from './plans.ts';

const read = { permission: 'read tickets' } as const;

/** What to do next on a ticket: on site, and before anybody drives. */
export const planningRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app) => {
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
    (request, reply) => reply.fromRead((context) => readPlan(context, request.params.id, request.query)),
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
    (request, reply) =>
      reply.fromRead((context) => readPhonePlan(context, request.params.id, request.query.reachable)),
  );
};
