import type { Socket } from 'node:net';
import { problemOf, type Refused, refused } from './problem.ts';

const byNodeCode: Record<string, Refused> = {
  HPE_HEADER_OVERFLOW: refused('header-too-large', 'Address and headers together are larger than 16 KiB.'),
  ERR_HTTP_REQUEST_TIMEOUT: refused('request-timeout', 'The request did not arrive whole in time.'),
};
const unreadable = refused('malformed-request', 'This is not HTTP as the server reads it.');

/** Answers what never became a request, in the form of all other problems, and ends the connection. */
export function answerClientError(error: NodeJS.ErrnoException, socket: Socket): void {
  if (error.code === 'ECONNRESET' || socket.destroyed) return;
  const problem = problemOf(byNodeCode[error.code ?? ''] ?? unreadable);
  const body = JSON.stringify(problem);
  const head = [
    `HTTP/1.1 ${problem.status} ${problem.title}`,
    'content-type: application/problem+json',
    `content-length: ${Buffer.byteLength(body)}`,
    'connection: close',
  ];
  if (socket.writable) socket.end(`${head.join('\r\n')}\r\n\r\n${body}`, () => socket.destroy());
  else socket.destroy();
}
