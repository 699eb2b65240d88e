import { describe, expect, it } from 'vitest';
import type { Link, VideoFormat } from '../../shared/contract/chain.ts';
import { compressedFit, formatNeed, frlBitRateGbps, frlRates } from '../../shared/signal/format/index.ts';
import { chainBudget } from '../../shared/signal/link-budget/index.ts';
import { cable, chainOf, display, frl48, input, output, source } from '../chain/build-chain.ts';
import {
  carriesStepByStep,
  compressedLineFits,
  type Lanes,
  type Line,
} from '../signal/format/capacity-method.ts';
import { type Category, compressedRows, type Raster, type Row, rasters, rows } from './format-table.ts';

type Sampling = Pick<VideoFormat, 'encoding' | 'bitsPerComponent'>;
type Expected = { tmdsMHz: number; frlGbps: number | 'none'; cable: Category | 'none' };

/** HDMI 2.1 table 6-24 (from memory): three lanes of 3 and 6, four of 6, 8, 10 and 12 Gbit/s. */
const steps: readonly (readonly [number, Lanes])[] = [
  [9, { lanes: 3, gbpsPerLane: 3 }],
  [18, { lanes: 3, gbpsPerLane: 6 }],
  [24, { lanes: 4, gbpsPerLane: 6 }],
  [32, { lanes: 4, gbpsPerLane: 8 }],
  [40, { lanes: 4, gbpsPerLane: 10 }],
  [48, { lanes: 4, gbpsPerLane: 12 }],
];

/**
 * What the categories of the HDMI compliance programme are tested for: TMDS characters in MHz; and a fixed rate on the
 * three pairs that they are tested on, no faster than that (assumed; see reach.ts), all four of Ultra High Speed.
 */
const categories: readonly (readonly [Category, number, number])[] = [
  ['standard', 74.25, 0],
  ['highSpeed', 340, 9],
  ['premiumHighSpeed', 600, 18],
  ['ultraHighSpeed', 600, 48],
];

/**
 * From the raster alone. HDMI 1.4b 6.5.2: deep colour takes characters in proportion to its bits; 6.5.3: 4:2:2 travels in
 * twelve bits at the pixel clock; HDMI 2.0 7.1: two pixels of 4:2:0 share a character; HDMI 1.4b 8.2.3.2: frame packing
 * doubles the clock. The dynamic range costs nothing by itself: its metadata travel in the blanking.
 */
function derive({ active, total, clockMHz }: Raster, how: Sampling, isThreeD: boolean): Expected {
  const depth = how.encoding === 'ycbcr422' ? 1 : how.bitsPerComponent / 8;
  const pixelsPerCharacter = how.encoding === 'ycbcr420' ? 2 : 1;
  const clock = isThreeD ? 2 * clockMHz : clockMHz;
  const line: Line = { activePx: active[0], totalPx: total[0], clockMHz: clock };
  const tmdsMHz = (clock * depth) / pixelsPerCharacter;
  const frl = steps.find(([, lanes]) => carriesStepByStep(line, { depth, pixelsPerCharacter }, lanes))?.[0];
  const least = categories.find(([, mhz, gbps]) => tmdsMHz <= mhz || (frl !== undefined && frl <= gbps));
  return { tmdsMHz, frlGbps: frl ?? 'none', cable: least?.[0] ?? 'none' };
}

function formatOf(raster: Raster, how: Sampling, comesWith: Partial<VideoFormat>): VideoFormat {
  const [widthPx, heightPx] = raster.active;
  const { refreshHz, interlaced = false } = raster;
  return { widthPx, heightPx, refreshHz, interlaced, ...how, ...comesWith };
}

