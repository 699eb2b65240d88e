import {
  type CvtBlanking,
  cvtTiming,
  dmtTimings,
  gtfTiming,
  refreshHz,
  type TableRow,
  type Timing,
  timingsById,
} from '../timings/index.ts';
import type { BaseBlock } from './base/base-block.ts';
import type { CvtCode } from './base/descriptors.ts';
import {
  type EstablishedTiming,
  type StandardTiming,
  standardTimingHeightPx,
} from './base/standard-timings.ts';

/* The rasters of what an EDID names by size and rate alone. */

/**
 * Established timings that are in no list of VESA's: of early makers of computers (E-EDID A.2 table 3.18 names them,
 * and no raster; these are the usual ones, from memory, and those of edid-decode).
 */
const legacyRows: readonly TableRow[] = [
  [1, 720, 400, 'p', '9:5', 28_320, 18, 108, 54, '-', 21, 2, 26, '+'],
  [2, 720, 400, 'p', '9:5', 35_500, 18, 108, 54, '-', 12, 2, 35, '+'],
  [3, 640, 480, 'p', '4:3', 30_240, 64, 64, 96, '-', 3, 3, 39, '-'],
  [4, 832, 624, 'p', '4:3', 57_284, 32, 64, 224, '-', 1, 3, 39, '-'],
  [5, 1152, 870, 'p', '192:145', 100_000, 48, 128, 128, '+', 3, 3, 39, '+'],
];

/** Standard timings name whole rates; their rasters in DMT lie within this of them (assumed). */
const nominalToleranceHz = 0.6;
const exactToleranceHz = 0.005;

const sizeKey = (size: { widthPx: number; heightPx: number; interlaced?: boolean }): string =>
  `${size.widthPx}x${size.heightPx}${size.interlaced ? 'i' : ''}`;

type Listed = { timing: Timing; rateHz: number };
const listedBySize = new Map<string, Listed[]>();
for (const timing of [...dmtTimings.values(), ...timingsById(legacyRows).values()]) {
  const key = sizeKey(timing);
  listedBySize.set(key, [...(listedBySize.get(key) ?? []), { timing, rateHz: refreshHz(timing) }]);
}

/** What makes the raster of a standard timing that no list has. */
export type TimingFormula = 'gtf' | 'cvt';

/**
 * The formula of an EDID: GTF, unless it is of 1.4 and its range limits say that it takes CVT (E-EDID A.2 sections 3.9
 * and 3.10.3.3.1).
 */
export const formulaOf = ({ revision, descriptors }: BaseBlock): TimingFormula =>
  revision >= 4 &&
  descriptors.some((slot) => slot.kind === 'rangeLimits' && slot.limits.timing.kind === 'cvt')
    ? 'cvt'
    : 'gtf';

/**
 * The raster of an established or standard timing: the listed one at that very rate, else the fastest near it, for that
 * is the one with the standard's code; what no list has, by the formula.
 */
export function rasterBySize(picture: EstablishedTiming, formula: TimingFormula): Timing {
  const distance = ({ rateHz }: Listed) => Math.abs(rateHz - picture.refreshHz);
  const near = (listedBySize.get(sizeKey(picture)) ?? []).filter((one) => distance(one) < nominalToleranceHz);
  const exact = near.find((one) => distance(one) < exactToleranceHz);
  const [fastest] = near.toSorted((a, b) => b.timing.pixelClockKHz - a.timing.pixelClockKHz);
  const listed = exact ?? fastest;
  if (listed) return listed.timing;
  return formula === 'gtf' ? gtfTiming(picture) : cvtTiming({ ...picture, blanking: 'standard' });
}

/** A standard timing as size and rate; `revision` is that of the EDID 1.x. */
export const sizeOfStandard = (timing: StandardTiming, revision: number): EstablishedTiming => ({
  widthPx: timing.widthPx,
  heightPx: standardTimingHeightPx(timing, revision < 3),
  refreshHz: timing.refreshHz,
});

/** Rates of a CVT code by the bits of `rateFlags`, highest bit first (E-EDID A.2 table 3.36). */
const cvtRates: readonly (readonly [refreshHz: number, blanking: CvtBlanking])[] = [
  [50, 'standard'],
  [60, 'standard'],
  [75, 'standard'],
  [85, 'standard'],
  [60, 'reduced1'],
];
const cvtRatio = { '4:3': 4 / 3, '16:9': 16 / 9, '16:10': 16 / 10, '15:9': 15 / 9 } as const;

/** The rasters that a CVT code names, each with the bit of `rateFlags` that names it. */
export function rastersOfCvtCode(code: CvtCode): { flag: number; timing: Timing }[] {
  const widthPx = Math.floor((code.lines * cvtRatio[code.aspect]) / 8) * 8;
  return cvtRates.flatMap(([rateHz, blanking], i) => {
    const flag = 16 >> i;
    if ((code.rateFlags & flag) === 0) return [];
    return [{ flag, timing: cvtTiming({ widthPx, heightPx: code.lines, refreshHz: rateHz, blanking }) }];
  });
}
