import { randomUUID } from 'node:crypto';
import { PassThrough } from 'node:stream';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { addresses } from '../../../shared/contract/addresses.ts';
import type { News } from '../../../shared/contract/news.ts';
import { asCaller } from '../../http/as-caller.ts';
import { type AccessClaims, found, sendProblem } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { NewsHub } from './hub.ts';

/** Assumed: more tabs and devices than one person uses at a time; the oldest stream makes room. */
const streamsPerMember = 12;
/** Assumed: a reader that is this far behind, in bytes, is not reading any more. */
const longestBacklog = 256 * 1024;

/**
 * Live changes as server-sent events (HTML Living Standard, section 9.2), asked for with the token in the
 * Authorization header like everything else. A stream that starts anew where another was (`Last-Event-ID`) first
 * says `resync`: what happened in between is not kept. It ends when its token does.
 */
export const liveRoutes: FastifyPluginAsyncZod<{ services: Services }> = async (app, { services }) => {
  const hub = new NewsHub();
  const { quotas } = app;
  quotas.measureBy('eventStreams', (orgId) => hub.streamsOf(orgId));
  app.addHook('onReady', () => hub.open(services.database));
  // Before the server waits for running requests to end, which these would not.
  app.addHook('preClose', async () => hub.endAll());
  app.addHook('onClose', () => hub.close());

  app.get(
    addresses.events,
    {
      schema: { summary: 'What changes from now on, as server-sent events (`change`, `resync`)' },
      config: {
        permission: 'follow changes',
        sends: { says: 'The stream, which ends with the token', mediaTypes: ['text/event-stream'] },
      },
    },
    async (request, reply) => {
      const allowed = await asCaller(services, request, async ({ actor, tx }) => {
        const refusal = await quotas.refusalOf('eventStreams', 1, { orgId: actor.orgId, tx });
        return refusal ?? found(actor);
      });
      if (!allowed.ok) return sendProblem(request, reply, allowed);
      const { memberId, role } = allowed.body;
      if (hub.countOf(memberId) >= streamsPerMember) hub.endOldestOf(memberId);
      const claims = { ...request.user, role };
      const stream = new EventStream(claims, services.config.heartbeatS * 1000);
      const leave = hub.add(stream);
      stream.body.once('close', leave);
      if (request.headers['last-event-id'] !== undefined) stream.resync();
      reply
        .type('text/event-stream; charset=utf-8')
        .header('cache-control', 'no-store')
        // Proxies that would hold a reply back until it is whole.
        .header('x-accel-buffering', 'no');
      return reply.send(stream.body);
    },
  );
};

class EventStream {
  readonly body = new PassThrough();
  readonly claims: AccessClaims;
  readonly #id = randomUUID();
  #count = 0;

  constructor(claims: AccessClaims & { exp?: number }, heartbeatMs: number) {
    this.claims = claims;
    const beat = setInterval(() => this.#write(': still here\n\n'), heartbeatMs);
    const expiry = setTimeout(() => this.end(), (claims.exp ?? 0) * 1000 - Date.now());
    this.body.once('close', () => {
      clearInterval(beat);
      clearTimeout(expiry);
    });
    // Sent at once, so that the reader has the reply's head and a number to come back with.
    this.#send('open', {});
  }

  change(changed: News): void {
    this.#send('change', changed);
  }

  resync(): void {
    this.#send('resync', {});
  }

  end(): void {
    this.body.end();
  }

  #send(event: string, data: object): void {
    this.#count += 1;
    this.#write(`id: ${this.#id}.${this.#count}\nevent: ${event}\ndata: ${JSON.stringify(data)}\n\n`);
  }

  #write(text: string): void {
    if (this.body.writableEnded || this.body.destroyed) return;
    this.body.write(text);
    if (this.body.writableLength > longestBacklog) this.body.destroy();
  }
}
