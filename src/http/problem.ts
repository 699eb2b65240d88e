import type { FastifyReply, FastifyRequest } from 'fastify';
import { type Problem, type ProblemKind, problemStatuses } from '../../shared/contract/problem.ts';
import { typeOfKind } from '../../shared/contract/problem-type.ts';
import type { Message } from '../../shared/message/index.ts';

export type ProblemFacts = Omit<Problem, 'type' | 'title' | 'status' | 'detail' | 'said' | 'instance'>;
/** A refusal that a user can cause, before it is put on the wire. */
export type Refused = {
  readonly ok: false;
  readonly kind: ProblemKind;
  readonly said: Message;
  readonly facts: ProblemFacts;
};

/** Says no: `kind` decides status and type, `said` is for the person who asked. */
export function refused(kind: ProblemKind, said: Message, facts: ProblemFacts = {}): Refused {
  return { ok: false, kind, said, facts };
}

/** The problem document of a refusal (RFC 9457) as it may be kept: without a language. */
export function problemOf({ kind, said, facts }: Refused, instance?: string): Problem {
  return {
    type: typeOfKind(kind),
    status: problemStatuses[kind],
    said,
    ...(instance === undefined ? {} : { instance }),
    ...facts,
  };
}

export const problemType = 'application/problem+json';

/** Sends why not; it is put into words on its way out. */
export function sendProblem(request: FastifyRequest, reply: FastifyReply, refusal: Refused): FastifyReply {
  const problem = problemOf(refusal, `urn:request:${request.id}`);
  if (refusal.facts.retryAfterS !== undefined)
    reply.header('retry-after', Math.ceil(refusal.facts.retryAfterS));
  if (problem.status === 401) reply.header('www-authenticate', 'Bearer');
  return reply
    .code(problem.status)
    .type(problemType)
    .serializer((body: unknown) => JSON.stringify(body))
    .send(problem);
}
