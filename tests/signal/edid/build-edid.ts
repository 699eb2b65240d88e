import type { BaseBlock } from '../../../shared/signal/edid/base/base-block.ts';
import type { Descriptor } from '../../../shared/signal/edid/base/descriptors.ts';
import type { DetailedTiming } from '../../../shared/signal/edid/base/detailed-timing.ts';
import type { DataBlock } from '../../../shared/signal/edid/cta/data-blocks.ts';
import type { CtaExtension } from '../../../shared/signal/edid/cta/extension.ts';
import type { HdmiBlock } from '../../../shared/signal/edid/cta/hdmi.ts';
import type { HdmiForumBlock } from '../../../shared/signal/edid/cta/hdmi-forum.ts';
import type { Edid } from '../../../shared/signal/edid/index.ts';
import { detailedOfRaster } from '../../../shared/signal/edid/raster.ts';
import { vicTiming } from '../../../shared/signal/timings/index.ts';

/** Readable EDIDs for tests: an invented display, changed where a test needs it. */

/** The 18-byte timing of a CTA-861 format. */
export function timingOfVic(vic: number): DetailedTiming {
  const raster = vicTiming(vic);
  const timing = raster && detailedOfRaster(raster, { width: 1600, height: 900 });
  if (!timing) throw new Error(`VIC ${vic} has no 18-byte timing.`);
  return timing;
}

export const timingSlot = (vic: number): Descriptor => ({ kind: 'timing', timing: timingOfVic(vic) });

const limits: Descriptor = {
  kind: 'rangeLimits',
  limits: {
    minVerticalHz: 23,
    maxVerticalHz: 120,
    minHorizontalKHz: 15,
    maxHorizontalKHz: 255,
    maxPixelClockMHz: 1190,
    timing: { kind: 'defaultGtf' },
  },
};

export const baseBlock = (changes: Partial<BaseBlock> = {}): BaseBlock => ({
  version: 1,
  revision: 3,
  manufacturer: 'QZV',
  productCode: 0x1207,
  serialNumber: 0,
  manufacture: { kind: 'made', week: 12, year: 2024 },
  input: { kind: 'digitalBefore14', dfp1Compatible: false },
  screen: { kind: 'size', widthCm: 160, heightCm: 90 },
  gamma: 2.2,
  powerStates: { standby: false, suspend: false, activeOff: false },
  colourTypeCode: 1,
  srgbDefault: false,
  firstTimingNative: true,
  continuousFrequency: false,
  chromaticity: {
    red: { x: 696 / 1024, y: 326 / 1024 },
    green: { x: 307 / 1024, y: 614 / 1024 },
    blue: { x: 154 / 1024, y: 61 / 1024 },
    white: { x: 320 / 1024, y: 337 / 1024 },
  },
  establishedBits: [0x21, 0x08, 0],
  standardTimings: [null, null, null, null, null, null, null, null],
  descriptors: [
    timingSlot(97),
    timingSlot(16),
    { kind: 'text', role: 'productName', text: 'LUMEN WALL 9' },
    limits,
  ],
  ...changes,
});

export const hdmiBlock = (changes: Partial<HdmiBlock> = {}): DataBlock => ({
  kind: 'hdmi',
  hdmi: {
    physicalAddress: '1.0.0.0',
    capabilities: { supportsAi: true, dc48: false, dc36: true, dc30: true, dcY444: true, dviDual: false },
    maxTmdsClockMHz: 300,
    details: null,
    rest: new Uint8Array(),
    ...changes,
  },
});

