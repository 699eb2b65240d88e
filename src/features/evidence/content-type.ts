import { open, readFile } from 'node:fs/promises';
import { fileTypeFromFile } from 'file-type';
import type { FileEvidenceAbout } from '../../../shared/contract/evidence.ts';
import { type Message, message } from '../../../shared/message/index.ts';
import { type Refused, refused } from '../../http/index.ts';
import { textSampleBytes, textTypeOf } from './text-encoding.ts';

export type FileKind = FileEvidenceAbout['kind'];

const mebibyte = 1024 * 1024;
type Rule = { readonly types: readonly string[]; readonly text: boolean; readonly maxBytes: number };

/** What each kind of evidence may be, and how large; sizes are assumed. A log is bounded by the server alone. */
const rules: Record<FileKind, Rule> = {
  photo: { types: ['image/jpeg', 'image/png', 'image/webp'], text: false, maxBytes: 50 * mebibyte },
  log: { types: ['application/gzip'], text: true, maxBytes: Number.POSITIVE_INFINITY },
  edid: { types: ['application/octet-stream'], text: true, maxBytes: mebibyte },
  settings: { types: ['application/json'], text: true, maxBytes: 10 * mebibyte },
  document: { types: ['application/pdf', 'image/jpeg', 'image/png'], text: true, maxBytes: 100 * mebibyte },
};

/**
 * The media type of a file by its bytes, if that kind of evidence may have it; its name is never asked.
 * Markup (HTML, SVG, XML) counts as plain text and is never served as anything else.
 */
export async function acceptedType(
  kind: FileKind,
  path: string,
  sizeBytes: number,
): Promise<{ readonly ok: true; readonly mediaType: string } | Refused> {
  const rule = rules[kind];
  if (sizeBytes === 0) return refused('type-not-allowed', message('fileEmpty'));
  if (sizeBytes > rule.maxBytes)
    return refused(
      'too-large',
      message('fileTooLarge', { kind, limitMiB: Math.floor(rule.maxBytes / mebibyte) }),
    );
  const found = await typeOf(kind, path, sizeBytes);
  if (found !== null && (rule.types.includes(found) || (rule.text && found.startsWith('text/')))) {
    return { ok: true, mediaType: found };
  }
  return refused('type-not-allowed', whyNot(kind, found));
}

/** Marked types first: a PDF can consist of printable characters only. Then text, for `BM` may begin a log too. */
async function typeOf(kind: FileKind, path: string, sizeBytes: number): Promise<string | null> {
  const marked = await markedType(path);
  if (marked !== null && certainTypes.has(marked)) return marked;
  const text = textTypeOf(await beginningOf(path, textSampleBytes));
  if (text !== null) return kind === 'settings' && (await isJson(path)) ? 'application/json' : text;
  if (kind === 'edid' && isWholeBlocks(sizeBytes)) return 'application/octet-stream';
  return marked;
}

/** Types whose mark is long enough that no log begins with it by chance. */
const certainTypes: ReadonlySet<string> = new Set([
  'image/jpeg',
  'image/png',
  'image/webp',
  'image/heic',
  'image/heif',
  'image/avif',
  'application/gzip',
  'application/pdf',
]);

async function markedType(path: string): Promise<string | null> {
  try {
    return (await fileTypeFromFile(path))?.mime ?? null;
  } catch {
    return null;
  }
}

/**
 * An EDID comes in blocks of 128 bytes, 256 of them at most (VESA E-EDID, from memory). One whose header is damaged
 * is the most telling evidence of all, so the header is not asked.
 */
const isWholeBlocks = (sizeBytes: number): boolean => sizeBytes % 128 === 0 && sizeBytes <= 256 * 128;

async function isJson(path: string): Promise<boolean> {
  try {
    JSON.parse(await readFile(path, 'utf8'));
    return true;
  } catch {
    return false;
  }
}

async function beginningOf(path: string, length: number): Promise<Uint8Array> {
  const file = await open(path, 'r');
  try {
    const { buffer, bytesRead } = await file.read({ buffer: Buffer.alloc(length), position: 0 });
    return buffer.subarray(0, bytesRead);
  } finally {
    await file.close();
  }
}

const taken: Record<FileKind, Message> = {
  photo: message('photoTypes'),
  log: message('logTypes'),
  edid: message('edidTypes'),
  settings: message('settingsTypes'),
  document: message('documentTypes'),
};
const rarePhotoTypes: readonly (string | null)[] = ['image/heic', 'image/heif', 'image/avif'];

function whyNot(kind: FileKind, found: string | null): Message {
  if (kind === 'photo' && rarePhotoTypes.includes(found)) return message('photoFormatRare');
  return found === null
    ? message('fileUnrecognised', { taken: taken[kind] })
    : message('fileTypeNotTaken', { taken: taken[kind], found: found.split(';')[0] ?? found });
}
