import { refreshHz } from '../timings/index.ts';
import { type SinkCapabilities, sinkCapabilities } from './capabilities.ts';
import type { FormatSource, SinkFormat } from './formats.ts';
import type { TimingSummary } from './summary.ts';
import type { Edid } from './tree.ts';

/** What a sink takes in the shape that the command line prints: its capabilities, each format by size, rate and clock. */
export type SinkSummary = Omit<SinkCapabilities, 'formats'> & {
  formats: (TimingSummary & { source: FormatSource; in420: SinkFormat['in420'] })[];
};

/** `sinkCapabilities` for programs to read: without rasters, rates rounded to six decimals as `TimingSummary` has them. */
export function summariseSink(edid: Edid): SinkSummary {
  const sink = sinkCapabilities(edid);
  return { ...sink, formats: sink.formats.map(summariseFormat) };
}

function summariseFormat({ timing, source, in420 }: SinkFormat): SinkSummary['formats'][number] {
  const { widthPx, heightPx, interlaced, pixelClockKHz } = timing;
  const rateHz = refreshHz(timing);
  return {
    widthPx,
    heightPx,
    interlaced,
    refreshHz: Number.isFinite(rateHz) ? Number(rateHz.toFixed(6)) : null,
    pixelClockKHz,
    source,
    in420,
  };
}
