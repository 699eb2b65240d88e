import { join } from 'node:path';
import { Metadata } from '@tus/server';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import { byId, id as idForm } from '../../../shared/contract/primitives.ts';
import { message } from '../../../shared/message/index.ts';
import { asCaller } from '../../http/as-caller.ts';
import { type Quotas, type Refused, refused, type Sends, sendProblem } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { readAbout, readFileName } from './about-file.ts';
import { refusalOfFile } from './add-evidence.ts';
import { finisherOf } from './finish-upload.ts';
import { evidenceHeader, uploadServer } from './upload-server.ts';
import { type UploadNotes, UploadStore } from './upload-store.ts';

/** How often abandoned uploads are looked for. */
const sweepEveryMs = 3600 * 1000;
const mayAdd = { permission: 'add evidence' } as const;

const progress = { 'upload-offset': 'Bytes that are here', [evidenceHeader]: 'The evidence that it became' };
const goingOn: Record<'PATCH' | 'HEAD' | 'DELETE', Sends & { summary: string }> = {
  PATCH: {
    summary: 'Go on with an upload (tus 1.0)',
    says: 'As far as it is now',
    status: 204,
    headers: progress,
  },
  HEAD: { summary: 'How far an upload is (tus 1.0)', says: 'As far as it is', headers: progress },
  DELETE: { summary: 'Give an upload up (tus 1.0)', says: 'It is gone', status: 204 },
};

/**
 * Uploads that resume, by the tus protocol 1.0 (creation, creation with upload, deferred length, expiration,
 * termination). `Upload-Metadata` carries `ticketId`, `about` (JSON, as in the form) and `filename`. The reply that
 * finishes an upload names the evidence in `Evidence-Id`; so does every HEAD from then on.
 */
export const uploadRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app, { services }) => {
  const uploads = new UploadStore(join(services.evidenceStore.stagingFolder, 'uploads'));
  const finish = finisherOf(services, uploads);
  const server = uploadServer(services, uploads, finish);
  app.removeAllContentTypeParsers();
  app.addContentTypeParser('*', (_request, _body, done) => done(null));
  app.addHook('preClose', async () => server.breakOff());
  sweepHourly(app, uploads, services);
  const { quotas } = app;
  quotas.measureBy('openUploads', (orgId) => uploads.openOf(orgId));

  app.post(
    addresses.uploads,
    {
      schema: { summary: 'Begin an upload that can resume (tus 1.0)' },
      config: {
        ...mayAdd,
        sends: { says: 'It is begun', status: 201, headers: { location: 'Where it goes on' } },
      },
    },
    async (request, reply) => {
      const notes = await notesOf(request, { services, quotas });
      return 'ok' in notes ? sendProblem(request, reply, notes) : server.pass(request, reply, notes);
    },
  );
  for (const [method, { summary, ...sends }] of Object.entries(goingOn))
    app.route({
      method,
      url: addresses.upload,
      schema: { summary, params: byId },
      // Its package leaves a HEAD out otherwise, since most are those of a GET.
      config: { ...mayAdd, sends, swagger: { exposeHeadRoute: true } },
      handler: async (request, reply) => {
        const { id } = request.params;
        const notes = await uploads.notesOf(id);
        if (notes === null || notes.organisation !== request.user.org || notes.member !== request.user.sub) {
          return sendProblem(request, reply, refused('not-found', message('noSuchUpload')));
        }
        // The protocol's library ends none that is whole; one that was refused may go.
        if (request.method === 'DELETE' && (await uploads.isWhole(id).catch(() => false))) {
          await uploads.remove(id);
          return reply.code(204).header('tus-resumable', '1.0.0').send();
        }
        if (request.method === 'HEAD' && (await uploads.isWhole(id).catch(() => false))) {
          const outcome = await finish(request, id);
          if (!outcome.ok) return sendProblem(request, reply, outcome);
        }
        const evidence = (await uploads.notesOf(id))?.evidence;
        if (evidence !== undefined) reply.header(evidenceHeader, evidence);
        return server.pass(request, reply, null);
      },
    });
  app.options(
    addresses.uploads,
    {
      schema: { summary: 'What the upload protocol can do here' },
      config: {
        permission: 'public',
        sends: { says: 'Its versions and extensions, in headers', status: 204 },
      },
    },
    (request, reply) => server.pass(request, reply, null),
  );
};

function sweepHourly(app: FastifyInstance, uploads: UploadStore, services: Services): void {
  const sweep = setInterval(() => {
    uploads
      .removeAbandoned(services.now())
      .catch((error: unknown) => app.log.error({ err: error }, 'abandoned uploads were not removed'));
  }, sweepEveryMs);
  sweep.unref();
  app.addHook('onClose', async () => clearInterval(sweep));
}

/** What is noted beside a new upload, or why there will be none. */
async function notesOf(
  request: FastifyRequest,
  { services, quotas }: { readonly services: Services; readonly quotas: Quotas },
): Promise<UploadNotes | Refused> {
  const sizeBytes = Number(request.headers['upload-length'] ?? 0) || 0;
  const metadata = metadataOf(request.headers['upload-metadata']);
  const read = readAbout(metadata.about, 'Upload-Metadata/about');
  if (!read.ok) return read;
  const ticketId = idForm.safeParse(metadata.ticketId);
  if (!ticketId.success) {
    return refused('invalid-input', message('uploadWithoutTicket'), {
      errors: [{ pointer: 'Upload-Metadata/ticketId', ...message('fieldNotId') }],
    });
  }
  const refusal = await asCaller(services, request, async (context) => {
    const tenant = { orgId: context.actor.orgId, tx: context.tx };
    return (
      (await quotas.refusalOf('openUploads', 1, tenant)) ??
      (await quotas.refusalOf('storedBytes', sizeBytes, tenant)) ??
      refusalOfFile(context, ticketId.data, read.about)
    );
  });
  if (refusal !== null) return refusal;
  return {
    ticketId: ticketId.data,
    about: JSON.stringify(read.about),
    filename: readFileName(metadata.filename) ?? '',
    organisation: request.user.org,
    member: request.user.sub,
  };
}

function metadataOf(header: string | string[] | undefined): Record<string, string | null> {
  try {
    return typeof header === 'string' ? Metadata.parse(header) : {};
  } catch {
    return {};
  }
}
