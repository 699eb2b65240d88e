/**
 * Blanking of one direction, in pixels or lines. The porches are measured from the picture, borders included. The back
 * porch is negative where an EDID gives porch and sync more than its blanking has.
 */
export type Blanking = { frontPorch: number; sync: number; backPorch: number; positiveSync: boolean };

/** One raster, exactly. */
export type Timing = {
  /** As sent: where a format repeats every pixel, the repeated ones count. */
  widthPx: number;
  /** Of the frame, also when it is sent as two fields. */
  heightPx: number;
  interlaced: boolean;
  /** Width to height of the whole picture on the screen. */
  aspect: { width: number; height: number };
  pixelClockKHz: number;
  /** Pixels. */
  horizontal: Blanking;
  /** Lines; of one field when interlaced. */
  vertical: Blanking;
  /** Interlaced fields that are half a line longer than whole lines make them, as all but VIC 39 are. */
  halfLineFields: boolean;
};

export const blankingTotal = ({ frontPorch, sync, backPorch }: Blanking): number =>
  frontPorch + sync + backPorch;
export const horizontalBlankingPx = (timing: Timing): number => blankingTotal(timing.horizontal);
export const totalWidthPx = (timing: Timing): number => timing.widthPx + blankingTotal(timing.horizontal);

/** Lines of a whole frame, blanking included. */
export function totalLines({ heightPx, vertical, interlaced, halfLineFields }: Timing): number {
  if (!interlaced) return heightPx + blankingTotal(vertical);
  return heightPx + 2 * blankingTotal(vertical) + (halfLineFields ? 1 : 0);
}

/** Lines a second, kHz. */
export const lineRateKHz = (timing: Timing): number => timing.pixelClockKHz / totalWidthPx(timing);

/** Pictures a second: frames, or fields when interlaced, as the trade counts them (1080i60 is 30 frames). */
export const refreshHz = (timing: Timing): number =>
  (lineRateKHz(timing) * 1000 * (timing.interlaced ? 2 : 1)) / totalLines(timing);

/**
 * Two pictures in one, left above right with the vertical blanking once more between them: twice the lines at twice the
 * pixel clock. Source: HDMI 1.4b, 8.2.3.2, frame packing.
 */
export const framePacked = (timing: Timing): Timing => ({
  ...timing,
  heightPx: timing.heightPx + totalLines(timing),
  pixelClockKHz: timing.pixelClockKHz * 2,
});

/** The same raster at another pixel clock, as between 60 and 60/1.001 Hz. */
export const atPixelClock = (timing: Timing, pixelClockKHz: number): Timing => ({ ...timing, pixelClockKHz });
