import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import {
  faultFigure,
  firmwareLevel,
  firmwareLevelInput,
  organisation,
  organisationUpdate,
} from '../../../shared/contract/organisation.ts';
import { byId, itemsOf } from '../../../shared/contract/primitives.ts';
import { usage } from '../../../shared/contract/usage.ts';
import { found, updateIn } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import {
  addFirmwareLevel,
  firmwareLevels,
  readFirmwareLevel,
  removeFirmwareLevel,
  updateFirmwareLevel,
} from './firmware-levels.ts';
import { readFaultModel, readOrganisation, updateOrganisation } from './settings.ts';

const readLevels = { permission: 'read firmware levels' } as const;
const manageLevels = { permission: 'manage firmware levels' } as const;

/** The organisation's own numbers and its minimum firmware levels. */
export const organisationRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app) => {
  app.get(
    addresses.organisation,
    {
      schema: { summary: 'Name and settings of the organisation', response: { 200: organisation } },
      config: { permission: 'read organisation' },
    },
    (_request, reply) => reply.fromRead(readOrganisation),
  );
  app.put(
    addresses.organisation,
    {
      schema: {
        summary: 'Change them (If-Match)',
        body: organisationUpdate,
        response: { 200: organisation },
      },
      config: { permission: 'manage organisation' },
    },
    (request, reply) => reply.fromWrite((context) => updateOrganisation(context, updateIn(request))),
  );
  app.get(
    addresses.usage,
    {
      schema: {
        summary: 'What the organisation uses of what the server lets it have',
        response: { 200: itemsOf(usage) },
      },
      config: { permission: 'manage organisation' },
    },
    (_request, reply) =>
      reply.fromRead(async ({ actor, tx }) => found({ items: await app.quotas.usageOf(actor.orgId, tx) })),
  );
  app.get(
    addresses.faultModel,
    {
      schema: {
        summary:
          'Every figure that suspects and tests are ranked by, where it is from, and your own in its place',
        response: { 200: itemsOf(faultFigure) },
      },
      config: { permission: 'read organisation' },
    },
    (_request, reply) => reply.fromRead(readFaultModel),
  );
  app.get(
    addresses.firmwareLevels,
    {
      schema: {
        summary: 'Lowest firmware accepted, per model',
        response: { 200: itemsOf(firmwareLevel) },
      },
      config: readLevels,
    },
    (_request, reply) => reply.fromRead(async (context) => found({ items: await firmwareLevels(context) })),
  );
  app.get(
    addresses.firmwareLevel,
    {
      schema: { summary: 'One of them', params: byId, response: { 200: firmwareLevel } },
      config: readLevels,
    },
    (request, reply) => reply.fromRead((context) => readFirmwareLevel(context, request.params.id)),
  );
  app.post(
    addresses.firmwareLevels,
    {
      schema: { summary: 'Set one for a model', body: firmwareLevelInput, response: { 201: firmwareLevel } },
      config: manageLevels,
    },
    (request, reply) => reply.fromWrite((context) => addFirmwareLevel(context, request.body)),
  );
  app.put(
    addresses.firmwareLevel,
    {
      schema: {
        summary: 'Change one (If-Match)',
        params: byId,
        body: firmwareLevelInput,
        response: { 200: firmwareLevel },
      },
      config: manageLevels,
    },
    (request, reply) =>
      reply.fromWrite((context) => updateFirmwareLevel(context, request.params.id, updateIn(request))),
  );
  app.delete(
    addresses.firmwareLevel,
    {
      schema: { summary: 'Remove one (If-Match)', params: byId, response: { 200: firmwareLevel } },
      config: manageLevels,
    },
    (request, reply) =>
      reply.fromWrite((context) =>
        removeFirmwareLevel(context, request.params.id, request.headers['if-match']),
      ),
  );
};
