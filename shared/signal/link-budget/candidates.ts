import type { VideoFormat } from '../../contract/chain.ts';

type Sampling = Pick<VideoFormat, 'encoding' | 'bitsPerComponent'>;

/** Sizes and rates that CTA-861 has a raster for (tables 1 to 3), the home's before the cinema's own. */
const sizes = [
  { widthPx: 7680, heightPx: 4320, ratesHz: [60, 50, 30, 25, 24] },
  { widthPx: 3840, heightPx: 2160, ratesHz: [120, 100, 60, 50, 48, 30, 25, 24] },
  { widthPx: 4096, heightPx: 2160, ratesHz: [120, 100, 60, 50, 48, 30, 25, 24] },
  { widthPx: 1920, heightPx: 1080, ratesHz: [120, 100, 60, 50, 48, 30, 25, 24] },
  { widthPx: 1280, heightPx: 720, ratesHz: [120, 100, 60, 50, 48, 30, 25, 24] },
];

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

/** Pictures that are sent in 4:2:0: of 2160 lines and more, at 50 frames a second and more (HDMI 2.0, 7.1; from memory). */
const isSentIn420 = (heightPx: number, refreshHz: number): boolean => heightPx >= 2160 && refreshHz >= 50;

/** Formats to look for the best among, best first: by size, then rate, then sampling. */
export const candidateFormats: readonly VideoFormat[] = sizes.flatMap(({ ratesHz, ...size }) =>
  ratesHz.flatMap((refreshHz) =>
    samplings
      .filter(({ encoding }) => encoding !== 'ycbcr420' || isSentIn420(size.heightPx, refreshHz))
      .map((sampling): VideoFormat => ({ ...size, interlaced: false, refreshHz, ...sampling })),
  ),
);
