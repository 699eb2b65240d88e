import { type FileEvidenceAbout, fileEvidenceAbout } from '../../../shared/contract/evidence.ts';
import { message } from '../../../shared/message/index.ts';
import { type Refused, refused } from '../../http/index.ts';
import { unstorablePlace } from '../../http/well-formed.ts';

/**
 * Reads what comes with a file as JSON.
 * @param where a pointer to it, for the refusal: `/about` in a form, `Upload-Metadata/about` in a header
 */
export function readAbout(
  text: string | null | undefined,
  where: string,
): { readonly ok: true; readonly about: FileEvidenceAbout } | Refused {
  const refusal = (at: string, code: string, why: string): Refused =>
    refused('invalid-input', message('aboutFileDoesNotFit'), {
      errors: [{ pointer: `${where}${at}`, code, text: why }],
    });
  if (!text) return refusal('', 'required', 'is missing: JSON that says what the file is');
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return refusal('', 'json', 'is not JSON');
  }
  const unstorable = unstorablePlace(value);
  if (unstorable !== null) return refusal(unstorable, 'unstorable-text', 'cannot be stored');
  const parsed = fileEvidenceAbout.safeParse(value);
  if (parsed.success) return { ok: true, about: parsed.data };
  return refused('invalid-input', message('aboutFileDoesNotFit'), {
    errors: parsed.error.issues.map((issue) => ({
      pointer: `${where}${issue.path.map((part) => `/${String(part)}`).join('')}`,
      code: issue.code,
      text: issue.message,
    })),
  });
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
