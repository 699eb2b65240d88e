import { ctaTimings } from './cta-861.ts';
import { refreshHz, type Timing } from './timing.ts';

/**
 * The sizes that CTA-861-I names by a resolution identification code (RID), from 1 on (table 11, from memory; checked
 * against edid-decode).
 */
const sizes: readonly (readonly [widthPx: number, heightPx: number, aspect: `${number}:${number}`])[] = [
  [1280, 720, '16:9'],
  [1280, 720, '64:27'],
  [1680, 720, '64:27'],
  [1920, 1080, '16:9'],
  [1920, 1080, '64:27'],
  [2560, 1080, '64:27'],
  [3840, 1080, '32:9'],
  [2560, 1440, '16:9'],
  [3440, 1440, '64:27'],
  [5120, 1440, '32:9'],
  [3840, 2160, '16:9'],
  [3840, 2160, '64:27'],
  [5120, 2160, '64:27'],
  [7680, 2160, '32:9'],
  [5120, 2880, '16:9'],
  [5120, 2880, '64:27'],
  [6880, 2880, '64:27'],
  [10240, 2880, '32:9'],
  [7680, 4320, '16:9'],
  [7680, 4320, '64:27'],
  [10240, 4320, '64:27'],
  [15360, 4320, '32:9'],
  [11520, 6480, '16:9'],
  [11520, 6480, '64:27'],
  [15360, 6480, '64:27'],
  [15360, 8640, '16:9'],
  [15360, 8640, '64:27'],
  [20480, 8640, '64:27'],
];

/** Rates of the same family share line rate and clock, and differ in their blank lines (CTA-861-I section 4.2). */
const families: readonly { rates: readonly number[]; lineStep: number }[] = [
  { rates: [24, 25, 30], lineStep: 20 },
  { rates: [48, 50, 60], lineStep: 20 },
  { rates: [100, 120], lineStep: 5 },
  { rates: [144], lineStep: 1 },
  { rates: [200, 240], lineStep: 5 },
  { rates: [300, 360], lineStep: 5 },
  { rates: [400, 480], lineStep: 5 },
];

/** Whole rates that an Optimized Video Timing can have, Hz. */
export const ovtRates: readonly number[] = families.flatMap(({ rates }) => rates);

/* All constants: CTA-861-I section 4.2 (from memory; the outcome is checked against edid-decode). */
const minBlankUs = 460;
const minBlankLines = 20;
const syncUsBeforePicture = 400;
const minSyncLinesBeforePicture = 14;
const syncPx = 32;
const syncLines = 8;
const clockStepHz = 1000;
const cellPx = 8;
const minBlankPx = 80;
/** From this clock on a picture also has to go in half its pixels, as YCbCr 4:2:0 does; so its blanking counts half. */
const halvedFromHz = 590_000_000;
const minHalvedBlankPx = 128;
/** What one pipe of a sink can do; cells grow with how many of them work side by side. */
const pipeHz = 650_000_000;
/** Audio at 192 kHz with the clock's tolerance; packets of 32 pixels, and as many for what surrounds them. */
const audioPacketsPerS = 195_000;
const packetPx = 32;

/**
 * The picture of a RID at a whole rate of `ovtRates`: the CTA-861 format where the standard has one of that size, aspect
 * and rate, else the Optimized Video Timing. Null for a RID without a meaning. Source: CTA-861-I section 4.2.
 */
export function ridTiming(rid: number, rateHz: number): Timing | null {
  const key = rid * 1000 + rateHz;
  const found = known.get(key);
  if (found !== undefined) return found;
  const timing = timingOf(rid, rateHz);
  if (timing) known.set(key, timing);
  return timing;
}

/** Each is worked out once: a block can name hundreds, an EDID as many blocks. */
const known = new Map<number, Timing>();

