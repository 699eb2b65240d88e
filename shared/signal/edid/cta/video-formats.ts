import { ridTiming, type Timing } from '../../timings/index.ts';
import { bit, byteAt, flagByte } from '../bytes.ts';

/** Pictures of one size at the rates that are named, see `ratesOf`. */
export type VideoFormatDescriptor = {
  /** Resolution identification code, see `ridTiming`. */
  rid: number;
  at24: boolean;
  at48: boolean;
  at144: boolean;
  /** Multiples of 25 and of 30 Hz that `factorBits` name. */
  by25: boolean;
  by30: boolean;
  /** Bits for 1, 2, 4, 8, 12 and 16 times, the lowest first. */
  factorBits: number;
};

/**
 * A video format block, tag 6: sizes by code, each with its rates (CTA-861-I section 7.5.17, from memory; the reference
 * program that the tests ask stops at such a block, so that the timings alone are checked from outside).
 */
export type VideoFormats = {
  /** All of them are taken as YCbCr 4:2:0 too. */
  in420: boolean;
  /** Rates divided by 1.001 are preferred to whole ones. */
  fractional: boolean;
  /** Bytes of each descriptor, 1 to 4; what a short one has no room for is as in `shortest`. */
  bytesEach: number;
  descriptors: readonly VideoFormatDescriptor[];
};

const factors = [1, 2, 4, 8, 12, 16] as const;
const shortest = { at48: false, at144: false, by30: true, factorBits: 0b11 };

export function decodeVideoFormats(payload: Uint8Array): VideoFormats {
  const head = byteAt(payload, 0);
  const bytesEach = (head & 3) + 1;
  const descriptors: VideoFormatDescriptor[] = [];
  for (let at = 1; at + bytesEach <= payload.length; at += bytesEach)
    descriptors.push(decodeDescriptor(payload.subarray(at, at + bytesEach)));
  return { in420: bit(head, 7), fractional: bit(head, 6), bytesEach, descriptors };
}

function decodeDescriptor(bytes: Uint8Array): VideoFormatDescriptor {
  const first = byteAt(bytes, 0);
  const second = byteAt(bytes, 1);
  return {
    rid: first & 63,
    at24: bit(first, 6),
    by25: bit(first, 7),
    ...shortest,
    ...(bytes.length > 1 && { by30: bit(second, 7), at144: bit(second, 6), factorBits: second & 63 }),
    ...(bytes.length > 2 && { at48: bit(byteAt(bytes, 2), 0) }),
  };
}

export const encodeVideoFormats = ({ in420, fractional, bytesEach, descriptors }: VideoFormats): number[] => [
  flagByte(in420, fractional) * 64 + bytesEach - 1,
  ...descriptors.flatMap((descriptor) =>
    [
      flagByte(descriptor.by25, descriptor.at24) * 64 + descriptor.rid,
      flagByte(descriptor.by30, descriptor.at144) * 64 + descriptor.factorBits,
      descriptor.at48 ? 1 : 0,
      0,
    ].slice(0, bytesEach),
  ),
];

/** The rates of a descriptor, Hz, ascending. */
export function ratesOf({ at24, at48, at144, by25, by30, factorBits }: VideoFormatDescriptor): number[] {
  const named = factors.filter((_, i) => bit(factorBits, i));
  return [
    ...(at24 ? [24] : []),
    ...(at48 ? [48] : []),
    ...(at144 ? [144] : []),
    ...(by25 ? named.map((factor) => 25 * factor) : []),
    ...(by30 ? named.map((factor) => 30 * factor) : []),
  ].sort((a, b) => a - b);
}

/** The pictures of a descriptor; none for codes without a meaning. */
export const timingsOfDescriptor = (descriptor: VideoFormatDescriptor): Timing[] =>
  ratesOf(descriptor).flatMap((rateHz) => ridTiming(descriptor.rid, rateHz) ?? []);

/** The descriptor without the rates that don't fit, or null where none does: the fastest go first. */
export function fewerRates(
  descriptor: VideoFormatDescriptor,
  fits: (timing: Timing) => boolean,
): VideoFormatDescriptor | null {
  const timings = timingsOfDescriptor(descriptor);
  if (timings.length === 0) return null;
  if (timings.every(fits)) return descriptor;
  return fewerRates(slower(descriptor), fits);
}

/** Without what is fastest in it. */
function slower(descriptor: VideoFormatDescriptor): VideoFormatDescriptor {
  const { factorBits, by25, by30 } = descriptor;
  const highest = 31 - Math.clz32(factorBits);
  const fastestFactor = by25 || by30 ? 25 * (factors[highest] ?? 0) : 0;
  if (descriptor.at144 && fastestFactor < 144) return { ...descriptor, at144: false };
  if (descriptor.at48 && fastestFactor < 48) return { ...descriptor, at48: false };
  if (fastestFactor === 0) return { ...descriptor, at24: false };
  return { ...descriptor, factorBits: factorBits & ~(1 << highest) };
}
