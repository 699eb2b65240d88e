/**
 * The header of an EDID in base64, whose last digit belongs to the byte after it too. No hex dump can hold it, for none
 * has slashes between its digits.
 */
const header = /AP\/{7}w[A-D]/;
const digits = /[A-Za-z0-9+/]/;

/**
 * The bytes of an EDID that stands in a text in base64 (RFC 4648 section 4), in one line or several, with or without
 * words before it; an empty line or a sign of another kind ends it. Null where none begins.
 */
export function bytesFromBase64(text: string): Uint8Array | null {
  const from = text.search(header);
  if (from < 0) return null;
  let kept = '';
  const [paragraph = ''] = text.slice(from).split(/\n\s*\n/, 1);
  for (const letter of paragraph) {
    if (digits.test(letter)) kept += letter;
    else if (!/\s/.test(letter)) break;
  }
  // One digit alone holds no whole byte.
  const whole = kept.slice(0, kept.length - (kept.length % 4 === 1 ? 1 : 0));
  return Uint8Array.from(atob(whole), (letter) => letter.charCodeAt(0));
}
