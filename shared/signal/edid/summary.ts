import { frlRates } from '../format/index.ts';
import { type DetailedTiming, timingFacts } from './base/detailed-timing.ts';
import { audioFormatName, audioRatesKHz } from './cta/audio.ts';
import { luminanceOf, minLuminanceOf, namesOfColorimetry, namesOfEotfs } from './cta/colour.ts';
import type { DataBlock } from './cta/data-blocks.ts';
import { namesFormat, type ShortVideoDescriptor } from './cta/video.ts';
import type { DecodedEdid } from './decode.ts';
import {
  blocksOf,
  ctaExtensions,
  dataBlocksByExtension,
  detailedTimings,
  firstText,
  shortVideoDescriptors,
  ycbcr420CapabilityVics,
  ycbcr420Vics,
} from './facts.ts';
import type { EdidProblem } from './problems.ts';
import type { Edid } from './tree.ts';

/** `refreshHz` is rounded to six decimals and counts fields where interlaced; null where no rate follows. */
export type TimingSummary = {
  widthPx: number;
  heightPx: number;
  interlaced: boolean;
  refreshHz: number | null;
  pixelClockKHz: number;
};

export type HdmiSummary = {
  physicalAddress: string | null;
  /** As written: 0 stays 0, although the standard takes it for "not stated". */
  maxTmdsClockMHz: number | null;
  deepColor: { dc30: boolean; dc36: boolean; dc48: boolean; y444: boolean };
  hdmiVics: number[];
};

export type HdmiForumSummary = {
  version: number;
  /** Null where the block has 0: nothing above 340 MHz. */
  maxTmdsCharacterRateMHz: number | null;
  scdc: boolean;
  deepColor420: { dc30: boolean; dc36: boolean; dc48: boolean };
  /** As written: null for none, and for codes past the table, of which a problem tells. */
  frl: { lanes: number; gbpsPerLane: number } | null;
  allm: boolean;
  vrrMinHz: number | null;
  vrrMaxHz: number | null;
  dsc: boolean;
};

/** Luminances follow the standard's formula also for code 0, rounded to three decimals. */
export type HdrStaticSummary = {
  eotfs: string[];
  maxLuminanceCdM2: number | null;
  maxFrameAverageCdM2: number | null;
  minLuminanceCdM2: number | null;
};

export type CtaSummary = {
  /** Of the first CTA-861 block; null where the data blocks are in a DisplayID section alone. */
  revision: number | null;
  underscan: boolean;
  basicAudio: boolean;
  ycbcr444: boolean;
  ycbcr422: boolean;
  vics: { vic: number; native: boolean }[];
  ycbcr420Vics: number[];
  ycbcr420CapabilityVics: number[];
  hdmi: HdmiSummary | null;
  hdmiForum: HdmiForumSummary | null;
  colorimetry: string[];
  hdrStatic: HdrStaticSummary | null;
  audio: { format: string; channels: number | null; sampleRatesKHz: number[] }[];
};

/**
 * An EDID in the shape that the command line prints and evidence keeps. What is absent is null or an empty list.
 *
 * Choices where the standards leave one, all made so that the figures are those of the reference program
 * (`edid-decode`): `serialNumber` is null for 0 (E-EDID A.2 section 3.4.3: not used); `week` and `year` are null where
 * a model year stands; `blockCount` counts the blocks that are there, not those declared; `checksumsValid` covers every
 * block and every DisplayID section; `detailedTimings` are the 18-byte ones of base block and CTA-861 blocks (those of
 * DisplayID are in the tree and in `sinkCapabilities`), `preferredTiming` the first of them; names and texts keep their
 * spaces. Lists join the extension blocks in order: within one, repeats stay; a later one adds what is new.
 */
export type EdidSummary = {
  /** No problem of severity `error`. */
  ok: boolean;
  problems: EdidProblem[];
  version: string | null;
  manufacturer: string | null;
  productCode: number | null;
  serialNumber: number | null;
  productName: string | null;
  productSerial: string | null;
  week: number | null;
  year: number | null;
  modelYear: number | null;
  blockCount: number;
  checksumsValid: boolean;
  preferredTiming: TimingSummary | null;
  detailedTimings: TimingSummary[];
  cta: CtaSummary | null;
};

const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals));

function summariseTiming(timing: DetailedTiming): TimingSummary {
  const facts = timingFacts(timing);
  return { ...facts, refreshHz: facts.refreshHz === null ? null : rounded(facts.refreshHz, 6) };
}

type ByExtension = readonly (readonly DataBlock[])[];

/** Joins the lists of several extension blocks: what a later one repeats is left out. */
function union<T>(
  extensions: ByExtension,
  listOf: (blocks: readonly DataBlock[]) => readonly T[],
  keyOf: (item: T) => unknown = (item) => item,
): T[] {
  const seen = new Set<unknown>();
  const all: T[] = [];
  for (const list of extensions.map(listOf)) {
    all.push(...list.filter((item) => !seen.has(keyOf(item))));
    for (const item of list) seen.add(keyOf(item));
  }
  return all;
}

/** Names of the bits of several blocks; a later one adds what is new. */
function namesOfAll(bitsOfBlocks: readonly number[], namesOf: (bits: number) => string[]): string[] {
  let seen = 0;
  return bitsOfBlocks.flatMap((bits) => {
    const fresh = bits & ~seen;
    seen |= bits;
    return fresh === 0 ? [] : namesOf(fresh);
  });
}

