const sampleBytes = 65_536;

/** Tab, line feed, form feed, carriage return, escape (coloured logs) and backspace are ordinary in logs. */
const ordinaryControls = new Set([0x08, 0x09, 0x0a, 0x0c, 0x0d, 0x1b]);
/** Share of other control characters up to which an 8-bit file still counts as text; assumed. */
const strayControlShare = 0.01;

/** How many bytes of a file's beginning `textTypeOf` wants. */
export const textSampleBytes = sampleBytes;

/**
 * The media type of a text, from the first bytes of a file; null when it is no text. Takes UTF-8, UTF-16 with or
 * without a byte order mark, and 8-bit encodings that are mostly ASCII, whose name nobody can know from the bytes.
 */
export function textTypeOf(beginning: Uint8Array): string | null {
  const bytes = beginning.subarray(0, sampleBytes);
  if (bytes.length === 0) return null;
  const wide = wideEncodingOf(bytes);
  if (wide !== null) return decodes(bytes, wide) ? `text/plain; charset=${wide}` : null;
  if (bytes.includes(0)) return null;
  const strays = bytes.reduce((count, byte) => count + (isStrayControl(byte) ? 1 : 0), 0);
  if (strays > bytes.length * strayControlShare) return null;
  if (decodes(bytes, 'utf-8')) return 'text/plain; charset=utf-8';
  const ascii = bytes.reduce((count, byte) => count + (byte < 0x80 ? 1 : 0), 0);
  return ascii > bytes.length / 2 ? 'text/plain' : null;
}

type WideEncoding = 'utf-16le' | 'utf-16be';

/** By byte order mark (RFC 2781, section 3.2), else by the zero bytes that Latin letters leave in UTF-16. */
function wideEncodingOf(bytes: Uint8Array): WideEncoding | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const zeros = [0, 0];
  bytes.forEach((byte, index) => {
    if (byte === 0) zeros[index % 2] = (zeros[index % 2] ?? 0) + 1;
  });
  const [even = 0, odd = 0] = zeros;
  const many = bytes.length / 4;
  if (odd > many && even === 0) return 'utf-16le';
  if (even > many && odd === 0) return 'utf-16be';
  return null;
}

function decodes(bytes: Uint8Array, encoding: string): boolean {
  try {
    new TextDecoder(encoding, { fatal: true }).decode(bytes, { stream: true });
    return true;
  } catch {
    return false;
  }
}

const isStrayControl = (byte: number): boolean =>
  (byte < 0x20 && !ordinaryControls.has(byte)) || byte === 0x7f;
