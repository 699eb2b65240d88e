/** Levels of a JSON document; assumed: what the contract knows needs no more than ten. */
const deepest = 64;

/** Why something in a JSON document can't be stored, and where: a JSON pointer (RFC 6901). */
export type Unstorable = { pointer: string; code: 'unstorable-text' | 'too-deep'; text: string };

/**
 * The first thing in a document that can't be stored or hashed, or null: NUL, which PostgreSQL refuses in text, lone
 * surrogates, which RFC 8785 (section 3.2.2.2) refuses, and what is nested deeper than any walk over it should go.
 */
export function findUnstorable(value: unknown, pointer = '', depth = 0): Unstorable | null {
  if (typeof value === 'string') return isStorable(value) ? null : badText(pointer);
  if (typeof value !== 'object' || value === null) return null;
  if (depth > deepest) return { pointer, code: 'too-deep', text: `is nested deeper than ${deepest} levels` };
  for (const [key, inner] of Object.entries(value)) {
    if (!isStorable(key)) return badText(pointer);
    const place = `${pointer}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`;
    const found = findUnstorable(inner, place, depth + 1);
    if (found !== null) return found;
  }
  return null;
}

const isStorable = (text: string): boolean => !text.includes('\0') && text.isWellFormed();
const badText = (pointer: string): Unstorable => ({
  pointer,
  code: 'unstorable-text',
  text: 'holds NUL or half a character, which cannot be stored',
});

/** Where the first such thing is; null when there is none. */
export const unstorablePlace = (value: unknown): string | null => findUnstorable(value)?.pointer ?? null;
