import { type FieldFault, message, pointerTo } from '../../shared/message/index.ts';

/** Levels of a JSON document; assumed: what the contract knows needs no more than ten. */
const deepest = 64;

/**
 * The first thing in a document that can't be stored or hashed, or null: NUL, which PostgreSQL refuses in text, lone
 * surrogates, which RFC 8785 (section 3.2.2.2) refuses, and what is nested deeper than any walk over it should go.
 */
export function findUnstorable(value: unknown, pointer = '', depth = 0): FieldFault | null {
  if (typeof value === 'string') return isStorable(value) ? null : badText(pointer);
  if (typeof value !== 'object' || value === null) return null;
  if (depth > deepest) return { pointer, ...message('fieldTooDeep', { levels: deepest }) };
  for (const [key, inner] of Object.entries(value)) {
    if (!isStorable(key)) return badText(pointer);
    const found = findUnstorable(inner, `${pointer}${pointerTo([key])}`, depth + 1);
    if (found !== null) return found;
  }
  return null;
}

const isStorable = (text: string): boolean => !text.includes('\0') && text.isWellFormed();
const badText = (pointer: string): FieldFault => ({ pointer, ...message('fieldUnstorable') });
