import { horizontalBlankingPx, type Timing, totalWidthPx } from '../timings/index.ts';
import {
  assumedAudioPacketsHz,
  audioPacketsPerLine,
  charactersPerActiveTriByte,
  leastBlankingCharacters,
  maxBorrowedTriBytes,
  shortestLineS,
} from './frl.ts';
import { type FrlRate, frlBitRateGbps, frlOverhead, surelyCharactersHz } from './frl-rates.ts';
import type { Sampling } from './tmds.ts';

/** What a sink takes of compressed video, from the HDMI Forum block of its EDID (HDMI 2.1, 10.3.2, from memory). */
export type CompressionCapabilities = {
  maxRate: FrlRate;
  maxSlices: number;
  /** The fastest pixel clock that one slice stands. */
  maxSliceClockMHz: number;
  /** Bytes of compressed data in one line, at most. */
  maxLineBytes: number;
  /** Targets above 12 bits a pixel, in steps of a sixteenth. */
  allTargets: boolean;
  native420: boolean;
  /** Depths beside 8 bits. */
  bitsPerComponent: readonly number[];
};

export type CompressedFit = {
  /** Bits a pixel after compression, in steps of a sixteenth. */
  bitsPerPixel: number;
  slices: number;
  /** Against the same picture uncompressed. */
  ratio: number;
};

/** Slice counts that the packing knows, and the widest slice. HDMI 2.1, 7.7 (from memory). */
const sliceCounts = [1, 2, 4, 8, 12, 16];
const maxSlicePx = 2720;
/** Above this pixel clock a slice may run at 400 MHz in place of 340 (from memory). */
const fastClockMHz = 2720;
/** No target above this unless the sink says it takes them all. HDMI 2.1, 7.7 (from memory). */
const maxPlainTarget = 12;

/**
 * The best compression (most bits a pixel) that carries a picture over a rate to a sink; null when none does.
 *
 * Slices, targets and the bytes of a line follow HDMI 2.1, clause 7.7 and table 7-23 as far as known from memory.
 * Whether the source compresses at all isn't known from an EDID.
 */
export function compressedFit(
  timing: Timing,
  sampling: Sampling,
  rate: FrlRate,
  sink: CompressionCapabilities,
): CompressedFit | null {
  if (frlBitRateGbps(rate) > frlBitRateGbps(sink.maxRate)) return null;
  if (!takes(sink, sampling)) return null;
  const slices = sliceCount(timing, sampling, sink);
  if (slices === null) return null;
  const { least, most, plain } = targets(sampling, sink.allTargets);
  for (let sixteenths = most * 16; sixteenths >= least * 16; sixteenths -= 1) {
    const bitsPerPixel = sixteenths / 16;
    const bytes = lineBytes(timing, bitsPerPixel, slices);
    if (bytes <= sink.maxLineBytes && lineFits(timing, bytes, rate))
      return { bitsPerPixel, slices, ratio: plain / bitsPerPixel };
  }
  return null;
}

function takes(sink: CompressionCapabilities, { encoding, bitsPerComponent }: Sampling): boolean {
  if (encoding === 'ycbcr420' && !sink.native420) return false;
  return bitsPerComponent === 8 || sink.bitsPerComponent.includes(bitsPerComponent);
}

/** Bits a pixel from, to, and uncompressed. */
function targets({ encoding, bitsPerComponent }: Sampling, all: boolean) {
  const [least, components] = encoding === 'ycbcr420' ? [6, 1.5] : encoding === 'ycbcr422' ? [7, 2] : [8, 3];
  const plain = components * bitsPerComponent;
  return { least, most: all ? plain : Math.min(plain, maxPlainTarget), plain };
}

function sliceCount(timing: Timing, { encoding }: Sampling, sink: CompressionCapabilities): number | null {
  // Two pixels of 4:2:2 and 4:2:0 go through a slice at once.
  const atOnce = encoding === 'ycbcr422' || encoding === 'ycbcr420' ? 2 : 1;
  const clockMHz = timing.pixelClockKHz / 1000 / atOnce;
  const sliceClockMHz = Math.min(clockMHz > fastClockMHz ? 400 : 340, sink.maxSliceClockMHz);
  const enough = sliceCounts.find(
    (count) => count * sliceClockMHz >= clockMHz && timing.widthPx / count <= maxSlicePx,
  );
  return enough !== undefined && enough <= sink.maxSlices ? enough : null;
}

const lineBytes = (timing: Timing, bitsPerPixel: number, slices: number): number =>
  slices * Math.ceil((bitsPerPixel * Math.ceil(timing.widthPx / slices)) / 8);

/**
 * Whether a line of so many bytes goes within the link's time and the sink's buffer.
 *
 * Source: HDMI 2.1, clause 6.5.6.2, compressed video, as open display drivers have it: blanking is sent in groups of
 * four, in proportion to the picture where there is room and never less than the audio takes; what the picture is late
 * by, and what it strays from its place in an uncompressed line, must fit the sink's buffer.
 */
function lineFits(timing: Timing, bytes: number, rate: FrlRate): boolean {
  const lineS = shortestLineS(timing);
  const payloadHz = surelyCharactersHz(frlBitRateGbps(rate)) * (1 - frlOverhead(rate.lanes));
  const available = Math.floor(payloadHz * lineS);
  const active = Math.ceil(bytes / 3);
  const inProportion = Math.ceil((active * horizontalBlankingPx(timing)) / timing.widthPx);
  const audio = leastBlankingCharacters(audioPacketsPerLine(timing, assumedAudioPacketsHz));
  const room = available - charactersPerActiveTriByte * active;
  const blank = 4 * Math.floor(Math.min(Math.max(inProportion, audio), room) / 4);
  if (blank < audio) return false;

  const share = active / (active + blank);
  const activeShare = Math.max(share, (charactersPerActiveTriByte * active) / (payloadHz * lineS));
  const borrowed = activeShare * (active + blank) - active;
  const usualShare = timing.widthPx / totalWidthPx(timing);
  const strayed = activeShare < usualShare ? usualShare - share : activeShare - usualShare;
  const worst = Math.ceil(Math.max(borrowed, strayed * (active + inProportion)));
  return worst <= maxBorrowedTriBytes && Math.ceil(charactersPerActiveTriByte * active) + blank <= available;
}
