import type { FastifyReply, FastifyRequest } from 'fastify';
import fastifyPlugin from 'fastify-plugin';
import type { LanguageTag } from '../../shared/contract/language-names.ts';
import type { TenantTransaction } from '../database/index.ts';
import type { Asked, ReplyTask } from '../heavy-work/index.ts';
import type { SpokenReply } from '../replies/spoken.ts';
import type { Services } from '../services.ts';
import { allowedActor, asCaller } from './as-caller.ts';
import { askedBy } from './asked.ts';
import { refusalOfConstraint } from './constraint-refusals.ts';
import type { Context } from './context.ts';
import { etagOf, isUnchanged } from './etag.ts';
import {
  claimKey,
  giveBackKey,
  idempotencyKey,
  type KeptReply,
  keepReply,
  requestHashes,
} from './idempotency.ts';
import { etagIn, languageOf, nameLanguage } from './language.ts';
import type { Done, Outcome } from './outcome.ts';
import { problemOf, problemType, type Refused, sendProblem } from './problem.ts';

type Work<Body> = (context: Context) => Promise<Outcome<Body>>;
type Written<Body> = {
  /** Stands for the body in the key's fingerprint where the body was a stream. */
  readonly content?: unknown;
  /**
   * Reads what a success answers with, which is then not kept: sent again, the request gets it as it is by now. For what
   * is large and grows.
   */
  readonly again?: Work<Body>;
};

declare module 'fastify' {
  interface FastifyReply {
    /**
     * Runs a query in the caller's tenant and sends its result with an ETag; 304 when the caller has it already.
     * The type is the body's, so that a route's description is checked against it; what comes back is the reply, sent.
     */
    fromRead<Body>(work: Work<Body>): Promise<Body>;
    /** The same with a task between: a worker thread makes the reply from what was read, once the transaction has ended. */
    fromTask<Input, Body>(read: Work<Input>, task: ReplyTask<Input, Body>): Promise<Body>;
    /** The same with whatever comes between, which is told who asks, in which language, and when they hang up. */
    fromReadAnd<Input, Body>(
      read: Work<Input>,
      goOn: (input: Input, asked: Asked, language: LanguageTag) => Promise<SpokenReply>,
    ): Promise<Body>;
    /**
     * Runs a use case in one transaction of the caller's tenant, once per Idempotency-Key, and sends its result.
     * A refusal leaves nothing behind but the kept reply.
     */
    fromWrite<Body>(work: Work<Body>, written?: Written<Body>): Promise<Body>;
  }
}

export const transactions = fastifyPlugin<{ services: Services }>(async (app, { services }) => {
  const { database, config } = services;

  app.decorateReply('fromRead', async function fromRead<Body>(this: FastifyReply, work: Work<Body>) {
    const outcome = await asCaller(services, this.request, work);
    if (!outcome.ok) return sendProblem(this.request, this, outcome);
    if (isKnown(this, etagOf(outcome.body))) return this.code(304).send();
    return this.code(outcome.status).send(outcome.body);
  });

  app.decorateReply('fromReadAnd', async function fromReadAnd<
    Input,
  >(this: FastifyReply, read: Work<Input>, goOn: (input: Input, asked: Asked, language: LanguageTag) => Promise<SpokenReply>) {
    const { request } = this;
    const outcome = await asCaller(services, request, read);
    if (!outcome.ok) return sendProblem(request, this, outcome);
    const { text, etag } = await goOn(outcome.body, askedBy(this), languageOf(request).tag);
    if (isKnown(this, etag)) return this.code(304).send();
    return this.code(200).type('application/json; charset=utf-8').send(text);
  });

  app.decorateReply('fromTask', async function fromTask<
    Input,
    Body,
  >(this: FastifyReply, read: Work<Input>, task: ReplyTask<Input, Body>) {
    return this.fromReadAnd(read, (input, asked, language) =>
      services.heavyWork.compute(task, { input, language }, asked),
    );
  });

  app.decorateReply('fromWrite', async function fromWrite<
    Body,
  >(this: FastifyReply, work: Work<Body>, { content = this.request.body, again }: Written<Body> = {}) {
    const { request } = this;
    const key = idempotencyKey(request);
    if (typeof key !== 'string') return sendProblem(request, this, key);
    const { org: orgId, sub: memberId } = request.user;
    const own = { orgId, memberId, key };
    const hashes = requestHashes(config.tokenSecrets, request, content ?? null);
    const result = await database.inTenant({ orgId, memberId }, async (tx): Promise<Refused | Answer> => {
      // Together, since a server answers them in one go; only a request that may be made keeps its key.
      const [actor, kept] = await Promise.all([
        allowedActor(tx, request, services),
        claimKey(tx, own, hashes),
      ]);
      if ('ok' in actor) {
        await giveBackKey(tx, own);
        return actor;
      }
      const context = { tx, actor, services, language: languageOf(request).tag };
      if (kept !== null) return 'ok' in kept ? kept : replay(context, kept, again);
      const outcome = await undoneOnRefusal(tx, () => work(context));
      const reply = replyOf(request, outcome);
      await keepReply(tx, own, outcome.ok && again !== undefined ? { ...reply, body: null } : reply);
      return { ...reply, replayed: false };
    });
    return 'ok' in result ? sendProblem(request, this, result) : sendKept(request, this, result);
  });
});

