import { createHash, randomBytes } from 'node:crypto';
import { replacedIn } from '../../../shared/contract/json-pointer.ts';
import type { TextAt } from '../../../shared/contract/person-text.ts';

/**
 * In the hashed form of an event a text of persons is this: SHA-256 over 64 hexadecimal digits of salt and the text
 * (UTF-8), lower-case hexadecimal. Text and salt lie elsewhere and can be erased; the hash of the event holds on.
 */
export type Sealed = { readonly text: { readonly sha256: string } };
const sealed = (sha256: string): Sealed => ({ text: { sha256 } });

/** What is kept of a sealed text beside the event. An erased one has lost its salt, and says in its text that it is. */
export type KeptText = { readonly pointer: string; readonly salt: string | null; readonly text: string };
export type TextOfEvent = KeptText & { readonly sha256: string };

type Json = Record<string, unknown>;

export const digestOf = (salt: string, text: string): string =>
  createHash('sha256')
    .update(salt + text)
    .digest('hex');

/** Puts a digest in the place of each text. */
export function seal(payload: Json, texts: readonly TextAt[]): { payload: Json; kept: KeptText[] } {
  const kept = texts.map(({ pointer, text }) => ({ pointer, text, salt: randomBytes(32).toString('hex') }));
  const digests = new Map(kept.map(({ pointer, salt, text }) => [pointer, sealed(digestOf(salt, text))]));
  return { payload: replacedIn(payload, (_, pointer) => digests.get(pointer)) as Json, kept };
}

/** Puts each text back in the place of its digest. */
export function unseal(
  payload: Json,
  kept: readonly KeptText[],
): { payload: Json; texts: readonly TextOfEvent[] } {
  const byPointer = new Map(kept.map((one) => [one.pointer, one]));
  const texts: TextOfEvent[] = [];
  const whole = replacedIn(payload, (value, pointer) => {
    if (!isSealed(value)) return undefined;
    // No route takes a row away; where one is gone all the same, the check of the log says so.
    const one = byPointer.get(pointer) ?? { pointer, salt: null, text: '' };
    texts.push({ ...one, sha256: value.text.sha256 });
    return one.text;
  });
  return { payload: whole as Json, texts };
}

/** The payload as it was hashed. */
export function resealed(payload: Json, texts: readonly TextOfEvent[]): Json {
  const digests = new Map(texts.map(({ pointer, sha256 }) => [pointer, sealed(sha256)]));
  return replacedIn(payload, (_, pointer) => digests.get(pointer)) as Json;
}

/** Nothing else looks so: keys of a person's choosing are those of settings, whose values are no objects. */
const isSealed = (value: unknown): value is Sealed => {
  const text = onlyValue(value, 'text');
  return typeof onlyValue(text, 'sha256') === 'string';
};

/** The value of an object's one key, where it has no other. */
const onlyValue = (value: unknown, key: string): unknown =>
  typeof value === 'object' && value !== null && Object.keys(value).length === 1
    ? (value as Json)[key]
    : undefined;
