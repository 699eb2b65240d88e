import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { message } from '../../shared/message/index.ts';
import { ContendedError } from '../database/index.ts';
import { refusalOfHeavyWork } from './heavy-work.ts';
import { languageOf, problemInWords } from './language.ts';
import { methodsByAddress } from './methods.ts';
import { problemOf, problemType, type Refused, refused, sendProblem } from './problem.ts';
import { refusalOfUnreadable } from './unreadable-data.ts';
import { invalidInput, MisfitError } from './validation.ts';

const byFrameworkCode: Record<string, (error: FastifyError) => Refused> = {
  FST_ERR_CTP_BODY_TOO_LARGE: () => refused('too-large', message('requestTooLarge')),
  FST_ERR_CTP_INVALID_MEDIA_TYPE: () => refused('type-not-allowed', message('sendAsJson')),
  FST_REQ_FILE_TOO_LARGE: () => refused('too-large', message('fileTooLargeForOneRequest')),
  FST_INVALID_MULTIPART_CONTENT_TYPE: () => refused('type-not-allowed', message('sendAsForm')),
  // BusyError: no connection in time, or a transaction that took too long.
  DATABASE_BUSY: () => refused('server-busy', message('tryAgainSoon'), { retryAfterS: 2 }),
  FST_ERR_RATE_LIMIT: () => refused('too-many-requests', message('requestsTooMany')),
};

/** Turns whatever a route throws into a problem; only our own faults become a 5xx, and those say nothing of the inside. */
export function installErrorHandling(app: FastifyInstance): void {
  const methodsAt = methodsByAddress(app);
  app.setErrorHandler((error: FastifyError, request, reply) =>
    sendProblem(request, reply, problemFor(error, request)),
  );
  app.setNotFoundHandler((request, reply) => {
    const path = pathOf(request);
    const methods = methodsAt(path);
    if (methods.length === 0)
      return sendProblem(request, reply, refused('not-found', message('nothingAtAddress', { path })));
    reply.header('allow', methods.join(', '));
    const said = message('methodNotTaken', { path, taken: methods, method: request.method });
    return sendProblem(request, reply, refused('method-not-allowed', said));
  });
}

/** Answers an address that the router can't read, which reaches no hook of ours: in words, and with what every reply has. */
export function answerUnreadableAddress(
  error: FastifyError,
  request: FastifyRequest,
  reply: FastifyReply,
): FastifyReply {
  const refusal =
    error.code === 'FST_ERR_MAX_PARAM_LENGTH'
      ? refused('not-found', message('nothingAtAddress', { path: pathOf(request) }))
      : refused('malformed-request', message('requestUnreadable', { reason: error.message }));
  const language = languageOf(request);
  const problem = problemInWords(problemOf(refusal, `urn:request:${request.id}`), language);
  return reply
    .code(problem.status)
    .headers({
      'x-request-id': request.id,
      'x-content-type-options': 'nosniff',
      'content-language': language.tag,
      vary: 'accept-language',
    })
    .type(problemType)
    .serializer((body: unknown) => JSON.stringify(body))
    .send(problem);
}

function problemFor(error: FastifyError, request: FastifyRequest): Refused {
  if (error instanceof MisfitError) return invalidInput(error.faults, error.validationContext);
  const unreadable = refusalOfUnreadable(error);
  if (unreadable !== null) {
    request.log.warn({ err: error }, 'a request met data that cannot be read');
    return unreadable;
  }
  if (error instanceof ContendedError)
    return refused('server-busy', message('tryAgainSoon'), { retryAfterS: 1 });
  const undone = refusalOfHeavyWork(error);
  if (undone !== null) {
    request.log.warn({ err: error }, 'what a request asked for was not worked out');
    return undone;
  }
  const known = byFrameworkCode[error.code];
  if (known !== undefined) return known(error);
  const status = error.statusCode ?? 500;
  if (status === 429) return refused('too-many-requests', message('requestsTooMany'));
  if (status === 413) return refused('too-large', message('requestTooLarge'));
  if (status === 415) return refused('type-not-allowed', message('sendAsJson'));
  if (status >= 400 && status < 500)
    return refused('malformed-request', message('requestUnreadable', { reason: error.message }));
  request.log.error({ err: error }, 'a request failed');
  if (status === 503) return refused('server-busy', message('tryAgainSoon'), { retryAfterS: 2 });
  return refused('internal-error', message('requestFailed', { request: request.id }));
}

const pathOf = (request: FastifyRequest): string => request.url.split('?', 1)[0] ?? '';
