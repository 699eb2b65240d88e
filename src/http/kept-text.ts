import { createHash } from 'node:crypto';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import type { FastifyReply, FastifyRequest } from 'fastify';
import Negotiator from 'negotiator';
import { isUnchanged } from './etag.ts';

type Kept = { readonly text: string; readonly zipped: Buffer; readonly tag: string };

/** Assumed: soon enough for who develops against it, and a day's worth of asking is one answer. */
const maxAgeS = 3600;

/**
 * A reply for everybody that stays the same while the program runs: made once, compressed once (RFC 1952), and sent anew only
 * to whom does not have it yet. Each coding has a tag of its own (RFC 9110, section 8.8.3.3).
 */
export function keptText(
  make: () => string,
): (request: FastifyRequest, reply: FastifyReply) => Promise<FastifyReply> {
  let kept: Promise<Kept> | null = null;
  return async (request, reply) => {
    kept ??= keep(make());
    const { text, zipped, tag } = await kept;
    const isZipped = new Negotiator(request.raw).encoding(['gzip', 'identity']) === 'gzip';
    const etag = isZipped ? `"${tag}-gzip"` : `"${tag}"`;
    reply
      .header('etag', etag)
      .header('vary', 'accept-encoding')
      .header('cache-control', `public, max-age=${maxAgeS}`);
    if (isUnchanged(request.headers['if-none-match'], etag)) return reply.code(304).send();
    if (!isZipped) return reply.send(text);
    return reply.header('content-encoding', 'gzip').send(zipped);
  };
}

async function keep(text: string): Promise<Kept> {
  const tag = createHash('sha256').update(text).digest('base64url').slice(0, 27);
  return { text, tag, zipped: await promisify(gzip)(text) };
}
