import { Readable } from 'node:stream';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { ByteRange } from '../evidence-store/index.ts';
import { isUnchanged } from './etag.ts';

export type FileReply = {
  /** A strong entity tag, quotes included. */
  readonly etag: string;
  readonly mediaType: string;
  /** Null where it is not known before the last byte; such a file has no ranges. */
  readonly sizeBytes: number | null;
  readonly disposition: 'attachment' | 'inline';
  /** ASCII letters, digits, dot, dash and underscore. */
  readonly fileName: string;
  /** Both ends count; null asks for all of it. */
  open(range: ByteRange | null): Promise<Readable>;
};

/**
 * Streams what users sent us, so that no browser takes it for a page of ours: sandboxed, never sniffed, in the
 * declared type. Answers If-None-Match, Range and If-Range (RFC 9110, sections 13 and 14); of several ranges, or one
 * in another unit, nothing is made: the whole file is sent, as section 14.2 allows.
 */
export async function sendFile(
  request: FastifyRequest,
  reply: FastifyReply,
  file: FileReply,
): Promise<FastifyReply> {
  reply
    .header('etag', file.etag)
    .header('cache-control', 'private, no-cache')
    .header('content-security-policy', contentPolicy)
    .header('x-content-type-options', 'nosniff')
    .header('content-disposition', `${file.disposition}; filename="${file.fileName}"`)
    .type(file.mediaType);
  if (file.sizeBytes !== null) reply.header('accept-ranges', 'bytes');
  if (isUnchanged(request.headers['if-none-match'], file.etag)) return reply.code(304).send();
  const range = rangeOf(request, file);
  if (range === 'unsatisfiable') {
    return reply.code(416).header('content-range', `bytes */${file.sizeBytes}`).send();
  }
  if (range === null && file.sizeBytes !== null) reply.header('content-length', file.sizeBytes);
  // An empty stream: the framework would take no body at all for a length of 0.
  if (request.method === 'HEAD') return reply.send(Readable.from([]));
  const stream = await file.open(range);
  if (range === null) return reply.send(stream);
  return reply
    .code(206)
    .header('content-range', `bytes ${range.start}-${range.end}/${file.sizeBytes}`)
    .header('content-length', range.end - range.start + 1)
    .send(stream);
}

/** Pictures and style of the page itself only: a case summary has both inside. */
const contentPolicy = "sandbox; default-src 'none'; style-src 'unsafe-inline'; img-src data:";

function rangeOf(request: FastifyRequest, file: FileReply): ByteRange | 'unsatisfiable' | null {
  const { range, 'if-range': ifRange } = request.headers;
  if (range === undefined || file.sizeBytes === null || request.method === 'HEAD') return null;
  if (ifRange !== undefined && ifRange !== file.etag) return null;
  return readRange(range, file.sizeBytes);
}

/** One `bytes` range (RFC 9110, section 14.1.2); null for what is to be ignored. */
export function readRange(header: string, sizeBytes: number): ByteRange | 'unsatisfiable' | null {
  const [, first = '', last = ''] = /^bytes=(\d{0,15})-(\d{0,15})$/.exec(header.trim()) ?? [];
  if (first === '' && last === '') return null;
  if (first === '') {
    const length = Math.min(Number(last), sizeBytes);
    return length === 0 ? 'unsatisfiable' : { start: sizeBytes - length, end: sizeBytes - 1 };
  }
  const start = Number(first);
  if (last !== '' && Number(last) < start) return null;
  if (start >= sizeBytes) return 'unsatisfiable';
  return { start, end: last === '' ? sizeBytes - 1 : Math.min(Number(last), sizeBytes - 1) };
}
