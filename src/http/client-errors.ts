import { STATUS_CODES } from 'node:http';
import type { Socket } from 'node:net';
import { english } from '../../shared/message/en/index.ts';
import { message } from '../../shared/message/index.ts';
import { problemInWords } from './language.ts';
import { problemOf, problemType, type Refused, refused } from './problem.ts';

/** Most that address and headers may take together. */
export const maxHeaderKiB = 16;

const byNodeCode: Record<string, Refused> = {
  HPE_HEADER_OVERFLOW: refused('header-too-large', message('headersTooLarge', { limitKiB: maxHeaderKiB })),
  ERR_HTTP_REQUEST_TIMEOUT: refused('request-timeout', message('requestCameLate')),
};
const unreadable = refused('malformed-request', message('notHttp'));

/** Answers what never became a request, in the form of all other problems, and ends the connection. */
export function answerClientError(error: NodeJS.ErrnoException, socket: Socket): void {
  if (error.code === 'ECONNRESET' || socket.destroyed) return;
  // What language was asked for stands in headers that were not read.
  const problem = problemInWords(problemOf(byNodeCode[error.code ?? ''] ?? unreadable), english);
  const body = JSON.stringify(problem);
  const head = [
    `HTTP/1.1 ${problem.status} ${STATUS_CODES[problem.status]}`,
    `content-type: ${problemType}`,
    `content-language: ${english.tag}`,
    `content-length: ${Buffer.byteLength(body)}`,
    'connection: close',
  ];
  if (socket.writable) socket.end(`${head.join('\r\n')}\r\n\r\n${body}`, () => socket.destroy());
  else socket.destroy();
}
