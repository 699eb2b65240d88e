import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import { asCaller } from '../../http/as-caller.ts';
import { noteOwn, sendProblem } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { listDocuments } from './documents.ts';
import { zipWithManifest } from './zip-with-manifest.ts';

/** Everything an organisation has, to take away: its own data belongs to it. */
export const exportRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app, { services }) => {
  app.get(
    addresses.export,
    {
      schema: {
        summary: 'All data of the organisation: a zip of JSON documents and files with their SHA-256',
      },
      config: {
        permission: 'export everything',
        sends: { says: 'The zip', mediaTypes: ['application/zip'] },
      },
    },
    async (request, reply) => {
      const madeAt = services.now();
      const begun = await asCaller(services, request, async (context) => {
        await noteOwn(context, { kind: 'everythingExported' });
        return { entries: await listDocuments(context, madeAt) };
      });
      if ('ok' in begun) return sendProblem(request, reply, begun);
      const folder = `halfsplit-export-${madeAt.toISOString().slice(0, 10)}`;
      reply
        .header('cache-control', 'no-store')
        .header('x-content-type-options', 'nosniff')
        .header('content-disposition', `attachment; filename="${folder}.zip"`)
        .type('application/zip');
      return reply.send(zipWithManifest(folder, begun.entries, madeAt));
    },
  );
};
