import { AsyncLocalStorage } from 'node:async_hooks';
import { STATUS_CODES } from 'node:http';
import { Server } from '@tus/server';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { problemOf, type Refused, refusalOfUnreadable } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import type { Finish } from './finish-upload.ts';
import type { UploadNotes, UploadStore } from './upload-store.ts';

export const evidenceHeader = 'evidence-id';

/** The protocol's own refusals as problems (RFC 9457; `about:blank` means no more than the status says). */
class ProblemServer extends Server {
  override write(
    ...[context, headers, status, body = '']: Parameters<Server['write']>
  ): ReturnType<Server['write']> {
    if (status < 400) return super.write(context, headers, status, body);
    headers.set('content-type', 'application/problem+json');
    const problem = { type: 'about:blank', title: STATUS_CODES[status] ?? '', status, detail: body.trim() };
    return super.write(context, headers, status, JSON.stringify(problem));
  }
}

type Caller = { readonly request: FastifyRequest; readonly notes: UploadNotes | null };

export type UploadServer = {
  /** Hands a request to the protocol; `notes` are kept beside the upload that it begins. The reply is sent there. */
  pass(request: FastifyRequest, reply: FastifyReply, notes: UploadNotes | null): Promise<void>;
  /** Breaks off what is under way, since all of it can resume. */
  breakOff(): void;
};

/** The tus protocol over a store, asking `finish` for the evidence of every whole upload. */
export function uploadServer(services: Services, uploads: UploadStore, finish: Finish): UploadServer {
  const callers = new AsyncLocalStorage<Caller>();
  const underWay = new Set<FastifyRequest>();
  const tus = new ProblemServer({
    path: '/uploads',
    datastore: uploads,
    maxSize: services.config.maxUploadBytes,
    relativeLocation: true,
    allowedOrigins: () => false,
    exposedHeaders: [evidenceHeader],
    disableTerminationForFinishedUploads: true,
    namingFunction: () => services.newId(),
    onUploadCreate: async () => ({ metadata: { ...callers.getStore()?.notes } }),
    onUploadFinish: async (_request, upload) => {
      const caller = callers.getStore();
      if (caller === undefined) throw new Error('an upload was finished outside a request');
      return replyOf(caller.request, await finish(caller.request, upload.id));
    },
    onResponseError: (_request, error) => {
      if ('status_code' in error) return undefined;
      const request = callers.getStore()?.request;
      const unreadable = refusalOfUnreadable(error);
      if (unreadable !== null && request !== undefined) return refusalReply(request, unreadable);
      request?.log.error({ err: error }, 'an upload failed');
      return { status_code: 500, body: `Quote request ${request?.id} to whoever runs this server.` };
    },
  });
  return {
    pass: async (request, reply, notes) => {
      for (const [name, value] of Object.entries(reply.getHeaders())) {
        if (value !== undefined) reply.raw.setHeader(name, value);
      }
      reply.hijack();
      underWay.add(request);
      try {
        await callers.run({ request, notes }, () => tus.handle(request.raw, reply.raw));
      } catch (error) {
        request.log.error({ err: error }, 'an upload failed');
        if (!reply.raw.headersSent) reply.raw.writeHead(500);
        reply.raw.end();
      } finally {
        underWay.delete(request);
      }
    },
    breakOff: () => {
      for (const request of underWay) request.raw.destroy();
    },
  };
}

function replyOf(request: FastifyRequest, outcome: Awaited<ReturnType<Finish>>) {
  if (outcome.ok) return { headers: { [evidenceHeader]: outcome.body.id } };
  return refusalReply(request, outcome);
}

function refusalReply(request: FastifyRequest, refusal: Refused) {
  const problem = problemOf(refusal, `urn:request:${request.id}`);
  const headers = { 'content-type': 'application/problem+json' };
  return { status_code: problem.status, headers, body: JSON.stringify(problem) };
}
