const decoder = new TextDecoder('utf-8');
const encoder = new TextEncoder();

/** The text of a stretch of UTF-8; bytes that are none become U+FFFD. */
export function textOf(bytes: Uint8Array, start: number, end: number): string {
  return decoder.decode(bytes.subarray(start, end));
}

export function utf8Of(text: string): Uint8Array {
  return encoder.encode(text);
}

/** Both in one, always a copy, so that a caller may use its buffer again. */
export function joined(first: Uint8Array, second: Uint8Array): Uint8Array {
  const whole = new Uint8Array(first.length + second.length);
  whole.set(first);
  whole.set(second, first.length);
  return whole;
}