type Answer = KeptReply & { readonly replayed: boolean };

/** What a kept reply is now: as it was, or where its body was not kept, as that is by now. */
async function replay<Body>(
  context: Context,
  kept: KeptReply,
  again: Work<Body> | undefined,
): Promise<Refused | Answer> {
  if (again === undefined || kept.body !== null) return { ...kept, replayed: true };
  const outcome = await again(context);
  if (!outcome.ok) return outcome;
  const body: unknown = JSON.parse(JSON.stringify(outcome.body));
  return { ...kept, headers: { ...kept.headers, etag: etagOf(body) }, body, replayed: true };
}

/** Names a body's ETag, and whether the caller has it already. */
function isKnown(reply: FastifyReply, bodyTag: string): boolean {
  const { request } = reply;
  const etag = etagIn(bodyTag, nameLanguage(request, reply));
  reply.header('etag', etag).header('cache-control', 'private, no-cache');
  return isUnchanged(request.headers['if-none-match'], etag);
}

/** A savepoint, so that a refusal (or a row that somebody else was faster to write) undoes all the work did. */
async function undoneOnRefusal<Body>(
  tx: TenantTransaction,
  work: () => Promise<Outcome<Body>>,
): Promise<Outcome<Body>> {
  // Goes out with what work asks first; where it fails, all that follows does.
  const saved = tx.sql`savepoint work`;
  saved.catch(() => undefined);
  const outcome = await work().catch((error: unknown): Refused => {
    const refusal = refusalOfConstraint(error);
    if (refusal === null) throw error;
    return refusal;
  });
  if (!outcome.ok) await tx.$executeRaw`rollback to savepoint work`;
  return outcome;
}

function replyOf(request: FastifyRequest, outcome: Outcome<unknown>): KeptReply {
  if (!outcome.ok) {
    const problem = problemOf(outcome, `urn:request:${request.id}`);
    return { status: problem.status, headers: { 'content-type': problemType }, body: problem };
  }
  return {
    status: outcome.status,
    headers: headersOf(outcome),
    body: JSON.parse(JSON.stringify(outcome.body)),
  };
}

const headersOf = (done: Done<unknown>): Record<string, string> => ({
  etag: etagOf(done.body),
  ...(done.location === undefined ? {} : { location: done.location }),
});

/**
 * What is kept has no language; it goes out in the one that is asked for now. What was kept before goes out in the form
 * that it was kept in, which may be an earlier version's.
 */
function sendKept(
  request: FastifyRequest,
  reply: FastifyReply,
  kept: KeptReply & { replayed: boolean },
): FastifyReply {
  if (kept.replayed) reply.header('idempotency-replayed', 'true');
  reply.code(kept.status).headers(kept.headers);
  if (kept.headers.etag !== undefined) reply.header('etag', etagIn(kept.headers.etag, languageOf(request)));
  if (kept.status >= 400 || kept.replayed) {
    if (!reply.hasHeader('content-type')) reply.type('application/json; charset=utf-8');
    reply.serializer((body: unknown) => JSON.stringify(body));
  }
  return reply.send(kept.body);
}
