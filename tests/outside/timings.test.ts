import { describe, expect, it } from 'vitest';
import {
  ctaTimings,
  cvtBlankings,
  cvtTiming,
  dmtTimings,
  gtfTiming,
  hdmiVicTiming,
  lineRateKHz,
  ovtRates,
  refreshHz,
  ridTiming,
  type Timing,
  totalLines,
  totalWidthPx,
} from '../../shared/signal/timings/index.ts';
import { edidDecode } from './edid-decode.ts';

/*
 * Reference: Debian's edid-decode. Its reports of one timing give rates and clock on the first line, then the
 * blanking, of the first field where there are two; borders are a line's or frame's, on either side.
 */

type Heading = { id: number; size: string; aspect: string; rates: number[] };

/** `VIC 16: 1920x1080 60.000000 Hz 16:9 67.500 kHz 148.500000 MHz`, once for every line of a list. */
function readList(report: string): Heading[] {
  const line = /^\D*?(0x[0-9a-f]+|\d+): +(\S+) +(\S+) Hz +(\S+) +(\S+) kHz +(\S+) MHz/;
  return report
    .trim()
    .split('\n')
    .map((text) => {
      const [, id, size = text, refresh, aspect = '', lines, clock] = line.exec(text) ?? [];
      return { id: Number(id), size, aspect, rates: [refresh, lines, clock].map(Number) };
    })
    .sort((a, b) => a.id - b.id);
}

function headingOf([id, timing]: [number, Timing]): Heading {
  const size = `${timing.widthPx}x${timing.heightPx}${timing.interlaced ? 'i' : ''}`;
  const { width, height } = timing.aspect;
  const rates = [refreshHz(timing), lineRateKHz(timing), timing.pixelClockKHz / 1000];
  return { id, size, aspect: `${width}:${height}`, rates };
}

/** Equal to the last digit that the reference prints: of Hz, kHz and MHz. */
function expectSame(ours: Heading[], theirs: Heading[]): void {
  expect(ours.map(({ rates: _, ...rest }) => rest)).toEqual(theirs.map(({ rates: _, ...rest }) => rest));
  for (const [at, { id, rates }] of ours.entries())
    for (const [which, printed] of [0.000_001, 0.001, 0.000_001].entries()) {
      const difference = Math.abs((rates[which] ?? Number.NaN) - (theirs[at]?.rates[which] ?? Number.NaN));
      expect(difference, `id ${id}`).toBeLessThan(printed * 0.501);
    }
}

type Raster = {
  clockKHz: number;
  horizontal: [number, number, number];
  vertical: [number, number, number];
  polarities: string;
  wholeLineFields: boolean;
};

function rasterOf({ pixelClockKHz, horizontal, vertical, interlaced, halfLineFields }: Timing): Raster {
  return {
    clockKHz: pixelClockKHz,
    horizontal: [horizontal.frontPorch, horizontal.sync, horizontal.backPorch],
    vertical: [vertical.frontPorch, vertical.sync, vertical.backPorch],
    polarities: `${horizontal.positiveSync ? 'P' : 'N'}${vertical.positiveSync ? 'P' : 'N'}`,
    wholeLineFields: interlaced && !halfLineFields,
  };
}

function readRaster(report: string): Raster {
  const number = (name: string): number => Number(new RegExp(`${name} +(-?\\d+)`).exec(report)?.[1]);
  const border = (name: string): number => (report.includes(name) ? number(name) : 0);
  const [horizontalBorder, verticalBorder] = [border('Hborder'), border('Vborder')];
  return {
    clockKHz: Math.round(Number(/([\d.]+) MHz/.exec(report)?.[1]) * 1000),
    horizontal: [number('Hfront') + horizontalBorder, number('Hsync'), number('Hback') + horizontalBorder],
    vertical: [number('Vfront') + verticalBorder, number('Vsync'), number('Vback') + verticalBorder],
    polarities: `${/Hpol (.)/.exec(report)?.[1]}${/Vpol (.)/.exec(report)?.[1]}`,
    wholeLineFields: report.includes('Both Fields'),
  };
}

describe('the tables beside edid-decode', () => {
  it('hold every CTA-861 format with its size, rates and clock', () => {
    const theirs = readList(edidDecode('--list-vics'));
    expect(theirs).toHaveLength(127 + 27);
    expectSame([...ctaTimings].map(headingOf), theirs);
  });

  it('hold every CTA-861 format with its blanking and polarities', () => {
    for (const [vic, timing] of ctaTimings)
      expect({ vic, ...rasterOf(timing) }).toEqual({ vic, ...readRaster(edidDecode('--vic', `${vic}`)) });
  });

  it('hold every DMT with its size, rates and clock', () => {
    const theirs = readList(edidDecode('--list-dmts'));
    expect(theirs).toHaveLength(88);
    expectSame([...dmtTimings].map(headingOf), theirs);
  });

  it('hold every DMT with its blanking and polarities', () => {
    for (const [dmtId, timing] of dmtTimings)
      expect({ dmtId, ...rasterOf(timing) }).toEqual({
        dmtId,
        ...readRaster(edidDecode('--dmt', `${dmtId}`)),
      });
  });

  it('hold the four HDMI VICs', () => {
    const theirs = readList(edidDecode('--list-hdmi-vics'));
    expect(theirs).toHaveLength(4);
    const ours = [1, 2, 3, 4].flatMap((id): [number, Timing][] => {
      const timing = hdmiVicTiming(id);
      return timing === null ? [] : [[id, timing]];
    });
    expectSame(ours.map(headingOf), theirs);
    for (const [id, timing] of ours)
      expect(rasterOf(timing)).toEqual(readRaster(edidDecode('--hdmi-vic', `${id}`)));
  });
});

