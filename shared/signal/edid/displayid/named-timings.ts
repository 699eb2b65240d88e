import {
  type CvtBlanking,
  cvtTiming,
  dmtTiming,
  hdmiVicTiming,
  type Timing,
  vicTiming,
} from '../../timings/index.ts';
import { bit, byteAt, littleEndian } from '../bytes.ts';
import type { DisplayIdBlock } from './extension.ts';

/*
 * Blocks of DisplayID that name timings without describing them: by the code of a list, by a bit, or by size and rate with
 * a formula. They are kept as they were read; what they say is read out of them here (DisplayID 1.3 sections 4.4.3 to
 * 4.4.5, 4.4.7, 4.4.8; DisplayID 2.0 sections 4.3.2 to 4.3.4; from memory, checked against edid-decode).
 */

const tags = {
  shortIII: 0x05,
  codesIV: 0x06,
  dmtBits: 0x07,
  vicBits: 0x08,
  shortV: 0x11,
  codesVIII: 0x23,
  formulaIX: 0x24,
  formulaX: 0x2a,
} as const;

export type NamingBlock = Extract<DisplayIdBlock, { kind: 'unknown' }>;

/** True for a block that names timings in one of these ways. */
export const namesTimings = ({ tag }: NamingBlock): boolean => Object.values<number>(tags).includes(tag);

/** The timings that a block names, in its order; none for blocks of other tags and for codes that mean nothing. */
export function namedTimings(block: NamingBlock): Timing[] {
  const { tag, flags, payload } = block;
  switch (tag) {
    case tags.codesIV:
      return codes(payload, 1).flatMap((code) => listed(flags >> 6, code) ?? []);
    case tags.codesVIII:
      return codes(payload, bit(flags, 3) ? 2 : 1).flatMap((code) => listed(flags >> 6, code) ?? []);
    case tags.dmtBits:
      return bitsOf(payload, 10).flatMap((at) => dmtTiming(at + 1) ?? []);
    case tags.vicBits:
      return bitsOf(payload, 8).flatMap((at) => vicTiming(at + 1) ?? []);
    case tags.shortIII:
      return entries(payload, 3).map(shortIII);
    case tags.shortV:
      return entries(payload, 7).map(shortV);
    case tags.formulaIX:
      return entries(payload, 6).map((entry) => byFormula(entry, byteAt(entry, 5) + 1));
    case tags.formulaX: {
      const length = ((flags >> 4) & 7) + 6;
      return entries(payload, length).map((entry) =>
        byFormula(entry, byteAt(entry, 5) + (length > 6 ? (byteAt(entry, 6) & 3) * 256 : 0) + 1),
      );
    }
    default:
      return [];
  }
}

const entries = (payload: Uint8Array, length: number): Uint8Array[] =>
  Array.from({ length: Math.floor(payload.length / length) }, (_, i) =>
    payload.subarray(i * length, (i + 1) * length),
  );

const codes = (payload: Uint8Array, width: 1 | 2): number[] =>
  entries(payload, width).map((entry) => littleEndian(entry, 0, width));

const bitsOf = (payload: Uint8Array, most: number): number[] =>
  Array.from({ length: Math.min(payload.length, most) * 8 }, (_, at) => at).filter((at) =>
    bit(byteAt(payload, at >> 3), at & 7),
  );

/** Code lists by the two bits that name them: DMT, CTA-861, HDMI. */
function listed(list: number, code: number): Timing | null {
  if (list === 0) return dmtTiming(code);
  if (list === 1) return vicTiming(code);
  return list === 2 ? hdmiVicTiming(code) : null;
}

const ratios = [1, 4 / 5, 3 / 4, 9 / 15, 9 / 16, 10 / 16, 27 / 64, 135 / 256] as const;

/** Three bytes: formula and ratio, width in cells of eight, rate. */
function shortIII(entry: Uint8Array): Timing {
  const [head, width, rate] = [byteAt(entry, 0), byteAt(entry, 1), byteAt(entry, 2)];
  const widthPx = (width + 1) * 8;
  return cvtTiming({
    widthPx,
    heightPx: Math.floor(widthPx * (ratios[head & 15] ?? 1)),
    refreshHz: (rate & 127) + 1,
    interlaced: bit(rate, 7),
    blanking: ((head >> 4) & 7) === 1 ? 'reduced1' : 'standard',
  });
}

/**
 * Seven bytes: options, one reserved, width, height, rate; always with the second reduced blanking. An option says that
 * the rate divided by 1.001 is taken besides, which is no other format.
 */
const shortV = (entry: Uint8Array): Timing =>
  cvtTiming({
    widthPx: littleEndian(entry, 2, 2) + 1,
    heightPx: littleEndian(entry, 4, 2) + 1,
    refreshHz: byteAt(entry, 6) + 1,
    blanking: 'reduced2',
  });

const formulas: readonly CvtBlanking[] = ['standard', 'reduced1', 'reduced2', 'reduced3'];

/** Options with the formula, width, height; the rate lies where its type has it. */
function byFormula(entry: Uint8Array, rateHz: number): Timing {
  return cvtTiming({
    widthPx: littleEndian(entry, 1, 2) + 1,
    heightPx: littleEndian(entry, 3, 2) + 1,
    refreshHz: rateHz,
    blanking: formulas[byteAt(entry, 0) & 7] ?? 'standard',
  });
}
