import { AsyncLocalStorage } from 'node:async_hooks';
import { Server } from '@tus/server';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { addresses } from '../../../shared/contract/addresses.ts';
import { type Problem, problemStatuses } from '../../../shared/contract/problem.ts';
import { message } from '../../../shared/message/index.ts';
import {
  languageOf,
  problemInWords,
  problemOf,
  problemType,
  type Refused,
  refusalOfHeavyWork,
  refusalOfUnreadable,
  refused,
} from '../../http/index.ts';
import type { Services } from '../../services.ts';
import type { Finish } from './finish-upload.ts';
import type { UploadNotes, UploadStore } from './upload-store.ts';

export const evidenceHeader = 'evidence-id';

type Caller = {
  readonly request: FastifyRequest;
  readonly notes: UploadNotes | null;
  /** Why we refuse, where it is not the protocol that does. */
  refusal: Refused | null;
};
const callers = new AsyncLocalStorage<Caller>();
function caller(): Caller {
  const here = callers.getStore();
  if (here === undefined) throw new Error('the upload protocol was used outside a request');
  return here;
}

/** Every refusal of the protocol as a problem (RFC 9457). */
class ProblemServer extends Server {
  override write(
    ...[context, headers, status, body = '']: Parameters<Server['write']>
  ): ReturnType<Server['write']> {
    if (status < 400) return super.write(context, headers, status, body);
    const { request, refusal } = caller();
    const reply = problemReply(
      request,
      refusal === null ? protocolProblem(status, body) : problemOf(refusal),
    );
    for (const [name, value] of Object.entries(reply.headers)) headers.set(name, value);
    return super.write(context, headers, status, reply.body);
  }
}

/** `about:blank` means no more than the status says (RFC 9457, section 4.2.1). */
const protocolProblem = (status: number, body: string): Problem => ({
  type: 'about:blank',
  status,
  said: message('uploadRefused', { reason: body.trim() }),
});

export type UploadServer = {
  /** Hands a request to the protocol; `notes` are kept beside the upload that it begins. The reply is sent there. */
  pass(request: FastifyRequest, reply: FastifyReply, notes: UploadNotes | null): Promise<void>;
  /** Breaks off what is under way, since all of it can resume. */
  breakOff(): void;
};

/** The tus protocol over a store, asking `finish` for the evidence of every whole upload. */
export function uploadServer(services: Services, uploads: UploadStore, finish: Finish): UploadServer {
  const underWay = new Set<FastifyRequest>();
  const tus = new ProblemServer({
    path: addresses.uploads,
    datastore: uploads,
    maxSize: services.config.maxUploadBytes,
    relativeLocation: true,
    allowedOrigins: () => false,
    exposedHeaders: [evidenceHeader],
    disableTerminationForFinishedUploads: true,
    namingFunction: () => services.newId(),
    onUploadCreate: async () => ({ metadata: { ...caller().notes } }),
    onUploadFinish: async (_request, upload) => {
      const { request } = caller();
      const outcome = await finish(request, upload.id);
      if (outcome.ok) return { headers: { [evidenceHeader]: outcome.body.id } };
      return problemReply(request, problemOf(outcome));
    },
    onResponseError: (_request, error) => {
      if ('status_code' in error) return undefined;
      const here = caller();
      here.refusal = refusalOfUnreadable(error) ?? refusalOfHeavyWork(error);
      if (here.refusal === null) {
        here.request.log.error({ err: error }, 'an upload failed');
        here.refusal = refused('internal-error', message('requestFailed', { request: here.request.id }));
      }
      return { status_code: problemStatuses[here.refusal.kind], body: '' };
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
        await callers.run({ request, notes, refusal: null }, () => tus.handle(request.raw, reply.raw));
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

/** A problem in the language that was asked for, as the protocol's library sends a reply. */
function problemReply(request: FastifyRequest, problem: Problem) {
  const language = languageOf(request);
  const instance = `urn:request:${request.id}`;
  return {
    status_code: problem.status,
    headers: {
      'content-type': problemType,
      'content-language': language.tag,
      vary: 'accept-language',
      ...(problem.retryAfterS === undefined ? {} : { 'retry-after': String(Math.ceil(problem.retryAfterS)) }),
    },
    body: JSON.stringify(problemInWords({ ...problem, instance }, language)),
  };
}
