import { bit, byteAt } from '../bytes.ts';

/** One code of two bytes (E-EDID A.2 section 3.9): refresh 60..123 Hz; before EDID 1.3 `16:10` stood for 1:1. */
export type StandardTiming = { widthPx: number; aspect: '16:10' | '4:3' | '5:4' | '16:9'; refreshHz: number };

/** A timing that is known by its bit alone; rates to a thousandth, as their rasters make them (VESA DMT 1.0 rev. 13). */
export type EstablishedTiming = { widthPx: number; heightPx: number; refreshHz: number; interlaced?: true };

const aspects = ['16:10', '4:3', '5:4', '16:9'] as const;
const heightPerWidth = { '16:10': 10 / 16, '4:3': 3 / 4, '5:4': 4 / 5, '16:9': 9 / 16 } as const;

/** Null for an unused code (0101h). */
export function decodeStandardTiming(first: number, second: number): StandardTiming | null {
  if (first === 1 && second === 1) return null;
  return {
    widthPx: (first + 31) * 8,
    aspect: aspects[second >> 6] ?? '16:10',
    refreshHz: (second & 63) + 60,
  };
}

/** Two bytes a code. */
export function encodeStandardTimings(timings: readonly (StandardTiming | null)[]): Uint8Array {
  const bytes = new Uint8Array(2 * timings.length).fill(1);
  timings.forEach((timing, i) => {
    if (!timing) return;
    bytes[2 * i] = timing.widthPx / 8 - 31;
    bytes[2 * i + 1] = aspects.indexOf(timing.aspect) * 64 + (timing.refreshHz - 60);
  });
  return bytes;
}

/** `count` codes from `from` on. */
export function decodeStandardTimings(
  bytes: Uint8Array,
  from: number,
  count: number,
): (StandardTiming | null)[] {
  const timings: (StandardTiming | null)[] = [];
  for (let at = from; at < from + 2 * count; at += 2)
    timings.push(decodeStandardTiming(byteAt(bytes, at), byteAt(bytes, at + 1)));
  return timings;
}

/** Lines of the picture, whole ones (961.875 are 961); `squareBefore13` for an EDID before 1.3, where the first code meant 1:1. */
export const standardTimingHeightPx = (timing: StandardTiming, squareBefore13 = false): number =>
  squareBefore13 && timing.aspect === '16:10'
    ? timing.widthPx
    : Math.floor(timing.widthPx * heightPerWidth[timing.aspect]);

const rate = (widthPx: number, heightPx: number, hz: number): EstablishedTiming => ({
  widthPx,
  heightPx,
  refreshHz: hz,
});

/** E-EDID A.2 section 3.8, table 3.18: bytes 35 to 37, most significant bit first; the last seven are the maker's. */
const establishedI: readonly EstablishedTiming[] = [
  rate(720, 400, 70.082),
  rate(720, 400, 87.85),
  rate(640, 480, 59.94),
  rate(640, 480, 66.667),
  rate(640, 480, 72.809),
  rate(640, 480, 75),
  rate(800, 600, 56.25),
  rate(800, 600, 60.317),
  rate(800, 600, 72.188),
  rate(800, 600, 75),
  rate(832, 624, 74.551),
  { ...rate(1024, 768, 86.958), interlaced: true },
  rate(1024, 768, 60.004),
  rate(1024, 768, 70.069),
  rate(1024, 768, 75.029),
  rate(1280, 1024, 75.025),
  rate(1152, 870, 75.062),
];

/** E-EDID A.2 section 3.10.3.9: bytes 6 to 11 of the descriptor, most significant bit first. */
const establishedIII: readonly EstablishedTiming[] = [
  rate(640, 350, 85.08),
  rate(640, 400, 85.08),
  rate(720, 400, 85.039),
  rate(640, 480, 85.008),
  rate(848, 480, 60),
  rate(800, 600, 85.061),
  rate(1024, 768, 84.997),
  rate(1152, 864, 75),
  rate(1280, 768, 59.995),
  rate(1280, 768, 59.87),
  rate(1280, 768, 74.893),
  rate(1280, 768, 84.837),
  rate(1280, 960, 60),
  rate(1280, 960, 85.002),
  rate(1280, 1024, 60.02),
  rate(1280, 1024, 85.024),
  rate(1360, 768, 60.015),
  rate(1440, 900, 59.901),
  rate(1440, 900, 59.887),
  rate(1440, 900, 74.984),
  rate(1440, 900, 84.842),
  rate(1400, 1050, 59.948),
  rate(1400, 1050, 59.978),
  rate(1400, 1050, 74.867),
  rate(1400, 1050, 84.96),
  rate(1680, 1050, 59.883),
  rate(1680, 1050, 59.954),
  rate(1680, 1050, 74.892),
  rate(1680, 1050, 84.941),
  rate(1600, 1200, 60),
  rate(1600, 1200, 65),
  rate(1600, 1200, 70),
  rate(1600, 1200, 75),
  rate(1600, 1200, 85),
  rate(1792, 1344, 60),
  rate(1792, 1344, 74.997),
  rate(1856, 1392, 59.995),
  rate(1856, 1392, 75),
  rate(1920, 1200, 59.95),
  rate(1920, 1200, 59.885),
  rate(1920, 1200, 74.93),
  rate(1920, 1200, 84.932),
  rate(1920, 1440, 60),
  rate(1920, 1440, 75),
];

const listed = (table: readonly EstablishedTiming[], bytes: readonly number[]): EstablishedTiming[] =>
  table.filter((_, i) => bit(bytes[i >> 3] ?? 0, 7 - (i & 7)));

/** The established timings I and II that the three bytes 35 to 37 name. */
export const establishedTimings = (bytes: readonly number[]): EstablishedTiming[] =>
  listed(establishedI, bytes);

/** The established timings III that bytes 6 to 11 of their descriptor name. */
export const establishedTimingsIII = (bytes: readonly number[]): EstablishedTiming[] =>
  listed(establishedIII, bytes);

const keptBits = (
  table: readonly EstablishedTiming[],
  bytes: readonly number[],
  keep: (timing: EstablishedTiming) => boolean,
): number[] =>
  bytes.map((value, index) =>
    table
      .slice(index * 8, index * 8 + 8)
      .reduce((kept, timing, i) => (keep(timing) ? kept : kept & ~(128 >> i)), value),
  );

/** Bytes 35 to 37 with the bits of timings that `keep` turns down cleared. */
export function keptEstablished(
  bytes: readonly [number, number, number],
  keep: (timing: EstablishedTiming) => boolean,
): [number, number, number] {
  const [a = 0, b = 0, c = 0] = keptBits(establishedI, bytes, keep);
  return [a, b, c];
}

/** The same for the six bytes of established timings III. */
export const keptEstablishedIII = (
  bytes: readonly number[],
  keep: (timing: EstablishedTiming) => boolean,
): number[] => keptBits(establishedIII, bytes, keep);
