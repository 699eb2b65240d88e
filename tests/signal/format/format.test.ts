import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { encodings, type VideoFormat, videoFormat } from '../../../shared/contract/chain.ts';
import {
  type CompressionCapabilities,
  compressedFit,
  type FrlRate,
  formatNeed,
  frlBitRateGbps,
  frlCarries,
  frlNeed,
  frlOverhead,
  frlRates,
  type Sampling,
  tmdsNeed,
} from '../../../shared/signal/format/index.ts';
import { ctaTimings, type Timing, totalWidthPx, vicTiming } from '../../../shared/signal/timings/index.ts';

const depths = [8, 10, 12, 16] as const;
const anyTiming = fc.constantFrom(...ctaTimings.values());
const samplings = encodings.flatMap((encoding) =>
  depths.map((bitsPerComponent): Sampling => ({ encoding, bitsPerComponent })),
);
/** All but 4:2:2 of 16 bits. */
const carriedSamplings = samplings.filter((how) => tmdsNeed(timing(16), how) !== null);
const anySampling = fc.constantFrom(...carriedSamplings);
function timing(vic: number): Timing {
  const found = vicTiming(vic);
  if (found === null) throw new Error(`no VIC ${vic}`);
  return found;
}
const sampling = (
  encoding: Sampling['encoding'],
  bitsPerComponent: Sampling['bitsPerComponent'],
): Sampling => ({
  encoding,
  bitsPerComponent,
});

describe('TMDS', () => {
  it('is scrambled above 340 MHz only', () => {
    expect(tmdsNeed(timing(95), sampling('rgb', 8))?.scrambled).toBe(false);
    expect(tmdsNeed(timing(95), sampling('rgb', 10))).toMatchObject({
      characterRateMHz: 371.25,
      scrambled: true,
    });
    expect(tmdsNeed(timing(97), sampling('ycbcr420', 8))?.scrambled).toBe(false);
  });

  it('takes 4:2:2 at one rate up to 12 bits, and not at all in 16', () => {
    const rates = depths.map((depth) => tmdsNeed(timing(97), sampling('ycbcr422', depth))?.characterRateMHz);
    expect(rates).toEqual([594, 594, 594, undefined]);
    expect(
      formatNeed(videoFormat.parse({ ...uhd60, encoding: 'ycbcr422', bitsPerComponent: 16 })),
    ).toMatchObject({
      tmds: null,
      frl: null,
      leastFrlRate: null,
    });
  });

  it('takes half as much for 4:2:0 as for RGB of the same depth', () => {
    fc.assert(
      fc.property(anyTiming, fc.constantFrom(...depths), (each, depth) => {
        const whole = tmdsNeed(each, sampling('rgb', depth));
        const half = tmdsNeed(each, sampling('ycbcr420', depth));
        expect((half?.characterRateMHz ?? 0) * 2).toBeCloseTo(whole?.characterRateMHz ?? 0, 9);
      }),
    );
  });
});

const uhd60: VideoFormat = {
  widthPx: 3840,
  heightPx: 2160,
  interlaced: false,
  refreshHz: 60,
  encoding: 'rgb',
  bitsPerComponent: 8,
};

/**
 * The capacity method step by step at one rate, as HDMI 2.1 6.5.6.2 words it (from memory), against the product's
 * closed form: characters a line surely has; picture and blanking times; tri-bytes borrowed; what is left.
 */
function carriesStepByStep(each: Timing, how: Sampling, { lanes, gbpsPerLane }: FrlRate): boolean {
  const depth = how.encoding === 'ycbcr422' ? 1 : how.bitsPerComponent / 8;
  const halved = how.encoding === 'ycbcr420' ? 2 : 1;
  const totalPx = totalWidthPx(each);
  const blankPx = totalPx - each.widthPx;
  const overhead = (lanes + 32 + 2.5) / (4 * 510 + lanes) + 0.003;
  const clockHz = each.pixelClockKHz * 1000 * 1.005;
  const lineS = totalPx / clockHz;
  const laneHz = (gbpsPerLane * 1e9 * (1 - 300 / 1e6)) / 18;
  const charactersPerLine = Math.floor(lineS * laneHz * lanes);
  const packets = Math.ceil((192_000 + 3000) * 1.001 * lineS);
  const active = Math.ceil((24 * (depth / halved) * each.widthPx) / 8 / 3);
  const blank = Math.ceil((blankPx * depth) / halved);
  const activeMinS = (1.5 * active) / (lanes * laneHz * (1 - overhead));
  const blankMinS = blank / (lanes * laneHz * (1 - overhead));
  const activeRefS = (lineS * each.widthPx) / totalPx;
  const blankRefS = (lineS * blankPx) / totalPx;
  if (blankRefS < blankMinS) return false;
  const borrowedS = Math.max(activeMinS - activeRefS, 0);
  if (Math.ceil(borrowedS * (clockHz / totalPx) * (active + blank)) > 400) return false;
  const free = Math.floor(Math.max((blankPx * depth) / halved - 32 * (1 + packets) - 7, 0));
  const saved = Math.floor(Math.max((7 / 8) * free - 4, 0));
  const payload = Math.ceil(1.5 * active) + blank - saved;
  return payload / charactersPerLine + overhead <= 1;
}

