import type { Multipart } from '@fastify/multipart';
import type { FastifyRequest } from 'fastify';
import type { FileEvidenceAbout } from '../../../shared/contract/evidence.ts';
import { message } from '../../../shared/message/index.ts';
import type { EvidenceStore, ReceivedFile } from '../../evidence-store/index.ts';
import { type Refused, refused } from '../../http/index.ts';
import { readAbout, readFileName } from './about-file.ts';

/** The largest file in one request; a larger one goes to /uploads, which can resume. Assumed. */
export const formLimits = { fileSize: 25 * 1024 * 1024, files: 1, fields: 1, fieldSize: 64 * 1024, parts: 2 };

export type Form = {
  readonly ok: true;
  readonly about: FileEvidenceAbout;
  readonly fileName: string | null;
  readonly file: ReceivedFile;
};

/**
 * Reads multipart/form-data with a field `about` and a part `file`, in either order; the file is streamed to the
 * staging folder. A refusal leaves nothing there.
 * @throws the framework's own errors for what is over `formLimits`
 */
export async function readForm(request: FastifyRequest, store: EvidenceStore): Promise<Form | Refused> {
  let about: string | null = null;
  let fileName: string | null = null;
  let file: ReceivedFile | null = null;
  try {
    for await (const part of request.parts({ limits: formLimits })) {
      if (part.type === 'field') about = fieldText(part);
      else {
        const received = await store.receive(part.file, { maxBytes: formLimits.fileSize });
        if (!received.ok) throw new Error('the form let more through than its limit');
        file = received.file;
        fileName = readFileName(part.filename);
      }
    }
  } catch (error) {
    if (file !== null) await store.discard(file);
    if (isOurs(error)) throw error;
    return refused('malformed-request', message('formUnreadable'));
  }
  const read = readAbout(about, '/about');
  if (read.ok && file !== null) return { ok: true, about: read.about, fileName, file };
  if (file !== null) await store.discard(file);
  if (!read.ok) return read;
  return refused('invalid-input', message('fileMissing'), {
    errors: [{ pointer: '/file', ...message('fieldMissing') }],
  });
}

const fieldText = (part: Exclude<Multipart, { type: 'file' }>): string | null =>
  part.fieldname === 'about' && !part.valueTruncated && typeof part.value === 'string' ? part.value : null;

/** Errors of the framework, which know their status, and of the file system, which are not the sender's. */
const isOurs = (error: unknown): boolean =>
  error instanceof Error &&
  (('code' in error && String(error.code).startsWith('FST_')) || 'syscall' in error);
