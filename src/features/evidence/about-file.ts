import { type FileEvidenceAbout, fileEvidenceAbout } from '../../../shared/contract/evidence.ts';
import { BarredKey, parsePlainJson } from '../../../shared/contract/plain-json.ts';
import { type FieldFault, fieldFaults, message } from '../../../shared/message/index.ts';
import { type Refused, refused } from '../../http/index.ts';
import { findUnstorable } from '../../http/well-formed.ts';

/**
 * Reads what comes with a file as JSON.
 * @param where a pointer to it, for the refusal: `/about` in a form, `Upload-Metadata/about` in a header
 */
export function readAbout(
  text: string | null | undefined,
  where: string,
): { readonly ok: true; readonly about: FileEvidenceAbout } | Refused {
  const refusal = (faults: readonly FieldFault[]): Refused =>
    refused('invalid-input', message('aboutFileDoesNotFit'), {
      errors: faults.map((fault) => ({ ...fault, pointer: `${where}${fault.pointer}` })),
    });
  if (!text) return refusal([{ pointer: '', ...message('fieldMissing') }]);
  let value: unknown;
  try {
    value = parsePlainJson(text);
  } catch (error) {
    if (error instanceof BarredKey)
      return refused('malformed-request', message('requestUnreadable', { reason: error.message }));
    return refusal([{ pointer: '', ...message('fieldNotJson') }]);
  }
  const unstorable = findUnstorable(value);
  if (unstorable !== null) return refusal([unstorable]);
  const parsed = fileEvidenceAbout.safeParse(value);
  if (parsed.success) return { ok: true, about: parsed.data };
  return refusal(fieldFaults(parsed.error.issues, value));
}

const longestName = 200;

/** A file's name as its sender gave it, without folders, controls and what cannot be stored; null when none is left. */
export function readFileName(name: string | null | undefined): string | null {
  const bare = (name ?? '').toWellFormed().split(/[\\/]/).at(-1) ?? '';
  return (
    bare
      .replaceAll(/\p{Cc}/gu, '')
      .trim()
      .slice(0, longestName)
      .toWellFormed() || null
  );
}
