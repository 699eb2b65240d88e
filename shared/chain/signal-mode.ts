import type { SignalMode, VideoFormat } from '../contract/chain.ts';

/**
 * Gross bit rate of a mode in Gbit/s. TMDS: three data channels of ten bits a character; FRL: lanes times the rate of
 * a lane. Source: HDMI 1.4b section 5.4 and HDMI 2.1 (both from memory).
 */
export function bitRateGbps(mode: SignalMode): number {
  return mode.kind === 'tmds' ? (mode.maxCharacterRateMHz * 30) / 1000 : mode.lanes * mode.gbpsPerLane;
}

/** `TMDS 600 MHz (18 Gbit/s)`, `FRL 4 × 12 Gbit/s (48 Gbit/s)`. */
export function modeName(mode: SignalMode): string {
  const how =
    mode.kind === 'tmds'
      ? `TMDS ${mode.maxCharacterRateMHz} MHz`
      : `FRL ${mode.lanes} × ${mode.gbpsPerLane} Gbit/s`;
  return `${how} (${gbps(bitRateGbps(mode))})`;
}

/** A bit rate for a sentence, to a hundredth: `18 Gbit/s`. */
export function gbps(rateGbps: number): string {
  return `${Number(rateGbps.toFixed(2))} Gbit/s`;
}

const encodingNames = { rgb: 'RGB', ycbcr444: '4:4:4', ycbcr422: '4:2:2', ycbcr420: '4:2:0' } as const;

/** `3840×2160p60 RGB 8 bit`; the rate to a thousandth, so that 59.94 and 60 stay apart. */
export function formatName(format: VideoFormat): string {
  const scan = format.interlaced ? 'i' : 'p';
  const rate = Number(format.refreshHz.toFixed(3));
  return `${format.widthPx}×${format.heightPx}${scan}${rate} ${encodingNames[format.encoding]} ${format.bitsPerComponent} bit`;
}
