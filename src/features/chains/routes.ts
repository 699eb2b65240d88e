import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import { chain } from '../../../shared/contract/chain.ts';
import { byId, itemsOf, placeId, versionNumber } from '../../../shared/contract/primitives.ts';
import {
  chainAudit,
  chainComparison,
  chainDocument,
  chainSummary,
  chainVersionRef,
} from '../../../shared/contract/site.ts';
import { symptomKinds } from '../../../shared/contract/triage.ts';
import { updateIn } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { addChain, readChain, replaceChain } from './chains.ts';
import { auditVersion, compareVersions, listChains, listVersions } from './versions.ts';

const read = { permission: 'read chains' } as const;
const write = { permission: 'write chains' } as const;
const versionParam = z.coerce.number().pipe(versionNumber);
const byVersion = byId.extend({ version: versionParam });
const auditQuery = z.object({
  version: versionParam.optional(),
  duringTriage: z.stringbool().default(false),
  /** What explains it weighs more. */
  symptom: z.enum(symptomKinds).optional(),
  /** The display that shows the fault: others beside it are then named. */
  displayId: placeId.optional(),
});

/** Signal chains, their versions and their prerequisite audit. */
export const chainRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app) => {
  app.get(
    addresses.siteChains,
    {
      schema: { summary: 'Chains of a site', params: byId, response: { 200: itemsOf(chainSummary) } },
      config: read,
    },
    (request, reply) => reply.fromRead((context) => listChains(context, request.params.id)),
  );
  app.post(
    addresses.siteChains,
    {
      schema: { summary: 'Describe a chain', params: byId, body: chain, response: { 201: chainDocument } },
      config: write,
    },
    (request, reply) => reply.fromWrite((context) => addChain(context, request.params.id, request.body)),
  );
  app.get(
    addresses.chain,
    {
      schema: { summary: 'A chain, newest version', params: byId, response: { 200: chainDocument } },
      config: read,
    },
    (request, reply) => reply.fromRead((context) => readChain(context, request.params.id)),
  );
  app.put(
    addresses.chain,
    {
      schema: {
        summary: 'Replace the whole chain by a new version (If-Match)',
        params: byId,
        body: chain,
        response: { 200: chainDocument },
      },
      config: write,
    },
    (request, reply) =>
      reply.fromWrite((context) => replaceChain(context, request.params.id, updateIn(request))),
  );
  app.get(
    addresses.chainVersions,
    {
      schema: {
        summary: 'All versions with what changed, newest first',
        params: byId,
        response: { 200: itemsOf(chainVersionRef) },
      },
      config: read,
    },
    (request, reply) => reply.fromRead((context) => listVersions(context, request.params.id)),
  );
  app.get(
    addresses.chainVersion,
    { schema: { summary: 'One version', params: byVersion, response: { 200: chainDocument } }, config: read },
    (request, reply) =>
      reply.fromRead((context) => readChain(context, request.params.id, request.params.version)),
  );
  app.get(
    addresses.changesSince,
    {
      schema: {
        summary: 'What differs between two versions, in sentences',
        params: byVersion.extend({ from: versionParam }),
        response: { 200: chainComparison },
      },
      config: read,
    },
    ({ params }, reply) =>
      reply.fromRead((context) =>
        compareVersions(context, params.id, { from: params.from, to: params.version }),
      ),
  );
  app.get(
    addresses.chainAudit,
    {
      schema: {
        summary: 'Prerequisite audit of a chain (`version`, `duringTriage`, `symptom`, `displayId`)',
        params: byId,
        querystring: auditQuery,
        response: { 200: chainAudit },
      },
      config: read,
    },
    (request, reply) => reply.fromRead((context) => auditVersion(context, request.params.id, request.query)),
  );
};
