import type { VideoFormat } from '../../contract/chain.ts';
import { type Message, message } from '../../message/index.ts';
import { type FoundTiming, refreshHz, type Timing } from '../timings/index.ts';
import type { EdidOffer } from './edid-offer.ts';

/** Clauses that say why an EDID doesn't offer this format; empty when it does. */
export function refusals(offer: EdidOffer, format: VideoFormat, found: FoundTiming): Message[] {
  const why = [whyNotTiming(offer, format, found), whyNotSampling(offer, format)];
  return why.filter((each) => each !== null);
}

function whyNotTiming(offer: EdidOffer, format: VideoFormat, found: FoundTiming): Message | null {
  const vics = found.source.kind === 'cta861' ? found.source.vics : [];
  if (format.encoding === 'ycbcr420') {
    if (vics.some((vic) => offer.vics420.includes(vic))) return null;
    return message('edidLacksSizeIn420');
  }
  if (vics.some((vic) => offer.vics.includes(vic)) || listedTiming(offer, format) !== null) return null;
  return vics.some((vic) => offer.vics420.includes(vic))
    ? message('edidOffersSizeIn420Only')
    : message('edidLacksSize');
}

function whyNotSampling({ depths }: EdidOffer, { encoding, bitsPerComponent }: VideoFormat): Message | null {
  const offered = depths[encoding];
  if (offered.length === 0) return message('edidLacksEncoding', { encoding });
  return offered.includes(bitsPerComponent)
    ? null
    : message('edidLacksDepth', { bits: bitsPerComponent, encoding });
}

/** How far a listed timing's rate may lie from the one asked for (assumed), as 59.97 for 60. */
const rateTolerance = 0.002;

/** The timing by which an EDID lists a size and rate outside the video codes; null when it doesn't. */
export function listedTiming(offer: EdidOffer, format: VideoFormat): Timing | null {
  const same = (timing: Timing): boolean =>
    timing.widthPx === format.widthPx &&
    timing.heightPx === format.heightPx &&
    timing.interlaced === format.interlaced &&
    Math.abs(refreshHz(timing) / format.refreshHz - 1) <= rateTolerance;
  return offer.timings.find(same) ?? null;
}
