/**
 * The bytes that a part was read from. Encoding takes them instead of the fields, so that reserved bits, padding and odd
 * lengths come back as they were; whoever edits a field must leave them out of the copy (`edited`).
 */
export type Exact = { readonly exactBytes?: Uint8Array };

/** Adds to a part that was just read the bytes it was read from. Changes `value`, which nobody else has yet. */
export function readFrom<T extends Exact>(value: T, bytes: Uint8Array): T {
  (value as { exactBytes?: Uint8Array }).exactBytes = bytes;
  return value;
}

/** A copy of `value` with `changes`, freed from the bytes it was read from. */
export function edited<T extends Exact>(value: T, changes: Partial<T>): T {
  const copy = { ...value, ...changes };
  delete (copy as { exactBytes?: Uint8Array }).exactBytes;
  return copy;
}
