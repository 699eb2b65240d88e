import type { FastifyReply, FastifyRequest } from 'fastify';
import { type Problem, type ProblemKind, problemKinds } from '../../shared/contract/problem.ts';

export type ProblemFacts = Omit<Problem, 'type' | 'title' | 'status' | 'detail' | 'instance'>;
/** A refusal that a user can cause, before it is put on the wire. */
export type Refused = {
  readonly ok: false;
  readonly kind: ProblemKind;
  readonly detail: string;
  readonly facts: ProblemFacts;
};

/** Says no: `kind` decides status and type, `detail` is for the person who asked. */
export function refused(kind: ProblemKind, detail: string, facts: ProblemFacts = {}): Refused {
  return { ok: false, kind, detail, facts };
}

/** The problem document of a refusal (RFC 9457). */
export function problemOf(refusal: Refused, instance?: string): Problem {
  const { status, title } = problemKinds[refusal.kind];
  return {
    type: `/problems/${refusal.kind}`,
    title,
    status,
    detail: refusal.detail,
    ...(instance === undefined ? {} : { instance }),
    ...refusal.facts,
  };
}

export function sendProblem(request: FastifyRequest, reply: FastifyReply, refusal: Refused): FastifyReply {
  const problem = problemOf(refusal, `urn:request:${request.id}`);
  if (refusal.facts.retryAfterS !== undefined)
    reply.header('retry-after', Math.ceil(refusal.facts.retryAfterS));
  if (problem.status === 401) reply.header('www-authenticate', 'Bearer');
  return reply
    .code(problem.status)
    .type('application/problem+json')
    .serializer((body: unknown) => JSON.stringify(body))
    .send(problem);
}