export const forumBlock = (changes: Partial<HdmiForumBlock> = {}): DataBlock => ({
  kind: 'hdmiForum',
  carrier: 'vendorBlock',
  forum: {
    version: 1,
    maxTmdsCharacterRateMHz: 600,
    flags: {
      scdcPresent: true,
      readRequest: false,
      cableStatus: true,
      colourContentBpc: false,
      scramblingBelow340: false,
      independentView: false,
      dualView: false,
      threeDOsdDisparity: false,
    },
    maxFrlCode: 5,
    deepColour420: { uhdVic: false, dc48: false, dc36: true, dc30: true },
    features: {
      fapaEndExtended: false,
      qms: false,
      mDelta: false,
      cinemaVrr: false,
      negativeMvrr: false,
      fastVactive: false,
      allm: true,
      fapaInBlanking: false,
    },
    vrrMinHz: 48,
    vrrMaxHz: 120,
    dsc: {
      dsc12a: true,
      native420: true,
      qmsTfrMax: false,
      qmsTfrMin: false,
      allBpp: false,
      bpc16: false,
      bpc12: true,
      bpc10: true,
      maxFrlCode: 5,
      maxSlicesCode: 4,
      chunkCode: 7,
    },
    rest: new Uint8Array(),
    ...changes,
  },
});

/** `vics` with the native ones negative. */
export const videoBlock = (...vics: number[]): DataBlock => ({
  kind: 'video',
  formats: vics.map((vic) => ({ vic: Math.abs(vic), native: vic < 0 })),
});

const audio = (formatCode: number, channels: number, detail: number) => ({
  formatCode,
  extendedCode: null,
  channels,
  rateBits: 0b111,
  detail,
  spare: 0,
});

/** L-PCM stereo and 7.1, AC-3 and MAT. */
export const audioBlock: DataBlock = {
  kind: 'audio',
  descriptors: [audio(1, 2, 7), audio(1, 8, 7), audio(2, 6, 80), audio(12, 8, 3)],
};

export const hdrBlock: DataBlock = {
  kind: 'hdrStatic',
  hdr: {
    eotfBits: 0b1101,
    metadataTypeBits: 1,
    maxLuminanceCode: 115,
    maxFrameAverageCode: 96,
    minLuminanceCode: 28,
  },
};

export const dynamicHdrBlock: DataBlock = {
  kind: 'vendor',
  scope: 'video',
  oui: '02-A1-B2',
  payload: Uint8Array.of(1, 2, 3, 4, 5),
};

export const ctaExtension = (
  dataBlocks: readonly DataBlock[],
  changes: Partial<CtaExtension> = {},
): CtaExtension => ({
  kind: 'cta',
  revision: 3,
  underscan: true,
  basicAudio: true,
  ycbcr444: true,
  ycbcr422: true,
  nativeTimings: 1,
  dataBlocks,
  timings: [],
  ...changes,
});

const videoCapability: DataBlock = {
  kind: 'videoCapability',
  capability: {
    selectableYccRange: true,
    selectableRgbRange: true,
    preferredOverscan: 0,
    itOverscan: 2,
    ceOverscan: 2,
  },
};

/** A display that takes 40 Gbit/s FRL, 2160p120, 4:2:0, HDR and 7.1 audio. */
export const wallDisplay: Edid = {
  base: baseBlock(),
  extensions: [
    ctaExtension(
      [
        videoBlock(16, 31, 97, 96, 118, 117, 93, 4),
        audioBlock,
        { kind: 'speakers', allocation: 0b1001111 },
        videoCapability,
        hdmiBlock(),
        forumBlock(),
        { kind: 'ycbcr420Map', map: Uint8Array.of(0b00111100) },
        { kind: 'colorimetry', bits: 0x00e0 },
        hdrBlock,
        dynamicHdrBlock,
      ],
      { timings: [timingSlot(4)] },
    ),
  ],
};

/** The display without FRL and with what exceeds 600 MHz as 4:2:0 only: a chain of 18 Gbit/s. */
export const plainDisplay: Edid = {
  base: baseBlock(),
  extensions: [
    ctaExtension([
      videoBlock(16, 97, 95, 4),
      audioBlock,
      { kind: 'speakers', allocation: 0b1001111 },
      videoCapability,
      hdmiBlock(),
      forumBlock({ maxFrlCode: 0, features: null, vrrMinHz: null, vrrMaxHz: null, dsc: null }),
      { kind: 'ycbcr420Video', formats: [{ vic: 118, native: false }] },
      hdrBlock,
    ]),
  ],
};
