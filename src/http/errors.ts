import type { FastifyError, FastifyInstance, FastifyRequest } from 'fastify';
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';
import { methodsByAddress } from './methods.ts';
import { type Refused, refused, sendProblem } from './problem.ts';
import { refusalOfUnreadable } from './unreadable-data.ts';

const byFrameworkCode: Record<string, (error: FastifyError) => Refused> = {
  FST_ERR_CTP_BODY_TOO_LARGE: () => refused('too-large', 'The body is larger than this address takes.'),
  FST_ERR_CTP_INVALID_MEDIA_TYPE: () => refused('type-not-allowed', 'Send application/json.'),
  FST_REQ_FILE_TOO_LARGE: () =>
    refused('too-large', 'The file is too large for one request. Send it to /uploads, which can resume.'),
  FST_INVALID_MULTIPART_CONTENT_TYPE: () => refused('type-not-allowed', 'Send multipart/form-data.'),
  // Prisma: no connection in time, or a transaction that took too long.
  P2028: () => refused('server-busy', 'Try again in a moment.', { retryAfterS: 2 }),
  FST_ERR_RATE_LIMIT: (error) => refused('too-many-requests', error.message),
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
      return sendProblem(request, reply, refused('not-found', `There is nothing at ${path}.`));
    reply.header('allow', methods.join(', '));
    const detail = `${path} takes ${methods.join(', ')}, not ${request.method}.`;
    return sendProblem(request, reply, refused('method-not-allowed', detail));
  });
}

function problemFor(error: FastifyError, request: FastifyRequest): Refused {
  if (hasZodFastifySchemaValidationErrors(error))
    return invalidInput(error.validation, error.validationContext);
  const unreadable = refusalOfUnreadable(error);
  if (unreadable !== null) {
    request.log.warn({ err: error }, 'a request met data that cannot be read');
    return unreadable;
  }
  const known = byFrameworkCode[error.code];
  if (known !== undefined) return known(error);
  const status = error.statusCode ?? 500;
  if (status === 429) return refused('too-many-requests', error.message);
  if (status === 413) return refused('too-large', 'The request is larger than this address takes.');
  if (status === 415) return refused('type-not-allowed', 'Send application/json.');
  if (status >= 400 && status < 500) return refused('malformed-request', error.message);
  request.log.error({ err: error }, 'a request failed');
  if (status === 503) return refused('server-busy', 'Try again in a moment.', { retryAfterS: 2 });
  return refused('internal-error', `Quote request ${request.id} to whoever runs this server.`);
}

type Issue = { instancePath: string; keyword: string; message?: string | undefined };

/**
 * @param context the part of the request: in the body, places are JSON pointers (RFC 6901, where the whole is the empty
 *   pointer); in address, query and headers they are the names there
 */
export function invalidInput(issues: readonly Issue[], context: string | undefined): Refused {
  const inBody = context === undefined || context === 'body';
  return refused('invalid-input', 'Some fields do not fit. Each is listed under errors.', {
    errors: issues.map(({ instancePath, keyword, message }) => ({
      pointer: inBody ? (instancePath === '/' ? '' : instancePath) : (instancePath.split('/')[1] ?? ''),
      code: keyword,
      text: message ?? 'does not fit',
    })),
  });
}

const pathOf = (request: FastifyRequest): string => request.url.split('?', 1)[0] ?? '';