function timingOf(rid: number, rateHz: number): Timing | null {
  const size = sizes[rid - 1];
  if (!size) return null;
  const [widthPx, heightPx, aspect] = size;
  const [width = 0, height = 0] = aspect.split(':').map(Number);
  const picture = { widthPx, heightPx, interlaced: false, aspect: { width, height } };
  return ctaTimingOf(picture, rateHz) ?? ovtTiming(picture, rateHz);
}

type Progressive = Pick<Timing, 'widthPx' | 'heightPx' | 'aspect' | 'interlaced'>;

function ctaTimingOf(picture: Progressive, rateHz: number): Timing | null {
  for (const timing of ctaTimings.values()) {
    const { widthPx, heightPx, interlaced, aspect } = timing;
    const same =
      widthPx === picture.widthPx &&
      heightPx === picture.heightPx &&
      !interlaced &&
      aspect.width === picture.aspect.width &&
      aspect.height === picture.aspect.height;
    if (same && Math.abs(refreshHz(timing) - rateHz) < rateHz * 0.0005) return timing;
  }
  return null;
}

function ovtTiming(picture: Progressive, rateHz: number): Timing | null {
  const family = families.find(({ rates }) => rates.includes(rateHz));
  if (!family) return null;
  const fastestHz = Math.max(...family.rates);
  const fewestLines = stepsOf(leastLines(picture.heightPx, fastestHz), family.lineStep);
  const { widthPx: totalPx, lines } = smallestFrame(picture.widthPx, fewestLines, {
    rateHz: fastestHz,
    lineStep: family.lineStep,
  });
  const lineHz = fastestHz * lines;
  const beforePicture = Math.max(
    minSyncLinesBeforePicture,
    Math.ceil((syncUsBeforePicture * lineHz) / 1_000_000),
  );
  return {
    ...picture,
    pixelClockKHz: (totalPx * lineHz) / 1000,
    horizontal: {
      frontPorch: totalPx - picture.widthPx - 2 * syncPx,
      sync: syncPx,
      backPorch: syncPx,
      positiveSync: true,
    },
    vertical: {
      frontPorch: lineHz / rateHz - picture.heightPx - beforePicture,
      sync: syncLines,
      backPorch: beforePicture - syncLines,
      positiveSync: true,
    },
    halfLineFields: false,
  };
}

const stepsOf = (value: number, step: number): number => Math.ceil(value / step) * step;

function leastLines(heightPx: number, rateHz: number): number {
  const lineUs = (1_000_000 / rateHz - minBlankUs) / heightPx;
  return heightPx + Math.max(minBlankLines, Math.ceil(minBlankUs / lineUs));
}

/** The frame of fewest pixels, blanking included, whose clock is whole kilohertz and whose blanking has room for audio. */
function smallestFrame(
  activePx: number,
  fewestLines: number,
  { rateHz, lineStep }: { rateHz: number; lineStep: number },
): { widthPx: number; lines: number } {
  const packets = Math.ceil(audioPacketsPerS / (rateHz * fewestLines));
  const forAudioPx = packetPx + packetPx * packets;
  const blankPx = Math.max(minBlankPx, forAudioPx);
  const halvedBlankPx = Math.max(minHalvedBlankPx, 2 * forAudioPx);
  const pipes = Math.ceil((rateHz * (activePx + blankPx) * fewestLines) / pipeHz);
  const stepPx = Math.max(cellPx, 2 ** Math.ceil(Math.log2(pipes)));
  const leastPx = stepsOf(activePx + blankPx, stepPx);
  let best = { widthPx: Number.POSITIVE_INFINITY, lines: 1 };
  for (let lines = fewestLines; leastPx * lines < best.widthPx * best.lines; lines += lineStep) {
    for (let widthPx = leastPx; widthPx * lines < best.widthPx * best.lines; widthPx += stepPx) {
      const clockHz = widthPx * lines * rateHz;
      const roomy = clockHz < halvedFromHz || widthPx >= activePx + halvedBlankPx;
      if (roomy && clockHz % clockStepHz === 0) best = { widthPx, lines };
    }
  }
  return best;
}
