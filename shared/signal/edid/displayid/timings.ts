import {
  bit,
  byteAt,
  concatBytes,
  flagByte,
  littleEndian,
  toLittleEndian,
  writeLittleEndian,
} from '../bytes.ts';

/** One direction of a DisplayID timing; the porch, sync and blanking are in pixels or lines. */
export type DisplayIdSpan = {
  active: number;
  blank: number;
  frontPorch: number;
  sync: number;
  positiveSync: boolean;
};

/**
 * A detailed timing of DisplayID, types I, II, VI and VII (DisplayID 1.3 sections 4.4.1, 4.4.2, 4.4.6; DisplayID 2.0
 * section 4.3.1). Lines are those of the frame, also when it is interlaced.
 */
export type DisplayIdTiming = {
  pixelClockKHz: number;
  preferred: boolean;
  interlaced: boolean;
  /** 0 none, 1 always, 2 as the viewer chooses, 3 reserved. */
  stereoCode: number;
  /** Types I and VII: 0 is 1:1, 1 5:4, 2 4:3, 3 15:9, 4 16:9, 5 16:10, 6 64:27, 7 256:135, 8 undefined; else null. */
  aspectCode: number | null;
  horizontal: DisplayIdSpan;
  vertical: DisplayIdSpan;
  /** Type VI alone: three bytes with the picture's size, if it is given. */
  imageSize: Uint8Array | null;
};

export type DetailedTimingType = 'I' | 'II' | 'VI' | 'VII';

const lengths = { I: 20, II: 11, VI: 14, VII: 20 } as const;
const imageSizeLength = 3;

/** Types I (steps of 10 kHz) and VII (1 kHz): every field holds its value less one. */
function decodeLong(bytes: Uint8Array, stepKHz: 1 | 10): DisplayIdTiming {
  const options = byteAt(bytes, 3);
  return {
    pixelClockKHz: (littleEndian(bytes, 0, 3) + 1) * stepKHz,
    preferred: bit(options, 7),
    interlaced: bit(options, 4),
    stereoCode: (options >> 5) & 3,
    aspectCode: options & 15,
    horizontal: decodeLongSpan(bytes, 4),
    vertical: decodeLongSpan(bytes, 12),
    imageSize: null,
  };
}

function decodeLongSpan(bytes: Uint8Array, from: number): DisplayIdSpan {
  const frontPorch = littleEndian(bytes, from + 4, 2);
  return {
    active: littleEndian(bytes, from, 2) + 1,
    blank: littleEndian(bytes, from + 2, 2) + 1,
    frontPorch: (frontPorch & 0x7fff) + 1,
    sync: littleEndian(bytes, from + 6, 2) + 1,
    positiveSync: bit(frontPorch, 15),
  };
}

function encodeLong(timing: DisplayIdTiming, stepKHz: 1 | 10): Uint8Array {
  const bytes = new Uint8Array(lengths.I);
  writeLittleEndian(bytes, 0, { value: Math.round(timing.pixelClockKHz / stepKHz) - 1, count: 3 });
  bytes[3] =
    (timing.preferred ? 128 : 0) +
    timing.stereoCode * 32 +
    (timing.interlaced ? 16 : 0) +
    (timing.aspectCode ?? 0);
  writeLongSpan(bytes, 4, timing.horizontal);
  writeLongSpan(bytes, 12, timing.vertical);
  return bytes;
}

function writeLongSpan(into: Uint8Array, at: number, span: DisplayIdSpan): void {
  const words = [
    span.active - 1,
    span.blank - 1,
    span.frontPorch - 1 + (span.positiveSync ? 0x8000 : 0),
    span.sync - 1,
  ];
  words.forEach((value, i) => {
    writeLittleEndian(into, at + 2 * i, { value, count: 2 });
  });
}

/** Type II: horizontal values in steps of eight pixels. */
function decodeShort(bytes: Uint8Array): DisplayIdTiming {
  const options = byteAt(bytes, 3);
  return {
    pixelClockKHz: (littleEndian(bytes, 0, 3) + 1) * 10,
    preferred: bit(options, 7),
    interlaced: bit(options, 4),
    stereoCode: (options >> 5) & 3,
    aspectCode: null,
    horizontal: {
      active: (byteAt(bytes, 4) + (byteAt(bytes, 5) & 1) * 256 + 1) * 8,
      blank: ((byteAt(bytes, 5) >> 1) + 1) * 8,
      frontPorch: ((byteAt(bytes, 6) >> 4) + 1) * 8,
      sync: ((byteAt(bytes, 6) & 15) + 1) * 8,
      positiveSync: bit(options, 3),
    },
    vertical: {
      active: byteAt(bytes, 7) + (byteAt(bytes, 8) & 15) * 256 + 1,
      blank: byteAt(bytes, 9) + 1,
      frontPorch: (byteAt(bytes, 10) >> 4) + 1,
      sync: (byteAt(bytes, 10) & 15) + 1,
      positiveSync: bit(options, 2),
    },
    imageSize: null,
  };
}

