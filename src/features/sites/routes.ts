import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import { byId, pageOf } from '../../../shared/contract/primitives.ts';
import { siteInput, siteSearch, siteSummary } from '../../../shared/contract/site.ts';
import { updateIn } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { readSite, searchSites } from './sites.read.ts';
import { addSite, updateSite } from './sites.ts';

const read = { permission: 'read sites' } as const;
const write = { permission: 'write sites' } as const;

/** Clients' places. */
export const siteRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app) => {
  app.get(
    addresses.sites,
    {
      schema: {
        summary: 'Sites by any part of client, address, telephone number or device serial (`q`)',
        querystring: siteSearch,
        response: { 200: pageOf(siteSummary) },
      },
      config: read,
    },
    (request, reply) => reply.fromRead((context) => searchSites(context, request.query)),
  );
  app.get(
    addresses.site,
    {
      schema: { summary: 'One site with its chains', params: byId, response: { 200: siteSummary } },
      config: read,
    },
    (request, reply) => reply.fromRead((context) => readSite(context, request.params.id)),
  );
  app.post(
    addresses.sites,
    { schema: { summary: 'Add a site', body: siteInput, response: { 201: siteSummary } }, config: write },
    (request, reply) => reply.fromWrite((context) => addSite(context, request.body)),
  );
  app.put(
    addresses.site,
    {
      schema: {
        summary: 'Change a site (If-Match)',
        params: byId,
        body: siteInput,
        response: { 200: siteSummary },
      },
      config: write,
    },
    (request, reply) =>
      reply.fromWrite((context) => updateSite(context, request.params.id, updateIn(request))),
  );
};
