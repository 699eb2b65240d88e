import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import {
  grantedPacket,
  newGrant,
  packet,
  packetGrant,
  packetSummary,
} from '../../../shared/contract/packet.ts';
import { byId, itemsOf } from '../../../shared/contract/primitives.ts';
import { asCaller } from '../../http/as-caller.ts';
import { sendFile } from '../../http/file-reply.ts';
import { sendProblem } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { findGrantee } from './grantee.read.ts';
import { grantedPackets, listGrants } from './grants.read.ts';
import { grantPacket, revokeGrant } from './grants.ts';
import { noPacket } from './packet-row.ts';
import { listPackets } from './packets.read.ts';
import { readablePacket, readPacket, summaryFile, zipFile } from './read-packets.ts';

const read = { permission: 'read packets' } as const;
const grant = { permission: 'grant packets' } as const;

/** Case packets: read in the own organisation, and by whom one of them was granted to. */
export const packetRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app, { services }) => {
  const { database, evidenceStore } = services;
  app.get(
    addresses.ticketPackets,
    {
      schema: {
        summary: "A ticket's case packets, newest version first, each with what is new in it",
        params: byId,
        response: { 200: itemsOf(packetSummary) },
      },
      config: read,
    },
    (request, reply) => reply.fromRead((context) => listPackets(context, request.params.id)),
  );
  app.get(
    addresses.packet,
    {
      schema: {
        summary: 'A case packet: the case for machines, and the files of its bag',
        params: byId,
        response: { 200: packet },
      },
      config: read,
    },
    (request, reply) => reply.fromRead((context) => readPacket(context, request.params.id)),
  );
  const asFile = [
    {
      address: addresses.packetSummary,
      of: summaryFile,
      disposition: 'inline',
      says: 'The case to read and print, as one HTML file',
    },
    {
      address: addresses.packetDownload,
      of: zipFile,
      disposition: 'attachment',
      says: 'The whole packet: a BagIt bag in a zip',
    },
  ] as const;
  for (const { address, of, disposition, says } of asFile) {
    app.get(address, { schema: { summary: says, params: byId }, config: read }, async (request, reply) => {
      const readable = await asCaller(services, request, (context) =>
        readablePacket(context, request.params.id),
      );
      if (readable === null) return sendProblem(request, reply, noPacket);
      if ('ok' in readable) return sendProblem(request, reply, readable);
      const { open, ...shown } = of(readable);
      return sendFile(request, reply, {
        ...shown,
        disposition,
        open: (range) => open(evidenceStore, range),
      });
    });
  }
  app.post(
    addresses.packetGrants,
    {
      schema: {
        summary: 'Show a packet, and nothing else, to a support member of another organisation',
        params: byId,
        body: newGrant,
        response: { 200: packetGrant, 201: packetGrant },
      },
      config: grant,
    },
    async (request, reply) => {
      const grantee = await findGrantee(database, request.body.memberAddress);
      return reply.fromWrite((context) => grantPacket(context, request.params.id, grantee));
    },
  );
  app.get(
    addresses.packetGrants,
    {
      schema: {
        summary: 'To whom a packet was granted, and whether they opened it',
        params: byId,
        response: { 200: itemsOf(packetGrant) },
      },
      config: grant,
    },
    (request, reply) => reply.fromRead((context) => listGrants(context, request.params.id)),
  );
  app.post(
    addresses.revokeGrant,
    {
      schema: { summary: 'End a grant for good', params: byId, response: { 200: packetGrant } },
      config: grant,
    },
    (request, reply) => reply.fromWrite((context) => revokeGrant(context, request.params.id)),
  );
  app.get(
    addresses.grantedPackets,
    {
      schema: {
        summary: 'The packets that other organisations show to the caller',
        response: { 200: itemsOf(grantedPacket) },
      },
      config: { permission: 'read granted packets' },
    },
    (_request, reply) => reply.fromRead(grantedPackets),
  );
};
