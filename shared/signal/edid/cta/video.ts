import { bit, byteAt } from '../bytes.ts';

/** A video format by its code (CTA-861-H table 3). Only VIC 1 to 64 can be marked native. */
export type ShortVideoDescriptor = { vic: number; native: boolean };

/**
 * Reads one byte of a video block (CTA-861-H section 7.5.1.1): 1 to 127 and 193 up are the VIC itself, 129 to 192 are
 * VIC 1 to 64 marked native. 0 and 128 are reserved and come back as they are.
 */
function decodeShortVideo(value: number): ShortVideoDescriptor {
  return value > 128 && value < 193 ? { vic: value - 128, native: true } : { vic: value, native: false };
}

/** The content of a video block, one byte a format. */
export function decodeShortVideos(payload: Uint8Array): ShortVideoDescriptor[] {
  const formats: ShortVideoDescriptor[] = [];
  for (let i = 0; i < payload.length; i++) formats.push(decodeShortVideo(byteAt(payload, i)));
  return formats;
}

export function encodeShortVideos(formats: readonly ShortVideoDescriptor[]): Uint8Array {
  const bytes = new Uint8Array(formats.length);
  formats.forEach(({ vic, native }, i) => {
    bytes[i] = vic + (native ? 128 : 0);
  });
  return bytes;
}

/** False for the codes that name no format (0 and 128). */
export const namesFormat = (vic: number): boolean => vic !== 0 && vic !== 128;

/**
 * True when a YCbCr 4:2:0 capability map names the short video descriptor at `position`, counted from 0 over all video
 * blocks of the EDID in order. An empty map names all (CTA-861-H section 7.5.11).
 */
export const mapNames = (map: Uint8Array, position: number): boolean =>
  map.length === 0 || bit(byteAt(map, position >> 3), position & 7);

/** How many short video descriptors a map can name at most. */
export const mapReach = (map: Uint8Array): number =>
  map.length === 0 ? Number.POSITIVE_INFINITY : map.length * 8;

/** The map that names `indexes`; never the empty one, which would name all. */
export function capabilityMapOf(indexes: readonly number[]): Uint8Array {
  const map = new Uint8Array(Math.floor(Math.max(0, ...indexes) / 8) + 1);
  for (const i of indexes) map[i >> 3] = byteAt(map, i >> 3) | (1 << (i & 7));
  return map;
}
