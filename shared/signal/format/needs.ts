import type { VideoFormat } from '../../contract/chain.ts';
import { type FoundTiming, findTiming, framePacked } from '../timings/index.ts';
import { type FrlNeeds, frlNeeds, leastFrlRate } from './frl.ts';
import type { FrlRate } from './frl-rates.ts';
import { type TmdsNeed, tmdsNeed } from './tmds.ts';

export type FormatNeed = FoundTiming & {
  format: VideoFormat;
  /** Null where the sampling can't be sent at all: 4:2:2 with 16 bits. */
  tmds: TmdsNeed | null;
  /** Uncompressed, on three and on four lanes; null as above. */
  frl: FrlNeeds | null;
  /** The slowest of the six rates that carries it uncompressed; null when none does. */
  leastFrlRate: FrlRate | null;
};

/**
 * What a format needs of a link, whichever way it is sent.
 *
 * @param found the timing it is sent with, where it is known better than by size and rate: from an EDID
 */
export function formatNeed(format: VideoFormat, found: FoundTiming = findTiming(format)): FormatNeed {
  const timing = format.threeD ? framePacked(found.timing) : found.timing;
  const frl = frlNeeds(timing, format);
  return {
    source: found.source,
    timing,
    format,
    tmds: tmdsNeed(timing, format),
    frl,
    leastFrlRate: frl && leastFrlRate(frl),
  };
}