function summariseHdmi(extensions: ByExtension, all: readonly DataBlock[]): HdmiSummary | null {
  const first = blocksOf(all, 'hdmi')[0]?.hdmi;
  if (!first) return null;
  const flags = first.capabilities;
  return {
    physicalAddress: first.physicalAddress,
    maxTmdsClockMHz: first.maxTmdsClockMHz,
    deepColor: {
      dc30: flags?.dc30 ?? false,
      dc36: flags?.dc36 ?? false,
      dc48: flags?.dc48 ?? false,
      y444: flags?.dcY444 ?? false,
    },
    hdmiVics: union(extensions, (blocks) =>
      blocksOf(blocks, 'hdmi').flatMap(({ hdmi }) => hdmi.details?.video?.hdmiVics ?? []),
    ),
  };
}

function summariseForum(blocks: readonly DataBlock[]): HdmiForumSummary | null {
  const forum = blocksOf(blocks, 'hdmiForum')[0]?.forum;
  if (!forum) return null;
  const deep = forum.deepColour420;
  return {
    version: forum.version,
    maxTmdsCharacterRateMHz: forum.maxTmdsCharacterRateMHz || null,
    scdc: forum.flags?.scdcPresent ?? false,
    deepColor420: { dc30: deep?.dc30 ?? false, dc36: deep?.dc36 ?? false, dc48: deep?.dc48 ?? false },
    frl: frlRates[(forum.maxFrlCode ?? 0) - 1] ?? null,
    allm: forum.features?.allm ?? false,
    vrrMinHz: forum.vrrMinHz || null,
    vrrMaxHz: forum.vrrMaxHz || null,
    dsc: forum.dsc?.dsc12a ?? false,
  };
}

function summariseHdr(blocks: readonly DataBlock[]): HdrStaticSummary | null {
  const all = blocksOf(blocks, 'hdrStatic');
  const first = all[0]?.hdr;
  if (!first) return null;
  const { maxLuminanceCode: max, maxFrameAverageCode: average, minLuminanceCode: min } = first;
  return {
    eotfs: namesOfAll(
      all.map(({ hdr }) => hdr.eotfBits),
      namesOfEotfs,
    ),
    maxLuminanceCdM2: max === null ? null : rounded(luminanceOf(max), 3),
    maxFrameAverageCdM2: average === null ? null : rounded(luminanceOf(average), 3),
    minLuminanceCdM2: min === null ? null : rounded(minLuminanceOf(min, max ?? 0), 3),
  };
}

const formatsNamed = (blocks: readonly DataBlock[]): ShortVideoDescriptor[] =>
  shortVideoDescriptors(blocks).filter(({ vic }) => namesFormat(vic));

function audioFormats(blocks: readonly DataBlock[]): CtaSummary['audio'] {
  return blocksOf(blocks, 'audio')
    .flatMap((block) => [...block.descriptors])
    .filter((descriptor) => descriptor.formatCode !== 0)
    .map((descriptor) => ({
      format: audioFormatName(descriptor),
      channels: descriptor.channels,
      sampleRatesKHz: audioRatesKHz(descriptor),
    }));
}

function summariseCta(edid: Edid): CtaSummary | null {
  const ctas = ctaExtensions(edid);
  const extensions = dataBlocksByExtension(edid);
  if (extensions.length === 0) return null;
  const all = extensions.flat();
  return {
    revision: ctas[0]?.revision ?? null,
    underscan: ctas.some((cta) => cta.underscan),
    basicAudio: ctas.some((cta) => cta.basicAudio),
    ycbcr444: ctas.some((cta) => cta.ycbcr444),
    ycbcr422: ctas.some((cta) => cta.ycbcr422),
    vics: union(extensions, formatsNamed, ({ vic, native }) => vic + (native ? 256 : 0)),
    ycbcr420Vics: union(extensions, ycbcr420Vics),
    ycbcr420CapabilityVics: ycbcr420CapabilityVics(all),
    hdmi: summariseHdmi(extensions, all),
    hdmiForum: summariseForum(all),
    colorimetry: namesOfAll(
      blocksOf(all, 'colorimetry').map((block) => block.bits),
      namesOfColorimetry,
    ),
    hdrStatic: summariseHdr(all),
    audio: union(extensions, audioFormats, (format) => JSON.stringify(format)),
  };
}

function summariseBase(edid: Edid) {
  const { base } = edid;
  const made = base.manufacture.kind === 'made' ? base.manufacture : null;
  return {
    version: `${base.version}.${base.revision}`,
    manufacturer: base.manufacturer,
    productCode: base.productCode,
    serialNumber: base.serialNumber || null,
    productName: firstText(edid, 'productName'),
    productSerial: firstText(edid, 'productSerial'),
    week: made?.week ?? null,
    year: made?.year ?? null,
    modelYear: made ? null : base.manufacture.year,
  };
}

type Nullable<T> = { [K in keyof T]: T[K] | null };

const noBase: Nullable<ReturnType<typeof summariseBase>> = {
  version: null,
  manufacturer: null,
  productCode: null,
  serialNumber: null,
  productName: null,
  productSerial: null,
  week: null,
  year: null,
  modelYear: null,
};

/** The facts of a decoded EDID in the shape of `EdidSummary`. */
export function summarise(decoded: DecodedEdid): EdidSummary {
  const { edid, problems, blockCount, checksumsValid } = decoded;
  const timings = edid ? detailedTimings(edid).map(summariseTiming) : [];
  return {
    ok: !problems.some((problem) => problem.severity === 'error'),
    problems,
    ...(edid ? summariseBase(edid) : noBase),
    blockCount,
    checksumsValid,
    preferredTiming: timings[0] ?? null,
    detailedTimings: timings,
    cta: edid ? summariseCta(edid) : null,
  };
}
