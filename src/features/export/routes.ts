import type { FastifyReply } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import { byId } from '../../../shared/contract/primitives.ts';
import { asCaller } from '../../http/as-caller.ts';
import { noteOwn, sendProblem } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { noSite } from '../sites/index.ts';
import { listDocuments, listDocumentsOfSite } from './documents.ts';
import { type ZipEntry, zipWithManifest } from './zip-with-manifest.ts';

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
      return sendZip(reply, { name: 'halfsplit-export', entries: begun.entries, madeAt });
    },
  );
  app.get(
    addresses.siteExport,
    {
      schema: {
        summary:
          'All data of one client: their site with its chains, tickets and files, as a zip like that of /export',
        params: byId,
      },
      config: {
        permission: 'export everything',
        sends: { says: 'The zip', mediaTypes: ['application/zip'] },
      },
    },
    async (request, reply) => {
      const madeAt = services.now();
      const begun = await asCaller(services, request, async (context) => {
        const entries = await listDocumentsOfSite(context, request.params.id, madeAt);
        if (entries === null) return noSite;
        await noteOwn(context, { kind: 'clientExported', aboutId: request.params.id });
        return { entries };
      });
      if ('ok' in begun) return sendProblem(request, reply, begun);
      return sendZip(reply, { name: 'halfsplit-client', entries: begun.entries, madeAt });
    },
  );
};

type Zip = { readonly name: string; readonly entries: readonly ZipEntry[]; readonly madeAt: Date };

function sendZip(reply: FastifyReply, { name, entries, madeAt }: Zip): FastifyReply {
  const folder = `${name}-${madeAt.toISOString().slice(0, 10)}`;
  return reply
    .header('cache-control', 'no-store')
    .header('x-content-type-options', 'nosniff')
    .header('content-disposition', `attachment; filename="${folder}.zip"`)
    .type('application/zip')
    .send(zipWithManifest(folder, entries, madeAt));
}
