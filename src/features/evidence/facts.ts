import { createReadStream } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { type FileEvidenceAbout, type Span, span } from '../../../shared/contract/evidence.ts';
import {
  type ClockReference,
  compileClock,
  type Recognition,
  readLogFile,
} from '../../../shared/logs/index.ts';
import { message } from '../../../shared/message/index.ts';
import { decodeEdid, readEdidInput, summarise } from '../../../shared/signal/edid/index.ts';
import { type Refused, refused } from '../../http/index.ts';

/** What was read out of a file on arrival. */
export type Facts = Record<string, unknown>;
type Read = { readonly ok: true; readonly facts: Facts | null; readonly span: Span | null };

/** Events kept of each kind in a log's facts; the rest are counted. Assumed. */
const maxEventsPerKind = 500;

/**
 * Facts of a file, by its kind; null where there are none to read. A damaged file is kept, with its problems among
 * the facts; a text without any EDID in it is refused as an EDID.
 *
 * Of an EDID: its bytes as `edidHex` (lower-case hexadecimal), what it says as `edid` (the shape that the command line
 * prints), and how it was found as `notes`. Of a log: its `LogReading` as `log`.
 *
 * @param recognition the words to read a log by; null: the built-in ones
 */
export async function factsOf(
  about: FileEvidenceAbout,
  { path, mediaType }: { readonly path: string; readonly mediaType: string },
  recognition: Recognition | null,
): Promise<Read | Refused> {
  switch (about.kind) {
    case 'edid':
      return edidFacts(path, mediaType);
    case 'log':
      return logFacts(about, path, recognition);
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
  recognition: Recognition | null,
): Promise<Read | Refused> {
  const reference = { ...clock, ...(takenAt === null ? {} : { takenAt }) } as ClockReference;
  const compiled = compileClock(reference);
  if (!compiled.ok) {
    return refused('invalid-input', message('aboutFileDoesNotFit'), {
      errors: [{ pointer: '/clock', ...compiled.why }],
    });
  }
  const log = await readLogFile(() => createReadStream(path), {
    clock: compiled.clock,
    maxEventsPerKind,
    ...(recognition === null ? {} : { recognition }),
  });
  const covered = span.safeParse(log.span);
  return { ok: true, facts: { log }, span: covered.success ? covered.data : null };
}
