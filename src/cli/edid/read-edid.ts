import { message } from '../../../shared/message/index.ts';
import { type DecodedEdid, decodeEdid, readEdidInput } from '../../../shared/signal/edid/index.ts';
import { readInput } from '../program/input.ts';
import { complain, inEnglish } from '../program/output.ts';

/** A log that an EDID is in may be long; an EDID itself has 32 KiB at the most. */
const mostBytes = 4 * 1024 * 1024;

export const programName = 'edid';

export type ReadEdid = { decoded: DecodedEdid; isReadable: boolean };

/**
 * An EDID out of a file: binary, hexadecimal in any dump, or base64. What was skipped on the way stands among its
 * problems; one that can't be read is said on the standard error, and has that for its only problem.
 */
export async function readEdid(file: string): Promise<ReadEdid> {
  const input = await readInput(file, mostBytes);
  if (!input.ok) return unreadable(file, input.reason);
  const { form, bytes, notes } = readEdidInput(input.content);
  if (form === 'otherText') return unreadable(file, 'this is a text without an EDID in it');
  const decoded = decodeEdid(bytes);
  const skipped = notes.map((text) => ({ severity: 'note' as const, block: 0, offset: 0, text }));
  return { decoded: { ...decoded, problems: [...skipped, ...decoded.problems] }, isReadable: true };
}

function unreadable(file: string, reason: string): ReadEdid {
  complain(programName, `${file}: ${reason}`);
  const text = message('edid/fileUnreadable', { reason });
  const problems = [{ severity: 'error' as const, block: 0, offset: 0, text }];
  return { decoded: { edid: null, blockCount: 0, checksumsValid: false, problems }, isReadable: false };
}

/** The same for a command that needs an EDID to work on; null, said on the standard error, where there is none. */
export async function readWholeEdid(file: string): Promise<NonNullable<DecodedEdid['edid']> | null> {
  const { decoded, isReadable } = await readEdid(file);
  if (!isReadable) return null;
  for (const { severity, block, offset, text } of decoded.problems)
    if (severity === 'error' || decoded.edid === null)
      complain(programName, `${file}: ${severity}, block ${block}, byte ${offset}: ${inEnglish(text)}`);
  return decoded.edid;
}
