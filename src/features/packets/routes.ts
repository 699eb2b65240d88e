import type { FastifyRequest } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import {
  grantedPacket,
  newGrant,
  packet,
  packetGrant,
  packetSummary,
  signingKey,
} from '../../../shared/contract/packet.ts';
import { byId, itemsOf } from '../../../shared/contract/primitives.ts';
import { asCaller } from '../../http/as-caller.ts';
import { faultOfFile } from '../../http/file-fault.ts';
import { sendFile } from '../../http/file-reply.ts';
import { isUnchanged, sendProblem } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { fingerprintOf, publicKeyOf } from './bag-signature.ts';
import { damageIn } from './damage.ts';
import { findGrantee } from './grantee.read.ts';
import { grantedPackets, listGrants } from './grants.read.ts';
import { grantPacket, revokeGrant } from './grants.ts';
import { noPacket } from './packet-row.ts';
import { listPackets } from './packets.read.ts';
import { readablePacket, readPacket, summaryFile, summaryIn, zipFile, zipTag } from './read-packets.ts';

const read = { permission: 'read packets' } as const;
const grant = { permission: 'grant packets' } as const;

/** Case packets: read in the own organisation, and by whom one of them was granted to. */
export const packetRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app, { services }) => {
  const { database, evidenceStore } = services;
  const asReader = async (request: FastifyRequest, id: string) =>
    (await asCaller(services, request, (context) => readablePacket(context, id))) ?? noPacket;
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
  app.get(
    addresses.packetSummary,
    {
      schema: { summary: 'The case to read and print, as one HTML file', params: byId },
      config: { ...read, sends: { says: 'The case as a page', mediaTypes: ['text/html'], inParts: true } },
    },
    async (request, reply) => {
      const readable = await asReader(request, request.params.id);
      if ('said' in readable) return sendProblem(request, reply, readable);
      const { orgId } = readable.row;
      const { open, ...shown } = summaryFile(readable);
      const fault = isUnchanged(request.headers['if-none-match'], shown.etag)
        ? null
        : await faultOfFile(evidenceStore, {
            orgId,
            sha256: summaryIn(readable.files).sha256,
            isPart: false,
          });
      if (fault !== null) return sendProblem(request, reply, fault);
      return sendFile(request, reply, {
        ...shown,
        disposition: 'inline',
        open: (range) => open(evidenceStore, range),
      });
    },
  );
  app.get(
    addresses.packetDownload,
    {
      schema: { summary: 'The whole packet: a BagIt bag in a zip', params: byId },
      config: { ...read, sends: { says: 'The bag', mediaTypes: ['application/zip'], inParts: true } },
    },
    async (request, reply) => {
      const readable = await asReader(request, request.params.id);
      if ('said' in readable) return sendProblem(request, reply, readable);
      const { row, files } = readable;
      const damage = isUnchanged(request.headers['if-none-match'], zipTag(files))
        ? []
        : await damageIn(evidenceStore, row.orgId, files);
      const { open, ...shown } = zipFile(readable, damage);
      return sendFile(request, reply, {
        ...shown,
        disposition: 'attachment',
        open: (range) => open(evidenceStore, range),
      });
    },
  );
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
  const signedWith = {
    publicKey: String(publicKeyOf(services.config.signingKey).content),
    fingerprint: fingerprintOf(services.config.signingKey),
  };
  app.get(
    addresses.signingKey,
    {
      schema: { summary: 'What this server signs packets with', response: { 200: signingKey } },
      config: { permission: 'public' },
    },
    async () => signedWith,
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
