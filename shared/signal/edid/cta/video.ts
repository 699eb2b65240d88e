import { bit, byteAt } from '../bytes.ts';

/** A video format by its code (CTA-861-H table 3). Only VIC 1 to 64 can be marked native. */
export type ShortVideoDescriptor = { vic: number; native: boolean };

/**
 * Reads one byte of a video block (CTA-861-H section 7.5.1.1): 1 to 127 and 193 up are the VIC itself, 129 to 192 are
 * VIC 1 to 64 marked native. 0 and 128 are reserved and come back as they are.
 */
export function decodeShortVideo(value: number): ShortVideoDescriptor {
  return value > 128 && value < 193 ? { vic: value - 128, native: true } : { vic: value, native: false };
}

export const encodeShortVideo = ({ vic, native }: ShortVideoDescriptor): number => vic + (native ? 128 : 0);

/** False for the codes that name no format (0 and 128). */
export const namesFormat = (vic: number): boolean => vic !== 0 && vic !== 128;

/**
 * Which short video descriptors a YCbCr 4:2:0 capability map names (CTA-861-H section 7.5.11): positions from 0 over all
 * video blocks of the EDID in order. An empty map stands for all of them.
 */
export function capabilityMapIndexes(map: Uint8Array, count: number): number[] {
  const named = map.length === 0 ? count : Math.min(map.length * 8, count);
  const indexes = Array.from({ length: named }, (_, i) => i);
  return map.length === 0 ? indexes : indexes.filter((i) => bit(byteAt(map, i >> 3), i & 7));
}

/** The map that names `indexes`; never the empty one, which would name all. */
export function capabilityMapOf(indexes: readonly number[]): Uint8Array {
  const map = new Uint8Array(Math.floor(Math.max(0, ...indexes) / 8) + 1);
  for (const i of indexes) map[i >> 3] = byteAt(map, i >> 3) | (1 << (i & 7));
  return map;
}
