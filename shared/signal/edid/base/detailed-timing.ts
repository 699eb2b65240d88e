import { bit, byteAt, flagByte } from '../bytes.ts';

/** Sync signal of a detailed timing (E-EDID A.2 section 3.10.2, table 3.22, byte 17 bits 4..1). */
export type TimingSync =
  | { kind: 'analogComposite' | 'bipolarAnalogComposite'; serrations: boolean; onAllColours: boolean }
  | { kind: 'digitalComposite'; serrations: boolean; horizontalPositive: boolean }
  | { kind: 'digitalSeparate'; verticalPositive: boolean; horizontalPositive: boolean };

/**
 * An 18-byte detailed timing as it is written (E-EDID A.2 section 3.10.2). Lines are those of one field where
 * `interlaced`; blanking includes the borders. `stereoCode` is bits 6, 5 and 0 of byte 17 (0 and 1: none).
 */
export type DetailedTiming = {
  pixelClockKHz: number;
  interlaced: boolean;
  horizontal: { activePx: number; blankPx: number; frontPorchPx: number; syncPx: number; borderPx: number };
  vertical: {
    activeLines: number;
    blankLines: number;
    frontPorchLines: number;
    syncLines: number;
    borderLines: number;
  };
  imageMm: { width: number; height: number };
  stereoCode: number;
  sync: TimingSync;
};

/** A timing in the terms of people: `heightPx` is that of the whole frame, `refreshHz` counts fields if interlaced. */
export type TimingFacts = {
  widthPx: number;
  heightPx: number;
  interlaced: boolean;
  /** Null where the totals are zero and no rate follows. */
  refreshHz: number | null;
  pixelClockKHz: number;
};

/** Length of a detailed timing or display descriptor in bytes. */
export const descriptorSize = 18;

/**
 * The least pixel clock taken for a timing. The standard allows 10 kHz, but what is written below 10 MHz in the field
 * is filler (0101h...); the reference program draws the same line. Assumed.
 */
export const leastPixelClockKHz = 10_000;

function decodeSync(flags: number): TimingSync {
  const serrations = bit(flags, 2);
  const low = bit(flags, 1);
  switch ((flags >> 3) & 3) {
    case 0:
      return { kind: 'analogComposite', serrations, onAllColours: low };
    case 1:
      return { kind: 'bipolarAnalogComposite', serrations, onAllColours: low };
    case 2:
      return { kind: 'digitalComposite', serrations, horizontalPositive: low };
    default:
      return { kind: 'digitalSeparate', verticalPositive: serrations, horizontalPositive: low };
  }
}

function encodeSync(sync: TimingSync): number {
  switch (sync.kind) {
    case 'analogComposite':
      return flagByte(sync.serrations, sync.onAllColours, false);
    case 'bipolarAnalogComposite':
      return 0x08 | flagByte(sync.serrations, sync.onAllColours, false);
    case 'digitalComposite':
      return 0x10 | flagByte(sync.serrations, sync.horizontalPositive, false);
    case 'digitalSeparate':
      return 0x18 | flagByte(sync.verticalPositive, sync.horizontalPositive, false);
  }
}

/** Reads the 18 bytes of `bytes`; every combination of bits has a meaning. */
export function decodeDetailedTiming(bytes: Uint8Array): DetailedTiming {
  const flags = byteAt(bytes, 17);
  return {
    pixelClockKHz: (byteAt(bytes, 0) + byteAt(bytes, 1) * 256) * 10,
    interlaced: bit(flags, 7),
    horizontal: {
      activePx: byteAt(bytes, 2) + (byteAt(bytes, 4) >> 4) * 256,
      blankPx: byteAt(bytes, 3) + (byteAt(bytes, 4) & 15) * 256,
      frontPorchPx: byteAt(bytes, 8) + (byteAt(bytes, 11) >> 6) * 256,
      syncPx: byteAt(bytes, 9) + ((byteAt(bytes, 11) >> 4) & 3) * 256,
      borderPx: byteAt(bytes, 15),
    },
    vertical: {
      activeLines: byteAt(bytes, 5) + (byteAt(bytes, 7) >> 4) * 256,
      blankLines: byteAt(bytes, 6) + (byteAt(bytes, 7) & 15) * 256,
      frontPorchLines: (byteAt(bytes, 10) >> 4) + ((byteAt(bytes, 11) >> 2) & 3) * 16,
      syncLines: (byteAt(bytes, 10) & 15) + (byteAt(bytes, 11) & 3) * 16,
      borderLines: byteAt(bytes, 16),
    },
    imageMm: {
      width: byteAt(bytes, 12) + (byteAt(bytes, 14) >> 4) * 256,
      height: byteAt(bytes, 13) + (byteAt(bytes, 14) & 15) * 256,
    },
    stereoCode: ((flags >> 5) & 3) * 2 + (flags & 1),
    sync: decodeSync(flags),
  };
}

/** The 18 bytes of a timing; numbers beyond their fields (for example more than 4095 pixels) are cut off. */
export function encodeDetailedTiming(timing: DetailedTiming): Uint8Array {
  const { horizontal: h, vertical: v, imageMm } = timing;
  const clock = Math.round(timing.pixelClockKHz / 10);
  const high = (value: number) => (value >> 8) & 15;
  return Uint8Array.of(
    clock & 255,
    clock >> 8,
    h.activePx,
    h.blankPx,
    high(h.activePx) * 16 + high(h.blankPx),
    v.activeLines,
    v.blankLines,
    high(v.activeLines) * 16 + high(v.blankLines),
    h.frontPorchPx,
    h.syncPx,
    (v.frontPorchLines & 15) * 16 + (v.syncLines & 15),
    ((h.frontPorchPx >> 8) & 3) * 64 +
      ((h.syncPx >> 8) & 3) * 16 +
      ((v.frontPorchLines >> 4) & 3) * 4 +
      ((v.syncLines >> 4) & 3),
    imageMm.width,
    imageMm.height,
    high(imageMm.width) * 16 + high(imageMm.height),
    h.borderPx,
    v.borderLines,
    (timing.interlaced ? 128 : 0) +
      ((timing.stereoCode >> 1) & 3) * 32 +
      encodeSync(timing.sync) +
      (timing.stereoCode & 1),
  );
}

/** True where front porch and sync take more than the blanking, in either direction: the back porch would be negative. */
export const syncOverruns = ({ horizontal: h, vertical: v }: DetailedTiming): boolean =>
  h.frontPorchPx + h.syncPx > h.blankPx || v.frontPorchLines + v.syncLines > v.blankLines;

/** Frames (fields where interlaced) per second; an interlaced field is half a line longer (E-EDID A.2 table 3.22). */
export function refreshHz(
  pixelClockKHz: number,
  totalPx: number,
  totalLines: number,
  interlaced: boolean,
): number | null {
  const dots = totalPx * (totalLines + (interlaced ? 0.5 : 0));
  return dots > 0 ? (pixelClockKHz * 1000) / dots : null;
}

/** The timing in people's terms; rates are exact, not rounded. */
export function timingFacts(timing: DetailedTiming): TimingFacts {
  const { horizontal: h, vertical: v, interlaced, pixelClockKHz } = timing;
  return {
    widthPx: h.activePx,
    heightPx: interlaced ? v.activeLines * 2 : v.activeLines,
    interlaced,
    refreshHz: refreshHz(pixelClockKHz, h.activePx + h.blankPx, v.activeLines + v.blankLines, interlaced),
    pixelClockKHz,
  };
}
