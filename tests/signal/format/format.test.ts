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
  soundFits,
  tmdsNeed,
} from '../../../shared/signal/format/index.ts';
import {
  ctaTimings,
  refreshHz,
  type Timing,
  totalLines,
  totalWidthPx,
  vicTiming,
} from '../../../shared/signal/timings/index.ts';
import { carriesStepByStep, type Line, type Packing } from './capacity-method.ts';

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

const lineOf = (each: Timing): Line => ({
  activePx: each.widthPx,
  totalPx: totalWidthPx(each),
  clockMHz: each.pixelClockKHz / 1000,
});
const packingOf = ({ encoding, bitsPerComponent }: Sampling): Packing => ({
  depth: encoding === 'ycbcr422' ? 1 : bitsPerComponent / 8,
  pixelsPerCharacter: encoding === 'ycbcr420' ? 2 : 1,
});

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
          const carries = carriesStepByStep(lineOf(each), packingOf(how), rate);
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

describe('sound beside a picture', () => {
  const raster = (vic: number) => ({ timing: timing(vic), how: sampling('rgb', 8) });
  // HDMI 1.4b, table of the highest rates of linear PCM by picture in 24 bits a pixel (from memory).
  it.each([
    ['480p60 on TMDS', 3, 8, 48, true],
    ['480p60 on TMDS', 3, 8, 96, false],
    ['480p60 on TMDS', 3, 2, 192, true],
    ['480i60 on TMDS', 7, 8, 96, true],
    ['480i60 on TMDS', 7, 8, 192, false],
    ['720p60 on TMDS', 4, 8, 192, true],
    ['1080p60 on TMDS', 16, 8, 192, true],
  ] as const)('of %s, VIC %i: %i channels at %f kHz', (_, vic, channels, rateKHz, fits) => {
    const { timing: each, how } = raster(vic);
    expect(soundFits(each, how, { sound: { channels, rateKHz }, way: 'tmds' })).toBe(fits);
  });

  it('fits a fixed rate link exactly where the least data island is no longer than the blanking', () => {
    let refused = 0;
    for (const each of ctaTimings.values())
      for (const how of carriedSamplings)
        for (const sound of [
          { channels: 8, rateKHz: 192 },
          { channels: 2, rateKHz: 48 },
        ]) {
          const { depth, pixelsPerCharacter } = packingOf(how);
          const blanking = ((totalWidthPx(each) - each.widthPx) * depth) / pixelsPerCharacter;
          const lineS = totalWidthPx(each) / (each.pixelClockKHz * 1000 * 1.005);
          const packetsHz = sound.channels === 2 ? 12_000 : 192_000;
          const island = 32 * (1 + Math.ceil((packetsHz + 3000) * 1.001 * lineS));
          expect(soundFits(each, how, { sound, way: 'frl' })).toBe(island <= blanking);
          refused += island <= blanking ? 0 : 1;
        }
    expect(refused).toBeGreaterThan(100);
  });
});

describe('3D in frame packing', () => {
  // HDMI 1.4b 8.2.3.2: 1080p24 goes out at 148.5 MHz in 2205 lines shown, 2250 in all.
  it('takes twice the clock and twice the lines', () => {
    const need = formatNeed({ ...uhd60, widthPx: 1920, heightPx: 1080, refreshHz: 24, threeD: true });
    expect(need.tmds?.characterRateMHz).toBe(148.5);
    expect(need.timing.heightPx).toBe(2205);
    expect(totalLines(need.timing)).toBe(2250);
    expect(refreshHz(need.timing)).toBeCloseTo(24, 9);
  });
});
