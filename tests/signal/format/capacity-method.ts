/** One line of a picture: pixels shown and in all, and the pixel clock. */
export type Line = { activePx: number; totalPx: number; clockMHz: number };
/** How its pixels are sent: bits of a component against eight, and how many pixels share a character. */
export type Packing = { depth: number; pixelsPerCharacter: 1 | 2 };
export type Lanes = { lanes: 3 | 4; gbpsPerLane: number };

/** What is left of the characters after framing, parity and maps, and the margin of 0.3 %. */
const overheadOf = (lanes: number): number => (lanes + 32 + 2.5) / (4 * 510 + lanes) + 0.003;

/**
 * The capacity method step by step at one rate, as HDMI 2.1 6.5.6.2 words it (from memory): characters that a line surely
 * has; times of picture and blanking; tri-bytes borrowed; what is left. Sixteen bits of payload travel in eighteen. Apart
 * from the product's code, to hold it against.
 */
export function carriesStepByStep(
  { activePx, totalPx, clockMHz }: Line,
  { depth, pixelsPerCharacter }: Packing,
  { lanes, gbpsPerLane }: Lanes,
): boolean {
  const blankPx = totalPx - activePx;
  const overhead = overheadOf(lanes);
  const clockHz = clockMHz * 1e6 * 1.005;
  const lineS = totalPx / clockHz;
  const laneHz = (gbpsPerLane * 1e9 * (1 - 300 / 1e6)) / 18;
  const charactersPerLine = Math.floor(lineS * laneHz * lanes);
  const packets = Math.ceil((192_000 + 3000) * 1.001 * lineS);
  const active = Math.ceil((24 * (depth / pixelsPerCharacter) * activePx) / 8 / 3);
  const blank = Math.ceil((blankPx * depth) / pixelsPerCharacter);
  const activeMinS = (1.5 * active) / (lanes * laneHz * (1 - overhead));
  const blankMinS = blank / (lanes * laneHz * (1 - overhead));
  const activeRefS = (lineS * activePx) / totalPx;
  const blankRefS = (lineS * blankPx) / totalPx;
  if (blankRefS < blankMinS) return false;
  const borrowedS = Math.max(activeMinS - activeRefS, 0);
  if (Math.ceil(borrowedS * (clockHz / totalPx) * (active + blank)) > 400) return false;
  const free = Math.floor(Math.max((blankPx * depth) / pixelsPerCharacter - 32 * (1 + packets) - 7, 0));
  const saved = Math.floor(Math.max((7 / 8) * free - 4, 0));
  const payload = Math.ceil(1.5 * active) + blank - saved;
  return payload / charactersPerLine + overhead <= 1;
}

/**
 * Whether a line of so many bits a pixel and the sound's data island go within the line's characters: what compressed
 * video takes at least (HDMI 2.1 6.5.6.2, from memory), the sink's buffer left aside.
 */
export function compressedLineFits(
  { activePx, totalPx, clockMHz }: Line,
  bitsPerPixel: number,
  { lanes, gbpsPerLane }: Lanes,
): boolean {
  const lineS = totalPx / (clockMHz * 1e6 * 1.005);
  const charactersHz = (lanes * gbpsPerLane * 1e9 * (1 - 300e-6)) / 18;
  const packets = Math.ceil((192_000 + 3000) * 1.001 * lineS);
  const active = Math.ceil((bitsPerPixel * activePx) / 24);
  const blanking = Math.ceil((32 * (1 + packets)) / 4) * 4;
  return 1.5 * active + blanking <= charactersHz * (1 - overheadOf(lanes)) * lineS;
}
