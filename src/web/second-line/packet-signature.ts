/**
 * Who signed a packet. `valid`: whoever has the key of that fingerprint, which is the packet's own word for who that is;
 * `wrong`: the packet was changed after it was signed; `unknown`: this browser knows no Ed25519.
 */
export type PacketSignature =
  | { readonly kind: 'valid'; readonly fingerprint: string }
  | { readonly kind: 'none' | 'wrong' | 'unknown' };

type Signed = {
  readonly content: Uint8Array | null;
  readonly signature: Uint8Array | null;
  /** PEM (SPKI). */
  readonly publicKey: string;
};

/** Checks the Ed25519 (RFC 8032) that a packet carries over its tag manifest. */
export async function checkSignature({ content, signature, publicKey }: Signed): Promise<PacketSignature> {
  if (signature === null) return { kind: 'none' };
  const spki = derOf(publicKey);
  if (content === null || spki === null) return { kind: 'wrong' };
  try {
    const key = await crypto.subtle.importKey('spki', spki, 'Ed25519', true, ['verify']);
    const isValid = await crypto.subtle.verify('Ed25519', key, plain(signature), plain(content));
    return isValid ? { kind: 'valid', fingerprint: await sha256Of(spki) } : { kind: 'wrong' };
  } catch (error) {
    return { kind: error instanceof Error && error.name === 'NotSupportedError' ? 'unknown' : 'wrong' };
  }
}

function derOf(pem: string): Uint8Array<ArrayBuffer> | null {
  const [, base64] = /-----BEGIN PUBLIC KEY-----([A-Za-z0-9+/=\s]+)-----END PUBLIC KEY-----/.exec(pem) ?? [];
  if (base64 === undefined) return null;
  try {
    return Uint8Array.from(atob(base64.replaceAll(/\s/g, '')), (letter) => letter.charCodeAt(0));
  } catch {
    return null;
  }
}

/** SHA-256, lower-case hexadecimal. */
export async function sha256Of(bytes: Uint8Array): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', plain(bytes));
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** What comes out of a zip is never shared with another thread. */
const plain = (bytes: Uint8Array) => bytes as Uint8Array<ArrayBuffer>;