describe('CVT beside edid-decode', () => {
  const sizes = [
    [320, 200],
    [640, 480],
    [1280, 1024],
    [1366, 768],
    [1920, 1080],
    [1920, 1200],
    [1998, 1080],
    [3000, 3000],
    [3440, 1440],
    [4096, 2160],
    [5120, 2880],
    [7680, 4320],
  ] as const;
  const rates = [23.976, 24, 50, 59.94, 60, 85, 120, 240];
  const scans = [false, true];

  // VESA CVT 1.2 rounds the clock down to whole steps. The reference divides by its step of 0.001 MHz in binary
  // fractions and so loses a step where the clock is whole kilohertz already; exact arithmetic doesn't.
  const clockIsWholeKHz = (timing: Timing, rateHz: number): boolean =>
    Number.isInteger(
      (rateHz * totalLines(timing) * totalWidthPx(timing)) / (timing.interlaced ? 2000 : 1000),
    );

  it.each(cvtBlankings)('gives the same raster and clock: %s', (blanking) => {
    let compared = 0;
    let oneLower = 0;
    for (const [widthPx, heightPx] of sizes)
      for (const rateHz of rates)
        for (const interlaced of scans) {
          const request = { widthPx, heightPx, refreshHz: rateHz, interlaced, blanking };
          const timing = cvtTiming(request);
          const theirs = readRaster(edidDecode('--cvt', referenceArguments(request)));
          if (theirs.clockKHz === timing.pixelClockKHz - 1 && clockIsWholeKHz(timing, rateHz)) {
            oneLower += 1;
            theirs.clockKHz += 1;
          }
          expect({ request, ...rasterOf(timing) }).toEqual({ request, ...theirs });
          compared += 1;
        }
    expect(compared).toBe(sizes.length * rates.length * scans.length);
    expect(oneLower).toBeLessThanOrEqual(blanking === 'reduced2' ? 14 : 0);
  });

  function referenceArguments(request: Parameters<typeof cvtTiming>[0]): string {
    // Naming `rb=0` turns the reference's interlacing off, so it is left out.
    const reduced = cvtBlankings.indexOf(request.blanking);
    const { widthPx, heightPx } = request;
    const options = `${reduced > 0 ? `,rb=${reduced}` : ''}${request.interlaced ? ',interlaced' : ''}`;
    return `w=${widthPx},h=${heightPx},fps=${request.refreshHz}${options}`;
  }
});

describe('GTF beside edid-decode', () => {
  it('gives the same raster and clock', () => {
    let compared = 0;
    for (const widthPx of [400, 640, 1000, 1366, 1720, 1920, 2288])
      for (const ratio of [16 / 10, 4 / 3, 5 / 4, 16 / 9])
        for (const refreshHz of [50, 60, 61, 72, 85, 100, 123]) {
          const heightPx = Math.floor(widthPx / ratio);
          const theirs = readRaster(edidDecode('--gtf', `w=${widthPx},h=${heightPx},fps=${refreshHz}`));
          const ours = rasterOf(gtfTiming({ widthPx, heightPx, refreshHz }));
          expect({ widthPx, heightPx, refreshHz, ...ours }).toEqual({
            widthPx,
            heightPx,
            refreshHz,
            ...theirs,
          });
          compared += 1;
        }
    expect(compared).toBe(196);
  });
});

describe('Optimized Video Timings beside edid-decode', () => {
  type Line = { rid: number; rateHz: number; timing: Timing; vic: number | null; heading: Heading | null };

  /** `RID 1: 1280x720 24.000 Hz 16:9 maps to VIC 60`, or the size, rates and clock in place of the code. */
  function readLines(): Line[] {
    return edidDecode('--list-rid-timings', '0')
      .trim()
      .split('\n')
      .map((text) => {
        const [, rid, rateHz] = /^RID +(\d+): +\S+ +([\d.]+) Hz/.exec(text) ?? [];
        const [, vic] = /maps to VIC (\d+)/.exec(text) ?? [];
        const timing = ridTiming(Number(rid), Number(rateHz));
        if (!timing) throw new Error(`We have nothing for: ${text}`);
        const [heading = null] = vic === undefined ? readList(text) : [];
        return { rid: Number(rid), rateHz: Number(rateHz), timing, vic: vic ? Number(vic) : null, heading };
      });
  }

  it('are those of all its sizes and rates, and its CTA-861 formats where it names one', () => {
    const lines = readLines();
    expect(lines).toHaveLength(28 * ovtRates.length);
    for (const { rid, rateHz, timing, vic, heading } of lines) {
      if (vic !== null) expect({ rid, rateHz, timing }).toEqual({ rid, rateHz, timing: ctaTimings.get(vic) });
      else expectSame([headingOf([rid, timing])], heading ? [heading] : []);
    }
  });

  it('have its blanking', () => {
    let compared = 0;
    for (const { rid, rateHz, timing, vic } of readLines()) {
      if (vic !== null) continue;
      const theirs = readRaster(edidDecode('--ovt', `rid=${rid},fps=${rateHz}`));
      expect({ rid, rateHz, ...rasterOf(timing) }).toEqual({ rid, rateHz, ...theirs });
      compared += 1;
    }
    expect(compared).toBeGreaterThan(200);
  });

  it('are none for codes and rates without a meaning', () => {
    expect([ridTiming(0, 60), ridTiming(29, 60), ridTiming(4, 90)]).toEqual([null, null, null]);
  });
});
