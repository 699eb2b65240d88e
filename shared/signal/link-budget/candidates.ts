import type { VideoFormat } from '../../contract/chain.ts';

type Sampling = Pick<VideoFormat, 'encoding' | 'bitsPerComponent'>;

/** Heights, with the width that goes with each, and rates that home cinema uses (common practice). */
const sizes = [
  { widthPx: 7680, heightPx: 4320 },
  { widthPx: 3840, heightPx: 2160 },
  { widthPx: 1920, heightPx: 1080 },
  { widthPx: 1280, heightPx: 720 },
];
const ratesHz = [120, 60, 50, 24];

/**
 * Best first: more bits up to 12 before finer colour, since HDR asks for ten (common practice). 4:2:2 is listed once:
 * it costs the same at any depth. 4:4:4 takes what RGB takes.
 */
const samplings: readonly Sampling[] = [
  { encoding: 'rgb', bitsPerComponent: 12 },
  { encoding: 'ycbcr422', bitsPerComponent: 12 },
  { encoding: 'ycbcr420', bitsPerComponent: 12 },
  { encoding: 'rgb', bitsPerComponent: 10 },
  { encoding: 'ycbcr420', bitsPerComponent: 10 },
  { encoding: 'rgb', bitsPerComponent: 8 },
  { encoding: 'ycbcr420', bitsPerComponent: 8 },
];

/** The smallest picture that is sent in 4:2:0 (HDMI 2.0, 7.1: the 2160-line formats; from memory). */
const least420HeightPx = 2160;

/** Formats to look for the best among, best first: by size, then rate, then sampling. */
export const candidateFormats: readonly VideoFormat[] = sizes.flatMap((size) =>
  ratesHz.flatMap((refreshHz) =>
    samplings
      .filter(({ encoding }) => encoding !== 'ycbcr420' || size.heightPx >= least420HeightPx)
      .map((sampling): VideoFormat => ({ ...size, interlaced: false, refreshHz, ...sampling })),
  ),
);
