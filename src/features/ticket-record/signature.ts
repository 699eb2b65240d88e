import { createPublicKey, type KeyObject, sign, verify } from 'node:crypto';

/** What is signed, apart from anything else that the same key may sign one day. */
const signed = (hash: string): Buffer => Buffer.from(`halfsplit log event ${hash}`);

/** Ed25519 (RFC 8032) over the hash of an event, which names all before it; base64url, 86 characters. */
export const signatureOf = (hash: string, key: KeyObject): string =>
  sign(null, signed(hash), key).toString('base64url');

/** @param key private or public */
export const isSignedBy = (key: KeyObject, hash: string, signature: string): boolean =>
  verify(null, signed(hash), createPublicKey(key), Buffer.from(signature, 'base64url'));
