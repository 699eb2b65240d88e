import { createHash, createPublicKey, type KeyObject, sign, verify } from 'node:crypto';
import type { WrittenFile } from './packet-files.ts';

export const signatureName = 'tagmanifest-sha256.sig';
export const publicKeyName = 'public-key.pem';

/** The public half of the server's key, as PEM (SPKI), which programs of the command line read. */
export const publicKeyOf = (key: KeyObject): WrittenFile => ({
  path: publicKeyName,
  content: String(createPublicKey(key).export({ type: 'spki', format: 'pem' })),
});

/** SHA-256 over the public key's DER form (SPKI), hexadecimal: short enough to be read out. */
export const fingerprintOf = (key: KeyObject): string =>
  createHash('sha256')
    .update(createPublicKey(key).export({ type: 'spki', format: 'der' }))
    .digest('hex');

/**
 * Ed25519 (RFC 8032) over the tag manifest as it lies in the bag, which vouches for all else in it; 64 bytes, as
 * `openssl pkeyutl -verify -pubin -inkey public-key.pem -rawin -in tagmanifest-sha256.txt -sigfile tagmanifest-sha256.sig`
 * takes it.
 */
export const signatureOfBag = (tagManifest: WrittenFile, key: KeyObject): WrittenFile => ({
  path: signatureName,
  content: sign(null, Buffer.from(tagManifest.content), key),
});

/** @param key private or public */
export const isBagSignedBy = (key: KeyObject, tagManifest: Buffer, signature: Buffer): boolean =>
  verify(null, tagManifest, key, signature);
