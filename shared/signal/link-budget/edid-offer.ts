import type { Device, VideoFormat } from '../../contract/chain.ts';
import { type DepthsByEncoding, decodeEdid, type FormatSource, sinkCapabilities } from '../edid/index.ts';
import type { CompressionCapabilities } from '../format/index.ts';
import { type FoundTiming, hdmiVicToVic, refreshHz, type Timing } from '../timings/index.ts';
import { type Capacity, commonRate, leastOf } from './capacity.ts';

/** What an EDID offers a source, as far as a budget asks. */
export type EdidOffer = Capacity & {
  compression: CompressionCapabilities | null;
  /** CTA-861 codes in any sampling but 4:2:0; HDMI VICs under the codes they were given later. */
  vics: readonly number[];
  /** Codes in 4:2:0, whether or not they are offered otherwise. */
  vics420: readonly number[];
  /** Timings outside the video codes: detailed, standard and established. */
  timings: readonly Timing[];
  depths: DepthsByEncoding;
  hdr: boolean;
};

/** What the EDID in this hexadecimal offers; null where it holds none that can be read. */
export function readOffer(edidHex: string): EdidOffer | null {
  const bytes = Uint8Array.from(edidHex.match(/../g) ?? [], (byte) => Number.parseInt(byte, 16));
  const { edid } = decodeEdid(bytes);
  if (edid === null) return null;
  const sink = sinkCapabilities(edid);
  const plain = sink.formats.filter(({ in420 }) => in420 !== 'only');
  return {
    tmdsMHz: sink.maxTmdsCharacterRateMHz,
    frl: sink.frl,
    compression: sink.compression,
    vics: plain.flatMap(({ source }) => vicOf(source)),
    vics420: sink.formats.flatMap(({ source, in420 }) => (in420 === 'no' ? [] : vicOf(source))),
    timings: plain.filter(({ source }) => vicOf(source).length === 0).map(({ timing }) => timing),
    depths: sink.depths,
    hdr: sink.eotfs.some((eotf) => eotf === 'pq' || eotf === 'hlg'),
  };
}

function vicOf(source: FormatSource): number[] {
  if (source.kind === 'vic') return [source.vic];
  if (source.kind !== 'hdmiVic') return [];
  const vic = hdmiVicToVic.get(source.hdmiVic);
  return vic === undefined ? [] : [vic];
}

/** A reader that reads each EDID once, however often it is asked for. */
export function readingOnce(): (edidHex: string) => EdidOffer | null {
  const known = new Map<string, EdidOffer | null>();
  return (edidHex) => {
    const found = known.get(edidHex);
    if (found !== undefined) return found;
    const offer = readOffer(edidHex);
    known.set(edidHex, offer);
    return offer;
  };
}

/** Clauses that say why an EDID doesn't offer this format; empty when it does. */
export function refusals(offer: EdidOffer, format: VideoFormat, found: FoundTiming): string[] {
  const why = [whyNotTiming(offer, format, found), whyNotSampling(offer, format)];
  return why.filter((each) => each !== null);
}

function whyNotTiming(offer: EdidOffer, format: VideoFormat, found: FoundTiming): string | null {
  const vics = found.source.kind === 'cta861' ? found.source.vics : [];
  if (format.encoding === 'ycbcr420') {
    if (vics.some((vic) => offer.vics420.includes(vic))) return null;
    return 'doesn’t offer this size and rate in 4:2:0';
  }
  if (vics.some((vic) => offer.vics.includes(vic)) || listedTiming(offer, format) !== null) return null;
  return vics.some((vic) => offer.vics420.includes(vic))
    ? 'offers this size and rate in 4:2:0 only'
    : 'doesn’t offer this size and rate';
}

function whyNotSampling({ depths }: EdidOffer, { encoding, bitsPerComponent }: VideoFormat): string | null {
  const offered = depths[encoding];
  if (offered.length === 0) return `doesn’t offer ${encodingNames[encoding]}`;
  return offered.includes(bitsPerComponent)
    ? null
    : `doesn’t offer ${bitsPerComponent} bits in ${encodingNames[encoding]}`;
}

const encodingNames = { rgb: 'RGB', ycbcr444: '4:4:4', ycbcr422: '4:2:2', ycbcr420: '4:2:0' } as const;

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

type Limits = Extract<Device['edidHandling'], { kind: 'limits' }>;

/** What is left of an EDID when a device limits it; never more than there was. */
export function limited(offer: EdidOffer, limits: Limits): EdidOffer {
  return {
    ...offer,
    tmdsMHz: Math.min(offer.tmdsMHz, limits.maxTmdsCharacterRateMHz ?? offer.tmdsMHz),
    frl: limits.dropsFrl ? null : offer.frl,
    compression: limits.dropsFrl ? null : offer.compression,
    vics420: limits.drops420 ? [] : offer.vics420,
    depths: limits.drops420 ? { ...offer.depths, ycbcr420: [] } : offer.depths,
    hdr: offer.hdr && !limits.dropsHdr,
  };
}

/** What two EDIDs both offer: what a device with several outputs in use tells its inputs (assumed). */
export function common(one: EdidOffer, other: EdidOffer): EdidOffer {
  return {
    ...leastOf([one, other]),
    compression: weaker(one.compression, other.compression),
    vics: inBoth(one.vics, other.vics),
    vics420: inBoth(one.vics420, other.vics420),
    timings: one.timings.filter((timing) => other.timings.some((each) => sameTiming(timing, each))),
    depths: commonDepths(one.depths, other.depths),
    hdr: one.hdr && other.hdr,
  };
}

const inBoth = <Item>(one: readonly Item[], other: readonly Item[]): Item[] =>
  one.filter((each) => other.includes(each));

const commonDepths = (one: DepthsByEncoding, other: DepthsByEncoding): DepthsByEncoding => ({
  rgb: inBoth(one.rgb, other.rgb),
  ycbcr444: inBoth(one.ycbcr444, other.ycbcr444),
  ycbcr422: inBoth(one.ycbcr422, other.ycbcr422),
  ycbcr420: inBoth(one.ycbcr420, other.ycbcr420),
});

const sameTiming = (one: Timing, other: Timing): boolean =>
  one.widthPx === other.widthPx &&
  one.heightPx === other.heightPx &&
  one.interlaced === other.interlaced &&
  one.pixelClockKHz === other.pixelClockKHz;

function weaker(
  one: CompressionCapabilities | null,
  other: CompressionCapabilities | null,
): CompressionCapabilities | null {
  const maxRate = commonRate(one?.maxRate ?? null, other?.maxRate ?? null);
  if (one === null || other === null || maxRate === null) return null;
  return {
    maxRate,
    maxSlices: Math.min(one.maxSlices, other.maxSlices),
    maxSliceClockMHz: Math.min(one.maxSliceClockMHz, other.maxSliceClockMHz),
    maxLineBytes: Math.min(one.maxLineBytes, other.maxLineBytes),
    allTargets: one.allTargets && other.allTargets,
    native420: one.native420 && other.native420,
    bitsPerComponent: inBoth(one.bitsPerComponent, other.bitsPerComponent),
  };
}
