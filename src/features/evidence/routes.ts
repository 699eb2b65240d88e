import multipart from '@fastify/multipart';
import type { FastifyReply } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import {
  evidenceItem,
  evidenceQuery,
  recordReading,
  withdrawEvidence as withdrawForm,
} from '../../../shared/contract/evidence.ts';
import { byId, pageOf } from '../../../shared/contract/primitives.ts';
import { asCaller } from '../../http/as-caller.ts';
import { faultOfFile } from '../../http/file-fault.ts';
import { sendFile } from '../../http/file-reply.ts';
import { askedBy, isUnchanged, sendProblem } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { storedBytes } from '../evidence-record/index.ts';
import { addFile, addReading } from './add-evidence.ts';
import { formLimits, readForm } from './form.ts';
import { listEvidence } from './list-evidence.read.ts';
import { logWordsFor } from './log-words.ts';
import { discardPrepared, prepareFile } from './prepare-file.ts';
import { evidenceFile, readEvidence } from './read-evidence.ts';
import { uploadRoutes } from './uploads.ts';
import { withdrawEvidence } from './withdraw.ts';

const read = { permission: 'read evidence' } as const;
const add = { permission: 'add evidence' } as const;

/** Evidence: files by form or by resumable upload, readings, and what was withdrawn of them. */
export const evidenceRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app, { services }) => {
  app.quotas.measureBy('storedBytes', storedBytes);
  await app.register(multipart, { limits: formLimits });
  await app.register(uploadRoutes, { services });

  app.post(
    addresses.ticketEvidence,
    {
      schema: {
        summary: 'Add a file of up to 25 MiB as multipart/form-data: `about` (JSON) and `file`',
        consumes: ['multipart/form-data'],
        params: byId,
        response: { 201: evidenceItem },
      },
      config: add,
    },
    (request, reply) => addByForm(services, reply, request.params.id),
  );
  app.post(
    addresses.readings,
    {
      schema: {
        summary: 'Add a reading without a file: a firmware level, settings, a note',
        params: byId,
        body: recordReading,
        response: { 201: evidenceItem },
      },
      config: add,
    },
    (request, reply) => reply.fromWrite((context) => addReading(context, request.params.id, request.body)),
  );
  app.get(
    addresses.ticketEvidence,
    {
      schema: {
        summary: "A ticket's evidence, newest first, withdrawn items too",
        params: byId,
        querystring: evidenceQuery,
        response: { 200: pageOf(evidenceItem) },
      },
      config: read,
    },
    (request, reply) => reply.fromRead((context) => listEvidence(context, request.params.id, request.query)),
  );
  app.get(
    addresses.evidence,
    {
      schema: { summary: 'One item of evidence', params: byId, response: { 200: evidenceItem } },
      config: read,
    },
    (request, reply) => reply.fromRead((context) => readEvidence(context, request.params.id)),
  );
  for (const which of ['content', 'thumbnail'] as const) {
    app.get(
      files[which].address,
      {
        schema: { summary: files[which].says, params: byId },
        config: {
          ...read,
          sends: { says: files[which].says, mediaTypes: files[which].mediaTypes, inParts: true },
        },
      },
      async (request, reply) => {
        const file = await asCaller(services, request, (context) =>
          evidenceFile(context, request.params.id, which),
        );
        if (!file.ok) return sendProblem(request, reply, file);
        const { orgId, sha256, ...shown } = file.body;
        const etag = `"${sha256}"`;
        // Who has it already is not sent it again.
        const fault = isUnchanged(request.headers['if-none-match'], etag)
          ? null
          : await faultOfFile(services.evidenceStore, {
              orgId,
              sha256,
              isPart: request.headers.range !== undefined,
            });
        if (fault !== null) return sendProblem(request, reply, fault);
        return sendFile(request, reply, {
          ...shown,
          etag,
          disposition: 'attachment',
          open: (range) => services.evidenceStore.get(orgId, sha256, range ?? undefined),
        });
      },
    );
  }
  app.post(
    addresses.withdrawEvidence,
    {
      schema: {
        summary: 'Withdraw an item: it no longer counts, entry, file and reason stay',
        params: byId,
        body: withdrawForm,
        response: { 200: evidenceItem },
      },
      config: { permission: 'withdraw evidence' },
    },
    (request, reply) =>
      reply.fromWrite((context) => withdrawEvidence(context, request.params.id, request.body.reason)),
  );
};

const files = {
  content: {
    address: addresses.evidenceContent,
    says: 'The file of an item, as an attachment; in parts with Range',
    mediaTypes: ['*/*'],
  },
  thumbnail: {
    address: addresses.evidenceThumbnail,
    says: 'A small picture of a photo',
    mediaTypes: ['image/*'],
  },
};

async function addByForm(services: Services, reply: FastifyReply, ticketId: string) {
  const { evidenceStore } = services;
  const { request } = reply;
  const { quotas } = reply.server;
  const form = await readForm(request, evidenceStore);
  if (!form.ok) return sendProblem(request, reply, form);
  const { about, fileName, file } = form;
  try {
    const words = await logWordsFor(services, request, about);
    if (!words.ok) return sendProblem(request, reply, words);
    const { heavyWork } = services;
    const reader = { heavyWork, asked: askedBy(reply), rows: words.rows };
    const prepared = await prepareFile(evidenceStore, file, { ...reader, about });
    if (!prepared.ok) return sendProblem(request, reply, prepared);
    try {
      return await reply.fromWrite(
        async (context) =>
          (await quotas.refusalOf('storedBytes', file.sizeBytes, {
            orgId: context.actor.orgId,
            tx: context.tx,
          })) ?? addFile(context, { id: services.newId(), ticketId, about, fileName, prepared }),
        { content: { about, fileName, sha256: file.sha256 } },
      );
    } finally {
      await discardPrepared(evidenceStore, prepared);
    }
  } finally {
    await evidenceStore.discard(file);
  }
}
