import { sameBytes } from './bytes.ts';

/**
 * Bytes as they were read, present only where the typed fields can't reproduce them (reserved bits in use, padding,
 * odd lengths). Encoding takes them instead of the fields, so whoever edits a field must leave them out of the copy.
 */
export type Exact = { readonly exactBytes?: Uint8Array };

/**
 * Adds `exactBytes` to what was decoded from `bytes` when encoding it again gives other bytes. Parts that were kept exact
 * themselves need no second encoding: whoever checks the whole puts in the bytes that they were read from.
 */
export function keepExact<T extends Exact>(value: T, bytes: Uint8Array, encode: (value: T) => Uint8Array): T {
  return sameBytes(encode(value), bytes) ? value : { ...value, exactBytes: bytes.slice() };
}

/** A copy of `value` with `changes`, freed from the bytes it was read from. */
export function edited<T extends Exact>(value: T, changes: Partial<T>): T {
  const copy = { ...value, ...changes };
  delete (copy as { exactBytes?: Uint8Array }).exactBytes;
  return copy;
}