/** The least category on which the budget says that it fits, 2 m certified between sockets of 48 Gbit/s. */
function leastCable(wanted: VideoFormat): Category | 'none' {
  const fits = ([category]: (typeof categories)[number]): boolean => {
    const facts: Partial<Link> = { category, lengthM: 2, certified: true };
    const chain = chainOf(
      [
        source('pc', { ports: [output('out1', { highestMode: frl48 })] }),
        display('tv', { ports: [input('in1', { highestMode: frl48 })] }),
      ],
      [cable('pc.out1', 'tv.in1', facts)],
    );
    return chainBudget(chain, [wanted]).wanted[0]?.verdict === 'fits';
  };
  return categories.find(fits)?.[0] ?? 'none';
}

const named = (raster: string, encoding: string, bits: number, comesWith: object): string =>
  `${raster} ${encoding} ${bits} ${Object.values(comesWith).join(' ')}`;

describe('the table of formats', () => {
  it.each(Object.entries<Raster>(rasters))('has the raster %s as its standard has it', (_, raster) => {
    const { total, clockMHz, refreshHz, interlaced } = raster;
    // Of two fields a frame. DMT names rates in whole hertz, as 60 for 59.95.
    const frames = interlaced ? refreshHz / 2 : refreshHz;
    const rateHz = (clockMHz * 1e6) / total[0] / total[1];
    expect(Math.abs(rateHz / frames - 1), raster.source).toBeLessThan(0.001);
  });

  it('has at least sixty rows', () => {
    expect(rows.length + compressedRows.length).toBeGreaterThanOrEqual(60);
    expect(new Set(rows.map(([raster, ...how]) => named(raster, ...take(how)))).size).toBe(rows.length);
  });

  it.each(rows.map((row): [string, Row] => [named(row[0], row[1], row[2], row[3]), row]))('%s', (_, row) => {
    const [name, encoding, bitsPerComponent, comesWith, tmdsMHz, frlGbps, least] = row;
    const raster: Raster = rasters[name];
    const how = { encoding, bitsPerComponent };
    const { cable: derivedCable, ...derived } = derive(raster, how, comesWith.threeD ?? false);
    expect({ ...derived, cable: derivedCable }, raster.source).toEqual({ tmdsMHz, frlGbps, cable: least });
    const format = formatOf(raster, how, comesWith);
    const { tmds, leastFrlRate } = formatNeed(format);
    expect(tmds?.characterRateMHz).toBeCloseTo(tmdsMHz, 9);
    expect(leastFrlRate === null ? 'none' : frlBitRateGbps(leastFrlRate)).toBe(frlGbps);
    expect(leastCable(format)).toBe(least);
  });

  // Fewest bits a pixel of compressed video: 8 of RGB and 4:4:4, 7 of 4:2:2, 6 of 4:2:0 (HDMI 2.1, 7.7; from memory).
  it.each(compressedRows)(
    '%s %s of %i bits, compressed',
    (name, encoding, bitsPerComponent, comesWith, gbps) => {
      const raster: Raster = rasters[name];
      const line: Line = { activePx: raster.active[0], totalPx: raster.total[0], clockMHz: raster.clockMHz };
      const fewest = encoding === 'ycbcr420' ? 6 : encoding === 'ycbcr422' ? 7 : 8;
      expect(steps.find(([, lanes]) => compressedLineFits(line, fewest, lanes))?.[0] ?? 'none').toBe(gbps);
      const { timing } = formatNeed(formatOf(raster, { encoding, bitsPerComponent }, comesWith));
      const least = frlRates.find((rate) =>
        compressedFit(timing, { encoding, bitsPerComponent }, rate, ableSink),
      );
      expect(least === undefined ? 'none' : frlBitRateGbps(least)).toBe(gbps);
    },
  );
});

const take = ([encoding, bits, comesWith]: readonly unknown[]): [string, number, object] => [
  String(encoding),
  Number(bits),
  comesWith as object,
];

/** A sink that takes compressed video without a limit of its own. */
const ableSink = {
  maxRate: { lanes: 4, gbpsPerLane: 12 },
  maxSlices: 16,
  maxSliceClockMHz: 400,
  maxLineBytes: 64 * 1024,
  allTargets: true,
  native420: true,
  bitsPerComponent: [10, 12],
} as const;
