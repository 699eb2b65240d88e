import type { FastifyReply, FastifyRequest } from 'fastify';
import { type Refused, sendProblem } from '../../http/index.ts';

/** Sends what nobody on the way may keep, such as tokens, or why there is none. */
export const sendUnkept = <Body extends object>(
  request: FastifyRequest,
  reply: FastifyReply,
  result: Body | Refused,
) =>
  'ok' in result
    ? sendProblem(request, reply, result as Refused)
    : reply.header('cache-control', 'no-store').send(result);
