import type { Device } from '../../contract/chain.ts';
import { hdrKinds, pictureFeatures } from '../../contract/chain-names.ts';
import {
  type DepthsByEncoding,
  decodeEdid,
  type EdidLimits,
  type FormatSource,
  limitEdid,
  type SinkCapabilities,
  sinkCapabilities,
} from '../edid/index.ts';
import type { CompressionCapabilities } from '../format/index.ts';
import { hdmiVicToVic, type Timing } from '../timings/index.ts';
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
  /** Kinds of HDR; where a vendor's block that isn't known may stand for one with dynamic metadata, those too. */
  hdr: readonly HdrKind[];
  /** BT.2020, in RGB and in YCbCr. */
  wideColour: { rgb: boolean; ycc: boolean };
  features: readonly Feature[];
  threeD: boolean;
};

type HdrKind = (typeof hdrKinds)[number];
type Feature = (typeof pictureFeatures)[number];

/** Types of dynamic metadata (CTA-861-H 7.5.14, annexes R and S; from memory). */
const kindByType: Readonly<Record<number, HdrKind>> = { 1: 'st2094-10', 4: 'st2094-40' };
/** Video blocks in which dynamic metadata are admitted otherwise, by the identifier registered with the IEEE (from memory). */
const kindByOui: Readonly<Record<string, HdrKind>> = { '00-D0-46': 'st2094-10', '90-84-8B': 'st2094-40' };

function hdrOf({ eotfs, dynamicMetadataTypes, vendorVideoOuis }: SinkCapabilities): HdrKind[] {
  const isUnknown = vendorVideoOuis.some((oui) => kindByOui[oui] === undefined);
  const named = [
    ...dynamicMetadataTypes.map((type) => kindByType[type]),
    ...vendorVideoOuis.map((oui) => kindByOui[oui]),
  ];
  return hdrKinds.filter((kind) => {
    if (kind === 'hdr10') return eotfs.includes('pq');
    if (kind === 'hlg') return eotfs.includes('hlg');
    return isUnknown || named.includes(kind);
  });
}

/** What the EDID in this hexadecimal offers once it is limited so; null where it holds none that can be read. */
export function readOffer(edidHex: string, limits: readonly EdidLimits[] = []): EdidOffer | null {
  const { edid } = decodeEdid(bytesOfHex(edidHex));
  if (edid === null) return null;
  const sink = sinkCapabilities(limits.reduce(limitEdid, edid));
  const plain = sink.formats.filter(({ in420 }) => in420 !== 'only');
  return {
    tmdsMHz: sink.maxTmdsCharacterRateMHz,
    frl: sink.frl,
    compression: sink.compression,
    vics: plain.flatMap(({ source }) => vicOf(source)),
    vics420: sink.formats.flatMap(({ source, in420 }) => (in420 === 'no' ? [] : vicOf(source))),
    timings: plain.filter(({ source }) => vicOf(source).length === 0).map(({ timing }) => timing),
    depths: sink.depths,
    hdr: hdrOf(sink),
    wideColour: {
      rgb: sink.colorimetry.includes('BT2020RGB'),
      ycc: sink.colorimetry.includes('BT2020YCC'),
    },
    features: pictureFeatures.filter((feature) => Boolean(sink[feature])),
    threeD: sink.threeD,
  };
}

function vicOf(source: FormatSource): number[] {
  if (source.kind === 'vic') return [source.vic];
  if (source.kind !== 'hdmiVic') return [];
  const vic = hdmiVicToVic.get(source.hdmiVic);
  return vic === undefined ? [] : [vic];
}

/** A reader that reads each EDID once with the same limits, however often it is asked for. */
export function readingOnce(): typeof readOffer {
  const known = new Map<string, EdidOffer | null>();
  return (edidHex, limits = []) => {
    const key = JSON.stringify([edidHex, limits]);
    const found = known.get(key);
    if (found !== undefined) return found;
    const offer = readOffer(edidHex, limits);
    known.set(key, offer);
    return offer;
  };
}

type Limits = Extract<Device['edidHandling'], { kind: 'limits' }>;

/** What a device that limits EDIDs takes away from one. */
export const edidLimitsOf = (limits: Limits): EdidLimits => ({
  ...(limits.maxTmdsCharacterRateMHz !== null && {
    maxTmdsCharacterRateMHz: limits.maxTmdsCharacterRateMHz,
  }),
  dropFrl: limits.dropsFrl,
  drop420: limits.drops420,
  dropHdr: limits.dropsHdr,
  stereoOnly: limits.stereoOnly,
});

export const bytesOfHex = (edidHex: string): Uint8Array =>
  Uint8Array.from(edidHex.match(/../g) ?? [], (byte) => Number.parseInt(byte, 16));

/** What is left of an offer that has no bytes when a device limits it; never more than there was. */
export function limitedOffer(offer: EdidOffer, limits: Limits): EdidOffer {
  return {
    ...offer,
    tmdsMHz: Math.min(offer.tmdsMHz, limits.maxTmdsCharacterRateMHz ?? offer.tmdsMHz),
    frl: limits.dropsFrl ? null : offer.frl,
    compression: limits.dropsFrl ? null : offer.compression,
    vics420: limits.drops420 ? [] : offer.vics420,
    depths: limits.drops420 ? { ...offer.depths, ycbcr420: [] } : offer.depths,
    hdr: limits.dropsHdr ? [] : offer.hdr,
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
    hdr: inBoth(one.hdr, other.hdr),
    wideColour: {
      rgb: one.wideColour.rgb && other.wideColour.rgb,
      ycc: one.wideColour.ycc && other.wideColour.ycc,
    },
    features: inBoth(one.features, other.features),
    threeD: one.threeD && other.threeD,
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
