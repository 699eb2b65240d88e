import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import { auditEntry, auditLogQuery } from '../../../shared/contract/audit-log.ts';
import { pageOf } from '../../../shared/contract/primitives.ts';
import type { Services } from '../../services.ts';
import { readAuditLog } from './entries.read.ts';

/** Who did what in the organisation. */
export const auditLogRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app) => {
  app.get(
    addresses.auditLog,
    {
      schema: {
        summary:
          'Who did what: sign-ins and refused ones, grants, exports and what admins did, newest first (`memberId`: of one member)',
        querystring: auditLogQuery,
        response: { 200: pageOf(auditEntry) },
      },
      config: { permission: 'read the audit log' },
    },
    (request, reply) => reply.fromRead((context) => readAuditLog(context, request.query)),
  );
};
