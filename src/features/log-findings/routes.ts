import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import { logFinding } from '../../../shared/contract/log-findings.ts';
import { byId, itemsOf } from '../../../shared/contract/primitives.ts';
import type { Services } from '../../services.ts';
import { readLogFindings } from './read-findings.ts';

/** What the logs of a ticket say. */
export const logFindingsRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app) => {
  app.get(
    addresses.logFindings,
    {
      schema: {
        summary: 'What the logs say: occurrences to confirm, forerunners, gaps, and what they cover',
        params: byId,
        response: { 200: itemsOf(logFinding) },
      },
      config: { permission: 'read evidence' },
    },
    (request, reply) => reply.fromRead((context) => readLogFindings(context, request.params.id)),
  );
};
