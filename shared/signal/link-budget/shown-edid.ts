import { decodeEdid, encodeEdid, limitEdid } from '../edid/index.ts';
import { bytesOfHex } from './edid-offer.ts';
import type { SeenEdid } from './seen-edid.ts';

/** The bytes of an EDID as they are seen, in hexadecimal; null where they aren't known. */
export function shownHex({ edidHex, limits }: Pick<SeenEdid, 'edidHex' | 'limits'>): string | null {
  if (edidHex === null || limits.length === 0) return edidHex;
  const { edid } = decodeEdid(bytesOfHex(edidHex));
  if (edid === null) return null;
  const bytes = encodeEdid(limits.reduce(limitEdid, edid));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
