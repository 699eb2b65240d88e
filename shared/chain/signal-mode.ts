import type { SignalMode, VideoFormat } from '../contract/chain.ts';
import { englishFigures, formatFigures, modeFigures } from '../message/figures.ts';

export { modeGbps as bitRateGbps } from '../message/figures.ts';

/** `TMDS 600 MHz (18 Gbit/s)`, `FRL 4 × 12 Gbit/s (48 Gbit/s)`. */
export const modeName = (mode: SignalMode): string => modeFigures(mode, englishFigures);

/** `3840×2160p60 RGB 8 bit`; the rate to a thousandth, so that 59.94 and 60 stay apart. */
export const formatName = (format: VideoFormat): string => formatFigures(format, englishFigures);
