import type { FastifyPluginAsync, FastifyReply, FastifyRequest } from 'fastify';
import Negotiator from 'negotiator';
import { referencePage } from './page.ts';
import { referenceOf } from './reference.ts';

const policy =
  "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/** `/reference`: what the server takes from whom, as a page or, where that is asked for, as JSON. */
export const referenceRoutes: FastifyPluginAsync = async (app) => {
  const answer = async (request: FastifyRequest, reply: FastifyReply): Promise<FastifyReply> => {
    const wanted = new Negotiator({ headers: request.headers }).mediaType(['text/html', 'application/json']);
    const reference = referenceOf(app);
    reply.header('vary', 'accept').header('content-language', 'en');
    // As text: nothing in it is a message to be put into the reader's language.
    if (wanted === 'application/json') return reply.type(wanted).send(JSON.stringify(reference));
    return reply
      .header('content-security-policy', policy)
      .type('text/html; charset=utf-8')
      .send(referencePage(reference));
  };
  for (const address of ['/reference', '/reference/'])
    app.get(address, { schema: { hide: true }, config: { permission: 'public' } }, answer);
};
