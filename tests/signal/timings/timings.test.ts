import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ctaTimings,
  cvtBlankings,
  cvtTiming,
  dmtTimings,
  findTiming,
  refreshHz,
  type Timing,
  totalLines,
  totalWidthPx,
  vicTiming,
} from '../../../shared/signal/timings/index.ts';

const find = (widthPx: number, heightPx: number, rateHz: number, interlaced = false) =>
  findTiming({ widthPx, heightPx, interlaced, refreshHz: rateHz });

describe('the tables', () => {
  // Rates are what the standards round to: whole, over 1.001, or as DMT lists them to a thousandth of a hertz.
  it('give each CTA-861 format a rate that the standard lists', () => {
    const listed = [24, 25, 30, 48, 50, 60, 100, 120, 200, 240];
    const over1001 = [60, 120, 240].map((rateHz) => rateHz / 1.001);
    // The 240 and 288 line formats are single fields and run a little off.
    const fields = [60.0545, 60 / 1.001, 50.0801];
    for (const [vic, timing] of ctaTimings) {
      const off = [...listed, ...over1001, ...fields].map((rateHz) =>
        Math.abs(refreshHz(timing) / rateHz - 1),
      );
      expect(Math.min(...off), `VIC ${vic}`).toBeLessThan(1e-5);
    }
  });

  it('hold no raster without sync, picture or clock', () => {
    for (const timing of [...ctaTimings.values(), ...dmtTimings.values()]) {
      expect(Math.min(timing.pixelClockKHz, timing.widthPx, timing.heightPx)).toBeGreaterThan(0);
      expect(Math.min(timing.horizontal.sync, timing.vertical.sync)).toBeGreaterThan(0);
      const pixels = totalWidthPx(timing) * totalLines(timing);
      const frames = refreshHz(timing) / (timing.interlaced ? 2 : 1);
      expect(pixels * frames).toBeCloseTo(timing.pixelClockKHz * 1000, 3);
    }
  });

  it('know no code that is not assigned', () => {
    expect([0, 128, 192, 220, 255].map(vicTiming)).toEqual([null, null, null, null, null]);
  });
});

describe('finding the timing of a picture', () => {
  it('takes every code of the size and rate', () => {
    expect(find(3840, 2160, 60).source).toEqual({ kind: 'cta861', vics: [97, 107] });
    expect(find(1920, 1080, 50, true).source).toEqual({ kind: 'cta861', vics: [20] });
  });

  it.each([
    [3840, 2160, 23.976, 296.703],
    [3840, 2160, 23.98, 296.703],
    [3840, 2160, 59.94, 593.407],
    [3840, 2160, 119.88, 1186.813],
    [1920, 1080, 59.94, 148.352],
    [720, 480, 60, 27.027],
  ])('scales the clock of %i x %i at %f Hz to %f MHz', (widthPx, heightPx, rateHz, clockMHz) => {
    expect(find(widthPx, heightPx, rateHz).timing.pixelClockKHz / 1000).toBeCloseTo(clockMHz, 3);
  });

  it('sends standard definition with every pixel twice', () => {
    expect(find(720, 576, 50, true).timing.widthPx).toBe(1440);
    expect(find(720, 576, 50).timing.widthPx).toBe(720);
  });

  it('falls back on DMT, then on CVT', () => {
    expect(find(1280, 1024, 60).source).toEqual({ kind: 'dmt', dmtId: 0x23 });
    expect(find(3440, 1440, 60).source).toEqual({ kind: 'cvt', blanking: 'reduced1' });
    const chosen = findTiming(
      { widthPx: 3440, heightPx: 1440, interlaced: false, refreshHz: 60 },
      'reduced2',
    );
    expect(chosen.source).toEqual({ kind: 'cvt', blanking: 'reduced2' });
  });
});

describe('CVT', () => {
  const requests = fc.record({
    widthPx: fc.integer({ min: 320, max: 8192 }),
    heightPx: fc.integer({ min: 200, max: 4320 }),
    refreshHz: fc.integer({ min: 24, max: 144 }),
    blanking: fc.constantFrom(...cvtBlankings),
  });
  const clockOf = (timing: Timing): number => timing.pixelClockKHz;

  it('gives a picture of a single pixel a clock, if of one step only', () => {
    const tiny = { widthPx: 1, heightPx: 1, refreshHz: 1 };
    expect(cvtTiming({ ...tiny, blanking: 'reduced1' }).pixelClockKHz).toBe(250);
    expect(cvtTiming({ ...tiny, blanking: 'reduced2' }).pixelClockKHz).toBe(1);
  });

  it('with reduced blanking runs as asked or slower, the third faster, by less than one step of the clock', () => {
    fc.assert(
      fc.property(requests, (request) => {
        fc.pre(request.blanking !== 'standard');
        const whole = { ...request, widthPx: request.widthPx - (request.widthPx % 8) };
        const timing = cvtTiming(whole);
        const stepHz = request.blanking === 'reduced2' ? 1000 : 250_000;
        const lostHz = whole.refreshHz - refreshHz(timing);
        const sign = request.blanking === 'reduced3' ? -1 : 1;
        const lostClockHz = sign * lostHz * totalWidthPx(timing) * totalLines(timing);
        expect(lostClockHz).toBeGreaterThan(-1);
        expect(lostClockHz).toBeLessThan(stepHz + 1);
      }),
    );
  });

  it('needs less clock the more the blanking is reduced', () => {
    fc.assert(
      fc.property(
        requests.filter(({ widthPx }) => widthPx >= 1000),
        (request) => {
          const [standard, first, second] = cvtBlankings.map((blanking) =>
            clockOf(cvtTiming({ ...request, blanking })),
          );
          expect(second).toBeLessThan((first ?? 0) + 250);
          expect(first).toBeLessThan((standard ?? 0) + 250);
        },
      ),
    );
  });
});
