import type { Timing } from './timing.ts';

/**
 * One line of a timing table: id; width; height of the frame; progressive, interlaced, or interlaced in whole-line
 * fields (`I`); aspect; pixel clock in kHz; then front porch, sync, back porch and sync polarity, first of a line in
 * pixels, then of a frame or field in lines.
 */
export type TableRow = readonly [
  id: number,
  widthPx: number,
  heightPx: number,
  scan: 'p' | 'i' | 'I',
  aspect: `${number}:${number}`,
  pixelClockKHz: number,
  horizontalFrontPorch: number,
  horizontalSync: number,
  horizontalBackPorch: number,
  horizontalPolarity: '+' | '-',
  verticalFrontPorch: number,
  verticalSync: number,
  verticalBackPorch: number,
  verticalPolarity: '+' | '-',
];

/** A table's rows by their id, in the order of the table. */
export const timingsById = (rows: readonly TableRow[]): ReadonlyMap<number, Timing> =>
  new Map(rows.map((row) => [row[0], timingOfRow(row)]));

function timingOfRow(row: TableRow): Timing {
  const [, widthPx, heightPx, scan, aspect, pixelClockKHz, hFront, hSync, hBack, hSign, ...lines] = row;
  const [vFront, vSync, vBack, vSign] = lines;
  const [width = 0, height = 0] = aspect.split(':').map(Number);
  return {
    widthPx,
    heightPx,
    interlaced: scan !== 'p',
    aspect: { width, height },
    pixelClockKHz,
    horizontal: { frontPorch: hFront, sync: hSync, backPorch: hBack, positiveSync: hSign === '+' },
    vertical: { frontPorch: vFront, sync: vSync, backPorch: vBack, positiveSync: vSign === '+' },
    halfLineFields: scan === 'i',
  };
}