function encodeShort(timing: DisplayIdTiming): number[] {
  const { horizontal: h, vertical: v } = timing;
  const cells = h.active / 8 - 1;
  return [
    ...toLittleEndian(Math.round(timing.pixelClockKHz / 10) - 1, 3),
    (timing.preferred ? 128 : 0) +
      timing.stereoCode * 32 +
      flagByte(timing.interlaced, h.positiveSync, v.positiveSync, false, false),
    cells & 255,
    (h.blank / 8 - 1) * 2 + (cells >> 8),
    (h.frontPorch / 8 - 1) * 16 + h.sync / 8 - 1,
    (v.active - 1) & 255,
    (v.active - 1) >> 8,
    v.blank - 1,
    (v.frontPorch - 1) * 16 + v.sync - 1,
  ];
}

/** Type VI: 14 bytes, or 17 with the picture's size. */
function decodeMiddle(bytes: Uint8Array): DisplayIdTiming {
  return {
    pixelClockKHz: (littleEndian(bytes, 0, 3) & 0x3fffff) + 1,
    preferred: bit(byteAt(bytes, 2), 7),
    interlaced: bit(byteAt(bytes, 13), 7),
    stereoCode: (byteAt(bytes, 13) >> 5) & 3,
    aspectCode: null,
    horizontal: {
      active: byteAt(bytes, 3) + (byteAt(bytes, 4) & 63) * 256 + 1,
      blank: byteAt(bytes, 7) + (byteAt(bytes, 9) & 15) * 256 + 1,
      frontPorch: byteAt(bytes, 8) + (byteAt(bytes, 9) >> 4) * 256 + 1,
      sync: byteAt(bytes, 10) + 1,
      positiveSync: bit(byteAt(bytes, 4), 7),
    },
    vertical: {
      active: byteAt(bytes, 5) + (byteAt(bytes, 6) & 63) * 256 + 1,
      blank: byteAt(bytes, 11) + 1,
      frontPorch: byteAt(bytes, 12) + 1,
      sync: (byteAt(bytes, 13) & 15) + 1,
      positiveSync: bit(byteAt(bytes, 6), 7),
    },
    imageSize: bit(byteAt(bytes, 2), 6) ? bytes.slice(14, 14 + imageSizeLength) : null,
  };
}

function encodeMiddle(timing: DisplayIdTiming): number[] {
  const { horizontal: h, vertical: v, imageSize } = timing;
  const [clock0 = 0, clock1 = 0, clock2 = 0] = toLittleEndian(timing.pixelClockKHz - 1, 3);
  const size = (span: DisplayIdSpan) => [
    (span.active - 1) & 255,
    ((span.active - 1) >> 8) + (span.positiveSync ? 128 : 0),
  ];
  return [
    clock0,
    clock1,
    clock2 + flagByte(timing.preferred, imageSize !== null) * 64,
    ...size(h),
    ...size(v),
    (h.blank - 1) & 255,
    (h.frontPorch - 1) & 255,
    ((h.frontPorch - 1) >> 8) * 16 + ((h.blank - 1) >> 8),
    h.sync - 1,
    v.blank - 1,
    v.frontPorch - 1,
    (timing.interlaced ? 128 : 0) + timing.stereoCode * 32 + v.sync - 1,
    ...(imageSize ?? []),
  ];
}

const lengthAt = (type: DetailedTimingType, bytes: Uint8Array, at: number): number =>
  lengths[type] + (type === 'VI' && bit(byteAt(bytes, at + 2), 6) ? imageSizeLength : 0);

const decoders = {
  I: (bytes: Uint8Array) => decodeLong(bytes, 10),
  II: decodeShort,
  VI: decodeMiddle,
  VII: (bytes: Uint8Array) => decodeLong(bytes, 1),
} as const;

/** Reads whole timings; `left` is how many bytes at the end are not one. */
export function decodeDisplayIdTimings(
  type: DetailedTimingType,
  payload: Uint8Array,
): { timings: DisplayIdTiming[]; left: number } {
  const timings: DisplayIdTiming[] = [];
  let at = 0;
  for (let length = lengthAt(type, payload, at); at + length <= payload.length; ) {
    timings.push(decoders[type](payload.subarray(at, at + length)));
    at += length;
    length = lengthAt(type, payload, at);
  }
  return { timings, left: payload.length - at };
}

const encoders: Record<DetailedTimingType, (timing: DisplayIdTiming) => Uint8Array | number[]> = {
  I: (timing: DisplayIdTiming) => encodeLong(timing, 10),
  II: encodeShort,
  VI: encodeMiddle,
  VII: (timing: DisplayIdTiming) => encodeLong(timing, 1),
};

export const encodeDisplayIdTimings = (
  type: DetailedTimingType,
  timings: readonly DisplayIdTiming[],
): Uint8Array => concatBytes(timings.map(encoders[type]));
