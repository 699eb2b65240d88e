const deepest = 64;

/**
 * Text that can't be stored or hashed: NUL, which PostgreSQL refuses in text, and lone surrogates, which RFC 8785
 * (section 3.2.2.2) refuses. Returns a JSON pointer to the first such place, or null.
 */
export function unstorablePlace(value: unknown, pointer = '', depth = 0): string | null {
  if (typeof value === 'string') return value.includes('\0') || !value.isWellFormed() ? pointer : null;
  if (typeof value !== 'object' || value === null) return null;
  if (depth > deepest) return pointer;
  for (const [key, inner] of Object.entries(value)) {
    const place = `${pointer}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`;
    if (key.includes('\0') || !key.isWellFormed()) return pointer;
    const found = unstorablePlace(inner, place, depth + 1);
    if (found !== null) return found;
  }
  return null;
}
