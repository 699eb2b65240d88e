import type { FastifyReply } from 'fastify';
import type { Asked } from '../heavy-work/index.ts';

/** Who asks for heavy work by a request, and a signal that is aborted once they hang up. */
export function askedBy(reply: FastifyReply): Asked {
  const { request } = reply;
  const hangUp = new AbortController();
  reply.raw.once('close', () => hangUp.abort());
  return { orgId: request.user.org, memberId: request.user.sub, signal: hangUp.signal };
}
