import { readFile } from 'node:fs/promises';
import { type FileEvidenceAbout, type Span, span } from '../../../shared/contract/evidence.ts';
import { type ClockReference, compileClock, type RecognitionRow } from '../../../shared/logs/index.ts';
import { message } from '../../../shared/message/index.ts';
import { decodeEdid, readEdidInput, summarise } from '../../../shared/signal/edid/index.ts';
import type { Asked, HeavyWork } from '../../heavy-work/index.ts';
import { type Refused, refused } from '../../http/index.ts';
import { readLogWork } from './read-log.work.ts';

/** What was read out of a file on arrival. */
export type Facts = Record<string, unknown>;
type Read = { readonly ok: true; readonly facts: Facts | null; readonly span: Span | null };

/** Who has a file read, and by which rows of their own a log is read. */
export type Reader = {
  readonly asked: Asked;
  readonly heavyWork: HeavyWork;
  readonly rows: readonly RecognitionRow[];
};

/**
 * Facts of a file, by its kind; null where there are none to read. A damaged file is kept, with its problems among
 * the facts; a text without any EDID in it is refused as an EDID.
 *
 * Of an EDID: its bytes as `edidHex` (lower-case hexadecimal), what it says as `edid` (the shape that the command line
 * prints), and how it was found as `notes`. Of a log: its `LogReading` as `log`.
 */
export async function factsOf(
  about: FileEvidenceAbout,
  { path, mediaType }: { readonly path: string; readonly mediaType: string },
  reader: Reader,
): Promise<Read | Refused> {
  switch (about.kind) {
    case 'edid':
      return edidFacts(path, mediaType);
    case 'log':
      return logFacts(about, path, reader);
    default:
      return { ok: true, facts: null, span: null };
  }
}

async function edidFacts(path: string, mediaType: string): Promise<Read | Refused> {
  const { form, bytes, notes } = readEdidInput(await readFile(path));
  if (mediaType.startsWith('text/') && form !== 'hexText' && form !== 'base64') {
    return refused('type-not-allowed', message('textWithoutEdid'));
  }
  const edidHex = Buffer.from(bytes).toString('hex');
  return { ok: true, facts: { edidHex, edid: summarise(decodeEdid(bytes)), notes }, span: null };
}

async function logFacts(
  { clock, takenAt }: FileEvidenceAbout,
  path: string,
  { rows, heavyWork, asked }: Reader,
): Promise<Read | Refused> {
  const reference = { ...clock, ...(takenAt === null ? {} : { takenAt }) } as ClockReference;
  const compiled = compileClock(reference);
  if (!compiled.ok) {
    return refused('invalid-input', message('aboutFileDoesNotFit'), {
      errors: [{ pointer: '/clock', ...compiled.why }],
    });
  }
  const log = await heavyWork.compute(readLogWork, { path, reference, rows }, asked);
  const covered = span.safeParse(log.span);
  return { ok: true, facts: { log }, span: covered.success ? covered.data : null };
}
