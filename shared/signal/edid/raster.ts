import type { Timing } from '../timings/index.ts';
import type { DetailedTiming } from './base/detailed-timing.ts';
import type { DisplayIdTiming } from './displayid/timings.ts';

function polarity({ sync }: DetailedTiming): { horizontal: boolean; vertical: boolean } {
  switch (sync.kind) {
    case 'digitalSeparate':
      return { horizontal: sync.horizontalPositive, vertical: sync.verticalPositive };
    case 'digitalComposite':
      return { horizontal: sync.horizontalPositive, vertical: false };
    default:
      return { horizontal: false, vertical: false };
  }
}

/** Width to height: of the picture in millimetres where it is given, else of its pixels taken as square. */
function aspectOf(
  { imageMm, horizontal }: DetailedTiming,
  heightPx: number,
): { width: number; height: number } {
  return imageMm.width > 0 && imageMm.height > 0
    ? { width: imageMm.width, height: imageMm.height }
    : { width: horizontal.activePx, height: heightPx };
}

/**
 * A detailed timing as a raster. Borders count as porches. Where front porch and sync take more than the blanking, the
 * back porch is negative by what they take too much: lines and rate are those of the blanking, which a problem tells of.
 */
export function rasterOfDetailed(timing: DetailedTiming): Timing {
  const { horizontal: h, vertical: v, interlaced } = timing;
  const heightPx = v.activeLines * (interlaced ? 2 : 1);
  const positiveSync = polarity(timing);
  return {
    widthPx: h.activePx,
    heightPx,
    interlaced,
    aspect: aspectOf(timing, heightPx),
    pixelClockKHz: timing.pixelClockKHz,
    horizontal: {
      frontPorch: h.frontPorchPx,
      sync: h.syncPx,
      backPorch: h.blankPx - h.frontPorchPx - h.syncPx,
      positiveSync: positiveSync.horizontal,
    },
    vertical: {
      frontPorch: v.frontPorchLines,
      sync: v.syncLines,
      backPorch: v.blankLines - v.frontPorchLines - v.syncLines,
      positiveSync: positiveSync.vertical,
    },
    halfLineFields: interlaced,
  };
}

/**
 * A timing of DisplayID as a raster. The lines of an interlaced one are those of the frame: each field gets the whole
 * lines of its half, and half a line besides (as edid-decode has it).
 */
export function rasterOfDisplayId(timing: DisplayIdTiming): Timing {
  const { horizontal: h, vertical: v, interlaced } = timing;
  const share = interlaced ? 2 : 1;
  const porches = (span: typeof h, by: number) => {
    const [blank, frontPorch, sync] = [span.blank, span.frontPorch, span.sync].map((part) =>
      Math.floor(part / by),
    ) as [number, number, number];
    return { frontPorch, sync, backPorch: blank - frontPorch - sync, positiveSync: span.positiveSync };
  };
  return {
    widthPx: h.active,
    heightPx: v.active,
    interlaced,
    aspect: { width: h.active, height: v.active },
    pixelClockKHz: timing.pixelClockKHz,
    horizontal: porches(h, 1),
    vertical: porches(v, share),
    halfLineFields: interlaced,
  };
}

/** Steps of the pixel clock in an 18-byte timing (E-EDID A.2 table 3.21). */
const clockStepKHz = 10;

/** The raster as an 18-byte timing, its clock rounded down; null when a number is too great for its field. */
export function detailedOfRaster(timing: Timing, imageMm = { width: 0, height: 0 }): DetailedTiming | null {
  const { horizontal: h, vertical: v, interlaced } = timing;
  const detailed: DetailedTiming = {
    pixelClockKHz: Math.floor(timing.pixelClockKHz / clockStepKHz) * clockStepKHz,
    interlaced,
    horizontal: {
      activePx: timing.widthPx,
      blankPx: h.frontPorch + h.sync + h.backPorch,
      frontPorchPx: h.frontPorch,
      syncPx: h.sync,
      borderPx: 0,
    },
    vertical: {
      activeLines: timing.heightPx / (interlaced ? 2 : 1),
      blankLines: v.frontPorch + v.sync + v.backPorch,
      frontPorchLines: v.frontPorch,
      syncLines: v.sync,
      borderLines: 0,
    },
    imageMm,
    stereoCode: 0,
    sync: {
      kind: 'digitalSeparate',
      verticalPositive: v.positiveSync,
      horizontalPositive: h.positiveSync,
    },
  };
  const fits =
    detailed.pixelClockKHz <= 655_350 &&
    Math.max(timing.widthPx, detailed.horizontal.blankPx) <= 4095 &&
    Math.max(detailed.vertical.activeLines, detailed.vertical.blankLines) <= 4095 &&
    Math.max(h.frontPorch, h.sync) <= 1023 &&
    Math.max(v.frontPorch, v.sync) <= 63;
  return fits ? detailed : null;
}
