import type { FastifyReply, FastifyRequest } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import { byId } from '../../../shared/contract/primitives.ts';
import { asCaller } from '../../http/as-caller.ts';
import { type Context, noteOwn, type Refused, sendProblem } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { noSite } from '../sites/index.ts';
import { listDocuments, listDocumentsOfSite } from './documents.ts';
import { type ZipEntry, zipWithManifest } from './zip-with-manifest.ts';

/** Everything an organisation has, to take away: its own data belongs to it. */
export const exportRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app, { services }) => {
  /** What is listed in the caller's transaction leaves as a zip after it, under a name with the day. */
  async function sendExport(
    name: string,
    { request, reply }: { request: FastifyRequest; reply: FastifyReply },
    list: (context: Context, madeAt: Date) => Promise<{ entries: ZipEntry[] } | Refused>,
  ): Promise<FastifyReply> {
    const madeAt = services.now();
    const listed = await asCaller(services, request, (context) => list(context, madeAt));
    if ('ok' in listed) return sendProblem(request, reply, listed);
    const folder = `${name}-${madeAt.toISOString().slice(0, 10)}`;
    return reply
      .header('cache-control', 'no-store')
      .header('x-content-type-options', 'nosniff')
      .header('content-disposition', `attachment; filename="${folder}.zip"`)
      .type('application/zip')
      .send(zipWithManifest(folder, listed.entries, madeAt));
  }

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
    (request, reply) =>
      sendExport('halfsplit-export', { request, reply }, async (context, madeAt) => {
        await noteOwn(context, { kind: 'everythingExported' });
        return { entries: await listDocuments(context, madeAt) };
      }),
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
    (request, reply) =>
      sendExport('halfsplit-client', { request, reply }, async (context, madeAt) => {
        const entries = await listDocumentsOfSite(context, request.params.id, madeAt);
        if (entries === null) return noSite;
        await noteOwn(context, { kind: 'clientExported', aboutId: request.params.id });
        return { entries };
      }),
  );
};
