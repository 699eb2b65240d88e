import { readFile } from 'node:fs/promises';
import { decodeEdid, readEdidInput, summarise } from '../../../shared/signal/edid/index.ts';
import { type Refused, refused } from '../../http/index.ts';
import type { FileKind } from './content-type.ts';

/** What was read out of a file on arrival. */
export type Facts = Record<string, unknown>;

/**
 * Facts of a file of this kind; null where there are none to read. Of an EDID: its bytes as `edidHex` (lower-case
 * hexadecimal), what it says as `edid` (the shape that the command line prints), and how it was found as `notes`.
 * A damaged EDID is kept, with its problems among the facts; a text without any EDID in it is refused.
 */
export async function factsOf(
  kind: FileKind,
  path: string,
  mediaType: string,
): Promise<{ readonly ok: true; readonly facts: Facts | null } | Refused> {
  if (kind !== 'edid') return { ok: true, facts: null };
  const { form, bytes, notes } = readEdidInput(await readFile(path));
  if (mediaType.startsWith('text/') && form !== 'hexText') {
    return refused('type-not-allowed', 'There is no EDID in this text: send its bytes in hexadecimal.');
  }
  const edidHex = Buffer.from(bytes).toString('hex');
  return { ok: true, facts: { edidHex, edid: summarise(decodeEdid(bytes)), notes } };
}
