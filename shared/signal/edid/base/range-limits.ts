import { bit, byteAt } from '../bytes.ts';

/** How a source may make timings between the limits (E-EDID A.2 section 3.10.3.3.1, byte 10). */
export type RangeTiming =
  | { kind: 'defaultGtf' }
  | { kind: 'rangeOnly' }
  | { kind: 'secondaryGtf'; startKHz: number; c: number; m: number; k: number; j: number }
  | {
      kind: 'cvt';
      version: number;
      /** 250 kHz steps to take off the maximum pixel clock, 0..63. */
      clockSteps: number;
      /** 0 for no limit. */
      maxActivePx: number;
      aspectFlags: number;
      preferredAspectCode: number;
      standardBlanking: boolean;
      reducedBlanking: boolean;
      scalingFlags: number;
      preferredRefreshHz: number;
    }
  | { kind: 'other'; code: number; data: Uint8Array };

/** Display range limits (E-EDID A.2 section 3.10.3.3). */
export type RangeLimits = {
  minVerticalHz: number;
  maxVerticalHz: number;
  minHorizontalKHz: number;
  maxHorizontalKHz: number;
  /** In steps of 10 MHz as written; 0 where not stated. */
  maxPixelClockMHz: number;
  timing: RangeTiming;
};

const highest = 255;

function decodeTiming(bytes: Uint8Array): RangeTiming {
  switch (byteAt(bytes, 10)) {
    case 0:
      return { kind: 'defaultGtf' };
    case 1:
      return { kind: 'rangeOnly' };
    case 2:
      return {
        kind: 'secondaryGtf',
        startKHz: byteAt(bytes, 12) * 2,
        c: byteAt(bytes, 13) / 2,
        m: byteAt(bytes, 14) + byteAt(bytes, 15) * 256,
        k: byteAt(bytes, 16),
        j: byteAt(bytes, 17) / 2,
      };
    case 4:
      return {
        kind: 'cvt',
        version: byteAt(bytes, 11),
        clockSteps: byteAt(bytes, 12) >> 2,
        maxActivePx: (byteAt(bytes, 13) + (byteAt(bytes, 12) & 3) * 256) * 8,
        aspectFlags: byteAt(bytes, 14),
        preferredAspectCode: byteAt(bytes, 15) >> 5,
        standardBlanking: bit(byteAt(bytes, 15), 3),
        reducedBlanking: bit(byteAt(bytes, 15), 4),
        scalingFlags: byteAt(bytes, 16),
        preferredRefreshHz: byteAt(bytes, 17),
      };
    default:
      return { kind: 'other', code: byteAt(bytes, 10), data: bytes.slice(11, 18) };
  }
}

/** Bytes 10 to 17. Unused ones hold a line feed and spaces (E-EDID A.2 table 3.27). */
function encodeTiming(timing: RangeTiming): number[] {
  const filler = [0x0a, 0x20, 0x20, 0x20, 0x20, 0x20, 0x20];
  switch (timing.kind) {
    case 'defaultGtf':
      return [0, ...filler];
    case 'rangeOnly':
      return [1, ...filler];
    case 'secondaryGtf':
      return [2, 0, timing.startKHz / 2, timing.c * 2, timing.m & 255, timing.m >> 8, timing.k, timing.j * 2];
    case 'cvt': {
      const eighths = timing.maxActivePx / 8;
      return [
        4,
        timing.version,
        timing.clockSteps * 4 + (eighths >> 8),
        eighths & 255,
        timing.aspectFlags,
        timing.preferredAspectCode * 32 +
          (timing.reducedBlanking ? 16 : 0) +
          (timing.standardBlanking ? 8 : 0),
        timing.scalingFlags,
        timing.preferredRefreshHz,
      ];
    }
    case 'other':
      return [timing.code, ...timing.data];
  }
}

/** Offsets for rates above 255 (E-EDID A.2 table 3.26, byte 4): bits 1 and 0 vertical, 3 and 2 horizontal. */
function readRange(low: number, high: number, flags: number): [number, number] {
  const raise = flags & 2 ? highest : 0;
  return [low + (flags === 3 ? highest : 0), high + raise];
}

function writeRange(low: number, high: number): { low: number; high: number; flags: number } {
  if (low > highest) return { low: low - highest, high: high - highest, flags: 3 };
  if (high > highest) return { low, high: high - highest, flags: 2 };
  return { low, high, flags: 0 };
}

/** Reads the 18 bytes of a range limits descriptor. */
export function decodeRangeLimits(bytes: Uint8Array): RangeLimits {
  const [minVerticalHz, maxVerticalHz] = readRange(byteAt(bytes, 5), byteAt(bytes, 6), byteAt(bytes, 4) & 3);
  const [minHorizontalKHz, maxHorizontalKHz] = readRange(
    byteAt(bytes, 7),
    byteAt(bytes, 8),
    (byteAt(bytes, 4) >> 2) & 3,
  );
  return {
    minVerticalHz,
    maxVerticalHz,
    minHorizontalKHz,
    maxHorizontalKHz,
    maxPixelClockMHz: byteAt(bytes, 9) * 10,
    timing: decodeTiming(bytes),
  };
}

/** Bytes 4 to 17 of the descriptor. */
export function encodeRangeLimits(limits: RangeLimits): number[] {
  const vertical = writeRange(limits.minVerticalHz, limits.maxVerticalHz);
  const horizontal = writeRange(limits.minHorizontalKHz, limits.maxHorizontalKHz);
  return [
    horizontal.flags * 4 + vertical.flags,
    vertical.low,
    vertical.high,
    horizontal.low,
    horizontal.high,
    limits.maxPixelClockMHz / 10,
    ...encodeTiming(limits.timing),
  ];
}
