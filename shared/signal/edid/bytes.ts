/** Size of every EDID block in bytes (VESA E-EDID A.2 section 2.1). */
export const blockSize = 128;

/** The byte at `index`, or 0 past the end: callers that care check the length first. */
export const byteAt = (bytes: Uint8Array, index: number): number => bytes[index] ?? 0;

export function allZero(bytes: Uint8Array): boolean {
  for (let i = 0; i < bytes.length; i++) if (bytes[i] !== 0) return false;
  return true;
}

/** Little-endian unsigned number of `count` bytes (at most 4) from `index`. */
export function littleEndian(bytes: Uint8Array, index: number, count: number): number {
  let value = 0;
  for (let i = count - 1; i >= 0; i--) value = value * 256 + byteAt(bytes, index + i);
  return value;
}

/** `value` as `count` little-endian bytes; bits that don't fit are cut off. */
export function toLittleEndian(value: number, count: number): number[] {
  const bytes: number[] = [];
  writeLittleEndian(bytes, 0, { value, count });
  return bytes;
}

/** Writes the same from `at` on. */
export function writeLittleEndian(
  into: Uint8Array | number[],
  at: number,
  { value, count }: { value: number; count: number },
): void {
  let rest = value;
  for (let i = 0; i < count; i++) {
    into[at + i] = rest % 256;
    rest = Math.floor(rest / 256);
  }
}

/** The byte that makes `bytes[from..to)` and itself add up to 0 modulo 256 (E-EDID A.2 section 3.11). */
export function checksumOf(bytes: Uint8Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += byteAt(bytes, i);
  return (256 - (sum % 256)) % 256;
}

export function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

/** Index of `part` in `bytes` from `from` on, or -1. */
export function indexOfBytes(bytes: Uint8Array, part: readonly number[], from = 0): number {
  const first = part[0] ?? 0;
  for (let at = bytes.indexOf(first, from); at >= 0; at = bytes.indexOf(first, at + 1)) {
    if (at + part.length > bytes.length) return -1;
    if (part.every((value, i) => bytes[at + i] === value)) return at;
  }
  return -1;
}

export function concatBytes(parts: readonly (Uint8Array | readonly number[])[]): Uint8Array {
  let length = 0;
  for (const part of parts) length += part.length;
  const total = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    total.set(part, at);
    at += part.length;
  }
  return total;
}

export const bit = (value: number, index: number): boolean => ((value >> index) & 1) === 1;

/** A byte of flags, the first argument being bit 7. */
export function flagByte(...flags: readonly boolean[]): number {
  let value = 0;
  for (let i = 0; i < flags.length; i++) value = value * 2 + (flags[i] ? 1 : 0);
  return value;
}
