import { describe, expect, it } from 'vitest';
import type { VideoFormat } from '../../shared/contract/chain.ts';
import { type FormatNeed, formatNeed, frlBitRateGbps, tmdsNeed } from '../../shared/signal/format/index.ts';
import { ctaTimings } from '../../shared/signal/timings/index.ts';
import { edidDecode } from './edid-decode.ts';

type Encoding = VideoFormat['encoding'];
type Depth = VideoFormat['bitsPerComponent'];

function needOf(
  size: '1080p' | '2160p' | '4320p',
  rateHz: number,
  encoding: Encoding,
  depth: Depth,
): FormatNeed {
  const heightPx = Number.parseInt(size, 10);
  const widthPx = (heightPx * 16) / 9;
  return formatNeed({
    widthPx,
    heightPx,
    interlaced: false,
    refreshHz: rateHz,
    encoding,
    bitsPerComponent: depth,
  });
}

describe('known TMDS rates', () => {
  it.each([
    // HDMI 1.4b: three channels of ten bits at the 148.5 MHz that CTA-861 gives VIC 16.
    ['1080p', 60, 'rgb', 8, 4.455],
    // HDMI 1.4b 6.5.2: 36-bit deep colour runs at one and a half times the 297 MHz of VIC 93.
    ['2160p', 24, 'rgb', 12, 13.365],
    // HDMI 2.0 7.1: 4:2:0 runs at half of the 594 MHz of VIC 97; the figure is the "9 Gbit/s" of the trade.
    ['2160p', 60, 'ycbcr420', 8, 8.91],
    // HDMI 1.4b 6.5.3: 4:2:2 is carried in 12 bits at the pixel clock.
    ['2160p', 60, 'ycbcr422', 12, 17.82],
    // HDMI 2.0: what its 18 Gbit/s were made for.
    ['2160p', 60, 'rgb', 8, 17.82],
  ] as const)('%s%i %s of %i bits takes %f Gbit/s', (size, rateHz, encoding, depth, gbps) => {
    const { tmds } = needOf(size, rateHz, encoding, depth);
    expect(tmds?.bitRateGbps).toBeCloseTo(gbps, 9);
    expect(tmds?.fits).toBe(true);
  });

  // HDMI 2.0: 742.5 MHz against the 600 MHz that a TMDS link runs at most.
  it('2160p60 RGB of 10 bits does not fit TMDS', () => {
    expect(needOf('2160p', 60, 'rgb', 10).tmds).toMatchObject({ characterRateMHz: 742.5, fits: false });
  });

  // CTA-861 pixel clocks as edid-decode prints them, ten bits on three channels.
  it('agree with the clock of every CTA-861 format', () => {
    const report = edidDecode('--list-vics');
    for (const [, vic, clockMHz] of report.matchAll(/VIC +(\d+):.* ([\d.]+) MHz/g)) {
      const timing = ctaTimings.get(Number(vic));
      const need = timing && tmdsNeed(timing, { encoding: 'rgb', bitsPerComponent: 8 });
      expect(need?.bitRateGbps, `VIC ${vic}`).toBeCloseTo((Number(clockMHz) * 30) / 1000, 9);
    }
  });
});

describe('known fixed rate link rates', () => {
  it.each([
    // HDMI Forum, announcement of 2.1: ports of 40 Gbit/s carry 2160p120 4:4:4 of 10 bits; 48 are for 12.
    ['2160p', 120, 'ycbcr444', 10, 40],
    ['2160p', 120, 'ycbcr444', 12, 48],
    // The same: 4320p60 uncompressed is 4:2:0, of 10 bits in 40 Gbit/s.
    ['4320p', 60, 'ycbcr420', 10, 40],
    ['4320p', 60, 'ycbcr420', 12, 48],
    // Public rate tables of test-equipment makers for HDMI 2.1 (from memory).
    ['2160p', 120, 'ycbcr444', 8, 32],
    ['4320p', 60, 'ycbcr420', 8, 32],
    ['4320p', 30, 'ycbcr444', 10, 40],
    ['2160p', 60, 'rgb', 10, 24],
    ['2160p', 60, 'rgb', 12, 24],
    ['2160p', 60, 'rgb', 8, 18],
  ] as const)(
    '%s%i %s of %i bits takes the %i Gbit/s rate and no less',
    (size, rateHz, encoding, depth, gbps) => {
      const { leastFrlRate } = needOf(size, rateHz, encoding, depth);
      expect(leastFrlRate && frlBitRateGbps(leastFrlRate)).toBe(gbps);
    },
  );

  // The same announcement: 4320p60 4:4:4 goes compressed only.
  it('4320p60 4:4:4 has no uncompressed rate', () => {
    expect(needOf('4320p', 60, 'ycbcr444', 8).leastFrlRate).toBeNull();
  });
});
