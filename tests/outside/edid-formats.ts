import { type Edid, sinkCapabilities } from '../../shared/signal/edid/index.ts';
import { refreshHz } from '../../shared/signal/timings/index.ts';

/** A format as a line that both can be written as: size, rate in Hz to three decimals, clock in kHz. */
export type FormatLine = string;

const lineOf = (size: string, rateHz: number, clockKHz: number): FormatLine =>
  `${size} ${rateHz.toFixed(3)} ${clockKHz}`;

/** Every format of an EDID, sorted; each once. */
export function formatsOf(edid: Edid): FormatLine[] {
  const lines = sinkCapabilities(edid).formats.map(({ timing }) =>
    lineOf(
      `${timing.widthPx}x${timing.heightPx}${timing.interlaced ? 'i' : ''}`,
      refreshHz(timing),
      timing.pixelClockKHz,
    ),
  );
  return [...new Set(lines)].sort();
}

/** The reference program's timings: every line with a size, a rate, a line rate and a clock; each once. */
export function formatsFromReference(output: string): FormatLine[] {
  const timing = /: +(\d+)x(\d+)(i?) +([\d.]+) Hz +\S+ +[\d.]+ kHz +([\d.]+) MHz/;
  const lines = output.split('\n').flatMap((line) => {
    const [, width, height, interlaced, rate, clock] = timing.exec(line) ?? [];
    if (width === undefined) return [];
    return lineOf(`${width}x${height}${interlaced}`, Number(rate), Math.round(Number(clock) * 1000));
  });
  return [...new Set(lines)].sort();
}
