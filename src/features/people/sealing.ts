import { createCipheriv, createDecipheriv, hkdfSync, type KeyObject, randomBytes } from 'node:crypto';

const cipher = 'aes-256-gcm';
const ivBytes = 12;
const tagBytes = 16;

/**
 * Seals what the server has to know later in plain, and the database must not tell (RFC 6238, section 5.1): AES-256-GCM
 * under a key that is derived (RFC 5869) from the server's own, which lies outside the database.
 * @param purpose what it is, and whose; it opens under the same words only
 * @returns base64url
 */
export function seal(serverKey: KeyObject, purpose: string, text: string): string {
  const iv = randomBytes(ivBytes);
  const sealing = createCipheriv(cipher, keyFrom(serverKey), iv).setAAD(Buffer.from(purpose));
  const body = Buffer.concat([sealing.update(text, 'utf8'), sealing.final()]);
  return Buffer.concat([iv, sealing.getAuthTag(), body]).toString('base64url');
}

/** @returns null for what was not sealed here for this purpose, or under another key of the server's */
export function unseal(serverKey: KeyObject, purpose: string, sealed: string): string | null {
  const bytes = Buffer.from(sealed, 'base64url');
  if (bytes.length < ivBytes + tagBytes) return null;
  try {
    const opening = createDecipheriv(cipher, keyFrom(serverKey), bytes.subarray(0, ivBytes), {
      authTagLength: tagBytes,
    })
      .setAAD(Buffer.from(purpose))
      .setAuthTag(bytes.subarray(ivBytes, ivBytes + tagBytes));
    return opening.update(bytes.subarray(ivBytes + tagBytes), undefined, 'utf8') + opening.final('utf8');
  } catch {
    return null;
  }
}

const keyFrom = (serverKey: KeyObject): Buffer =>
  Buffer.from(
    hkdfSync('sha256', serverKey.export({ type: 'pkcs8', format: 'der' }), '', 'halfsplit sealing', 32),
  );
