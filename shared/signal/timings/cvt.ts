import type { Timing } from './timing.ts';

/* All constants: VESA Coordinated Video Timings Standard 1.2, sections 3 to 5; the third reduced blanking: 2.0. */
const cellPx = 8;
const minFrontPorchLines = 3;
const minBackPorchLines = 7;
const backPorchLinesOfReduced2 = 6;
const minSyncAndBackPorchUs = 550;
const reducedMinBlankUs = 460;
const syncShareOfLine = 0.08;
/** Offset and gradient of the blanking duty cycle, per cent and per cent per kHz, after scaling (30, 300). */
const dutyOffset = 30;
const dutyGradient = 300;
const minDutyPercent = 20;

export const cvtBlankings = ['standard', 'reduced1', 'reduced2', 'reduced3'] as const;
export type CvtBlanking = (typeof cvtBlankings)[number];

export type CvtRequest = {
  widthPx: number;
  /** Of the frame. */
  heightPx: number;
  /** Frames a second, or fields when interlaced. */
  refreshHz: number;
  interlaced?: boolean;
  blanking: CvtBlanking;
};

/**
 * The CVT timing of a picture without margins. Its real refresh rate lies a little below the one asked for, because
 * the pixel clock comes in steps: of 250 kHz, or 1 kHz with the second reduced blanking. With the third it is rounded
 * up, so that the rate lies above.
 *
 * A width that isn't whole cells of 8 pixels keeps its pixels, and gets the blanking and clock of the cells below it.
 * Source: VESA CVT 1.2. The second reduced blanking at 1000/1001 of a rate is that rate asked for here.
 */
export function cvtTiming(request: CvtRequest): Timing {
  return request.blanking === 'standard' ? standardTiming(request) : reducedTiming(request, request.blanking);
}

type Raster = { widthPx: number; fieldLines: number; halfLine: number };

function rasterOf({ widthPx, heightPx, interlaced, blanking }: CvtRequest): Raster {
  return {
    widthPx: blanking === 'reduced2' ? widthPx : wholeCells(widthPx),
    fieldLines: interlaced ? Math.floor(heightPx / 2) : heightPx,
    halfLine: interlaced ? 0.5 : 0,
  };
}

function standardTiming(request: CvtRequest): Timing {
  const { widthPx, fieldLines, halfLine } = rasterOf(request);
  const syncLines = syncLinesFor(request);
  const periodUs =
    ((1 / request.refreshHz - minSyncAndBackPorchUs / 1_000_000) /
      (fieldLines + minFrontPorchLines + halfLine)) *
    1_000_000;
  const syncAndBackPorch = Math.max(
    Math.floor(minSyncAndBackPorchUs / periodUs) + 1,
    syncLines + minBackPorchLines,
  );
  const duty = Math.max(dutyOffset - (dutyGradient * periodUs) / 1000, minDutyPercent);
  const blankPx = Math.floor((widthPx * duty) / (100 - duty) / (2 * cellPx)) * (2 * cellPx);
  const totalPx = widthPx + blankPx;
  const syncPx = wholeCells(syncShareOfLine * totalPx);
  return {
    ...pictureOf(request),
    pixelClockKHz: wholeSteps(totalPx / periodUs / 0.25) * 250,
    horizontal: {
      frontPorch: blankPx / 2 - syncPx,
      sync: syncPx,
      backPorch: blankPx / 2,
      positiveSync: false,
    },
    vertical: {
      frontPorch: minFrontPorchLines,
      sync: syncLines,
      backPorch: syncAndBackPorch - syncLines,
      positiveSync: true,
    },
  };
}

/** What the reduced blankings fix: horizontal in pixels, vertical in lines, clock step in kHz. */
const reduced = {
  reduced1: { front: 48, sync: 32, back: 80, stepKHz: 250 },
  reduced2: { front: 8, sync: 32, back: 40, stepKHz: 1 },
  reduced3: { front: 8, sync: 32, back: 40, stepKHz: 250 },
} as const;

function reducedTiming(request: CvtRequest, blanking: keyof typeof reduced): Timing {
  const { widthPx, fieldLines, halfLine } = rasterOf(request);
  const { front, sync, back, stepKHz } = reduced[blanking];
  const syncLines = blanking === 'reduced1' ? syncLinesFor(request) : 8;
  const [minFront, minBack] =
    blanking === 'reduced1' ? [minFrontPorchLines, minBackPorchLines] : [1, backPorchLinesOfReduced2];
  const periodUs = (1_000_000 / request.refreshHz - reducedMinBlankUs) / fieldLines;
  const blankLines = Math.max(Math.floor(reducedMinBlankUs / periodUs) + 1, minFront + syncLines + minBack);
  const totalPx = widthPx + front + sync + back;
  const clockKHz = (request.refreshHz * (fieldLines + blankLines + halfLine) * totalPx) / 1000;
  const others = blankLines - syncLines;
  return {
    ...pictureOf(request),
    // A clock that is a whole step but for binary rounding is that step.
    pixelClockKHz:
      blanking === 'reduced3'
        ? Math.ceil(clockKHz / stepKHz - 1e-9) * stepKHz
        : wholeSteps(clockKHz / stepKHz + 1e-9) * stepKHz,
    horizontal: { frontPorch: front, sync, backPorch: back, positiveSync: true },
    vertical:
      blanking === 'reduced1'
        ? { frontPorch: minFront, sync: syncLines, backPorch: others - minFront, positiveSync: false }
        : {
            frontPorch: others - minBack,
            sync: syncLines,
            backPorch: minBack,
            positiveSync: false,
          },
  };
}

/** Whole steps of the pixel clock; one at least, since a picture of a few pixels has a clock too. */
const wholeSteps = (steps: number): number => Math.max(1, Math.floor(steps));
const wholeCells = (px: number): number => Math.floor(px / cellPx) * cellPx;

/** The length of vertical sync tells the aspect ratio; 10 lines are for all that have no length of their own. */
function syncLinesFor({ widthPx, heightPx }: CvtRequest): number {
  const lengths: [width: number, height: number, lines: number][] = [
    [4, 3, 4],
    [16, 9, 5],
    [16, 10, 6],
    [5, 4, 7],
    [15, 9, 7],
  ];
  const found = lengths.find(([width, height]) => wholeCells((heightPx * width) / height) === widthPx);
  return found?.[2] ?? 10;
}

function pictureOf({ widthPx, heightPx, interlaced = false }: CvtRequest) {
  return {
    widthPx,
    heightPx,
    interlaced,
    aspect: lowestTerms(widthPx, heightPx),
    halfLineFields: interlaced,
  };
}

function lowestTerms(width: number, height: number): { width: number; height: number } {
  let [a, b] = [width, height];
  while (b > 0) [a, b] = [b, a % b];
  return { width: width / a, height: height / a };
}
