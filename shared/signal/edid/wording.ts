import { type FrlRate, frlBitRateGbps, tmdsBitRateGbps } from '../format/index.ts';
import { refreshHz, type Timing } from '../timings/index.ts';
import type { DepthsByEncoding, SinkAudio } from './capabilities.ts';

/** How the trade writes what an EDID says. */

/** Size, scanning and rate: `3840x2160p59.94`; fields for an interlaced one. */
export function formatName(timing: Timing): string {
  const rate = Math.round(refreshHz(timing) * 100) / 100;
  return `${timing.widthPx}x${timing.heightPx}${timing.interlaced ? 'i' : 'p'}${Number.isFinite(rate) ? rate : '?'}`;
}

/** Character rate in MHz with the bit rate of all three channels: 300 MHz are 9 Gbit/s. */
export const tmdsRateName = (characterRateMHz: number): string =>
  `${characterRateMHz} MHz (${Number(tmdsBitRateGbps(characterRateMHz).toFixed(2))} Gbit/s)`;

export const frlName = (rate: FrlRate): string =>
  `${frlBitRateGbps(rate)} Gbit/s (${rate.lanes} lanes of ${rate.gbpsPerLane})`;

const encodingNames = {
  rgb: 'RGB',
  ycbcr444: 'YCbCr 4:4:4',
  ycbcr422: 'YCbCr 4:2:2',
  ycbcr420: 'YCbCr 4:2:0',
} as const;
const encodings = ['rgb', 'ycbcr444', 'ycbcr422', 'ycbcr420'] as const;

/** One name for each encoding and depth. */
export const depthNames = (depths: DepthsByEncoding): string[] =>
  encodings.flatMap((encoding) => depths[encoding].map((depth) => `${encodingNames[encoding]} ${depth} bit`));

/** One name for each encoding with all its depths: `RGB 8/10/12 bit`. */
export const encodingNamesWithDepths = (depths: DepthsByEncoding): string[] =>
  encodings.flatMap((encoding) =>
    depths[encoding].length > 0 ? [`${encodingNames[encoding]} ${depths[encoding].join('/')} bit`] : [],
  );

export const audioName = ({ format, channels, ratesKHz }: SinkAudio): string =>
  [format, channels === null ? null : `${channels} channels`, `${ratesKHz.join('/')} kHz`]
    .filter(Boolean)
    .join(' ');

export const eotfNames = { sdr: 'SDR', hdrGamma: 'traditional gamma HDR', pq: 'PQ', hlg: 'HLG' } as const;