describe('a fixed rate link', () => {
  it('has overheads of 2.136 % on three lanes and 2.184 % on four', () => {
    expect(frlOverhead(3)).toBeCloseTo(0.02136, 5);
    expect(frlOverhead(4)).toBeCloseTo(0.02184, 5);
  });

  it('carries what the capacity method carries, step by step, for every CTA-861 format and rate', () => {
    let carried = 0;
    let compared = 0;
    for (const each of ctaTimings.values())
      for (const how of carriedSamplings)
        for (const rate of frlRates) {
          const carries = carriesStepByStep(each, how, rate);
          expect(frlCarries(each, how, rate), JSON.stringify({ each, how, rate })).toBe(carries);
          compared += 1;
          carried += carries ? 1 : 0;
        }
    expect(compared).toBe(154 * 15 * 6);
    expect(carried).toBeGreaterThan(compared / 2);
    expect(carried).toBeLessThan(compared);
  });

  it('never needs less than the picture and never more than picture and blanking in plain coding', () => {
    fc.assert(
      fc.property(anyTiming, anySampling, fc.constantFrom<3 | 4>(3, 4), (each, how, lanes) => {
        const need = frlNeed(each, how, lanes)?.bitRateGbps;
        const payloadGbps = ((tmdsNeed(each, how)?.characterRateMHz ?? 0) * 24) / 1000;
        const picture = payloadGbps * (each.widthPx / totalWidthPx(each));
        expect(need).toBeGreaterThan(picture * (18 / 16));
        expect(need).toBeLessThan(payloadGbps * (18 / 16) * 1.06);
      }),
    );
  });

  it('that carries a format carries it with fewer bits, and at any faster rate', () => {
    fc.assert(
      fc.property(anyTiming, anySampling, fc.nat(5), fc.nat(5), (each, how, a, b) => {
        const [slow, fast] = [frlRates[Math.min(a, b)], frlRates[Math.max(a, b)]];
        if (slow === undefined || fast === undefined || !frlCarries(each, how, slow)) return;
        expect(frlCarries(each, how, fast)).toBe(true);
        expect(frlCarries(each, { ...how, bitsPerComponent: 8 }, slow)).toBe(true);
      }),
    );
  });
});

describe('compression', () => {
  const sink: CompressionCapabilities = {
    maxRate: { lanes: 4, gbpsPerLane: 12 },
    maxSlices: 16,
    maxSliceClockMHz: 400,
    maxLineBytes: 16 * 1024,
    allTargets: false,
    native420: true,
    bitsPerComponent: [10, 12],
  };
  const at = (gbps: number): FrlRate => {
    const rate = frlRates.find((each) => frlBitRateGbps(each) === gbps);
    if (rate === undefined) throw new Error(`no rate ${gbps}`);
    return rate;
  };

  it('brings 4320p60 RGB 10 bit over 24 Gbit/s, which no rate carries plain', () => {
    const how = sampling('rgb', 10);
    expect(frlRates.some((rate) => frlCarries(timing(199), how, rate))).toBe(false);
    const fit = compressedFit(timing(199), how, at(24), sink);
    expect(fit).toMatchObject({ slices: 8 });
    expect(fit?.bitsPerPixel).toBeGreaterThanOrEqual(8);
    expect(compressedFit(timing(199), how, at(18), sink)).toBeNull();
  });

  // The buffer's bound of HDMI 2.1, 6.5.6.2, by the steps of open display drivers: 2160p100 over 24 Gbit/s.
  it('keeps the picture within the sink’s buffer', () => {
    const fit = compressedFit(timing(117), sampling('rgb', 8), at(24), { ...sink, allTargets: true });
    expect(fit?.bitsPerPixel).toBe(19.625);
  });

  it('keeps to 12 bits a pixel unless the sink takes every target', () => {
    const how = sampling('rgb', 10);
    expect(compressedFit(timing(118), how, at(32), sink)?.bitsPerPixel).toBe(12);
    const more = compressedFit(timing(118), how, at(32), { ...sink, allTargets: true });
    expect(more?.bitsPerPixel).toBeGreaterThan(12);
  });

  it.each([
    ['a slower link', { maxRate: at(18) }],
    ['too few slices', { maxSlices: 4 }],
    ['fewer bytes a line', { maxLineBytes: 7000 }],
    ['8 bits only', { bitsPerComponent: [] }],
  ])('is refused by a sink of %s', (_, limits: Partial<CompressionCapabilities>) => {
    expect(compressedFit(timing(199), sampling('rgb', 10), at(24), { ...sink, ...limits })).toBeNull();
  });

  it('of 4:2:0 needs a sink that takes it as it is', () => {
    const how = sampling('ycbcr420', 10);
    expect(compressedFit(timing(199), how, at(24), sink)?.bitsPerPixel).toBeGreaterThanOrEqual(6);
    expect(compressedFit(timing(199), how, at(24), { ...sink, native420: false })).toBeNull();
  });

  it('leaves more bits the faster the link', () => {
    fc.assert(
      fc.property(anyTiming, anySampling, fc.nat(4), (each, how, at) => {
        const [slow, fast] = [frlRates[at], frlRates[at + 1]];
        if (slow === undefined || fast === undefined) return;
        const less = compressedFit(each, how, slow, { ...sink, allTargets: true });
        const more = compressedFit(each, how, fast, { ...sink, allTargets: true });
        expect(more?.bitsPerPixel ?? 0).toBeGreaterThanOrEqual(less?.bitsPerPixel ?? 0);
      }),
    );
  });
});
