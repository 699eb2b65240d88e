import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import { byId } from '../../../shared/contract/primitives.ts';
import { budgetQuery, budgetReply, edidReadings } from '../../../shared/contract/signal.ts';
import type { Services } from '../../services.ts';
import { findChainToBudget } from './budget.ts';
import { budgetWork } from './budget.work.ts';
import { findEdids } from './edid-readings.ts';
import { edidsWork } from './edids.work.ts';

const read = { permission: 'read chains' } as const;

/** What the signal of a chain can and cannot do. */
export const signalRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app) => {
  app.get(
    addresses.chainBudget,
    {
      schema: {
        summary:
          'Link budget, content protection and 5 V power, with and without a device (`format`, `without`)',
        params: byId,
        querystring: budgetQuery,
        response: { 200: budgetReply },
      },
      config: read,
    },
    (request, reply) =>
      reply.fromTask((context) => findChainToBudget(context, request.params.id, request.query), budgetWork),
  );
  app.get(
    addresses.chainEdids,
    {
      schema: {
        summary: 'Every EDID read in the chain, compared where two say something of each other',
        params: byId,
        response: { 200: edidReadings },
      },
      config: read,
    },
    (request, reply) => reply.fromTask((context) => findEdids(context, request.params.id), edidsWork),
  );
};
