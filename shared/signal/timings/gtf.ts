import type { Timing } from './timing.ts';

/* All constants: VESA Generalized Timing Formula 1.1, section 5. */
const cellPx = 8;
const frontPorchLines = 1;
const syncLines = 3;
const minSyncAndBackPorchUs = 550;
const syncShareOfLine = 0.08;
/** Offset and gradient of the blanking duty cycle, per cent and per cent per kHz, scaled (C' = 30, M' = 300). */
const dutyOffset = 30;
const dutyGradient = 300;

export type GtfRequest = { widthPx: number; heightPx: number; refreshHz: number };

/**
 * The GTF timing of a progressive picture without margins, by the default curve. A width that isn't whole cells of 8
 * pixels keeps its pixels, and gets the blanking and clock of the cells nearest to it. Source: VESA GTF 1.1.
 */
export function gtfTiming({ widthPx, heightPx, refreshHz }: GtfRequest): Timing {
  const activePx = Math.round(widthPx / cellPx) * cellPx;
  const estimatedUs = (1_000_000 / refreshHz - minSyncAndBackPorchUs) / (heightPx + frontPorchLines);
  const syncAndBackPorch = Math.round(minSyncAndBackPorchUs / estimatedUs);
  const lines = heightPx + frontPorchLines + syncAndBackPorch;
  const periodUs = 1_000_000 / refreshHz / lines;
  const duty = dutyOffset - (dutyGradient * periodUs) / 1000;
  const blankPx = Math.max(0, Math.round((activePx * duty) / (100 - duty) / (2 * cellPx)) * (2 * cellPx));
  const totalPx = activePx + blankPx;
  const syncPx = Math.round((syncShareOfLine * totalPx) / cellPx) * cellPx;
  return {
    widthPx,
    heightPx,
    interlaced: false,
    aspect: { width: widthPx, height: heightPx },
    pixelClockKHz: Math.max(1, Math.round((totalPx / periodUs) * 1000)),
    horizontal: {
      frontPorch: blankPx / 2 - syncPx,
      sync: syncPx,
      backPorch: blankPx / 2,
      positiveSync: false,
    },
    vertical: {
      frontPorch: frontPorchLines,
      sync: syncLines,
      backPorch: syncAndBackPorch - syncLines,
      positiveSync: true,
    },
    halfLineFields: false,
  };
}
