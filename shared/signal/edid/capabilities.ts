import type { VideoFormat } from '../../contract/chain.ts';
import { type CompressionCapabilities, type FrlRate, scramblingAboveMHz } from '../format/index.ts';
import { bit } from './bytes.ts';
import { audioFormatName, audioRatesKHz, sampleSizes } from './cta/audio.ts';
import { luminanceOf, minLuminanceOf, namesOfColorimetry } from './cta/colour.ts';
import type { DataBlock } from './cta/data-blocks.ts';
import { type HdmiBlock, type Latency, latencyMs } from './cta/hdmi.ts';
import { type ForumDsc, frlRateOf, type HdmiForumBlock } from './cta/hdmi-forum.ts';
import { namesOfSpeakers } from './cta/speakers.ts';
import { type RefreshRange, refreshRangeOf, type Tiling, tilingOf } from './displayid/panel-facts.ts';
import { blocksOf, ctaExtensions, dataBlocks, displayIdBlocks } from './facts.ts';
import { type SinkFormat, sinkFormats } from './formats.ts';
import type { Edid } from './tree.ts';

export const eotfs = ['sdr', 'hdrGamma', 'pq', 'hlg'] as const;
/** Transfer functions in the order of their bits (CTA-861-H table 94). */
export type Eotf = (typeof eotfs)[number];

/** Depths a sink takes, by encoding; empty where it doesn't take the encoding at all. */
export type DepthsByEncoding = Record<VideoFormat['encoding'], VideoFormat['bitsPerComponent'][]>;

export type SinkAudio = {
  format: string;
  /** Null where the format doesn't say. */
  channels: number | null;
  ratesKHz: number[];
  /** L-PCM only. */
  sampleSizes: number[];
};

/** What a sink accepts, as its EDID admits. Rates are the sink's; cable and source are not in here. */
export type SinkCapabilities = {
  /** False for a DVI sink: no HDMI vendor block. It takes RGB of 8 bits and no audio (HDMI 1.4b appendix C). */
  hdmi: boolean;
  /** Highest TMDS character rate in MHz. */
  maxTmdsCharacterRateMHz: number;
  /** False where the EDID doesn't state the rate: then 165 MHz, or the fastest format it lists if that is more. */
  tmdsRateStated: boolean;
  frl: FrlRate | null;
  compression: CompressionCapabilities | null;
  depths: DepthsByEncoding;
  formats: SinkFormat[];
  eotfs: Eotf[];
  /** Desired luminances in cd/m²; null where not stated (code 0 or absent, CTA-861-H section 7.5.13). */
  luminance: { max: number | null; maxFrameAverage: number | null; min: number | null };
  /** Types of dynamic metadata in the standard's own block (CTA-861-H section 7.5.14). */
  dynamicMetadataTypes: number[];
  /** OUIs of vendor video blocks, which is where vendors put their dynamic-HDR systems. */
  vendorVideoOuis: string[];
  colorimetry: string[];
  audio: SinkAudio[];
  basicAudio: boolean;
  speakers: string[];
  scdc: boolean;
  allm: boolean;
  qms: boolean;
  /** Some 3D structure beside the picture (HDMI 1.4b, 8.3.2). */
  threeD: boolean;
  /** Hz; null where the sink has no variable refresh rate. `maxHz` null: up to the rate of the format. */
  vrr: { minHz: number; maxHz: number | null } | null;
  /** Rates that DisplayID says the display follows; beside `vrr`, which is HDMI's own. */
  refreshRange: RefreshRange | null;
  tiling: Tiling | null;
  /** What the display takes until it shows and sounds, ms; null where not stated. `interlaced`: where it is another. */
  latency: { progressive: SinkLatency; interlaced: SinkLatency | null } | null;
  physicalAddress: string | null;
};

export type SinkLatency = { videoMs: number | null; audioMs: number | null };

/** Without a stated rate, what every single link does (DVI 1.0 section 2.2.6; HDMI 1.4b section 8.3.2). */
export const unstatedRateMHz = 165;
/** What the HDMI vendor block states; the HDMI Forum's counts above this only (HDMI 2.0 section 10.3.2). */
export const highestPlainRateMHz = scramblingAboveMHz;

function tmdsRate(blocks: readonly DataBlock[], formats: readonly SinkFormat[]): [number, boolean] {
  const forum = Math.max(
    0,
    ...blocksOf(blocks, 'hdmiForum').map(({ forum: f }) => f.maxTmdsCharacterRateMHz ?? 0),
  );
  if (forum > highestPlainRateMHz) return [forum, true];
  const plain = Math.max(0, ...blocksOf(blocks, 'hdmi').map(({ hdmi }) => hdmi.maxTmdsClockMHz ?? 0));
  if (plain > 0) return [plain, true];
  const listed = formats.map(leastRateMHz).filter((rate) => rate <= highestPlainRateMHz);
  return [Math.max(unstatedRateMHz, ...listed), false];
}

/** What a format needs at least: half the pixel clock where 4:2:0 is the way that is left for it. */
function leastRateMHz({ timing, in420 }: SinkFormat): number {
  const plain = timing.pixelClockKHz / 1000;
  const halved = in420 === 'only' || (in420 === 'too' && plain > highestPlainRateMHz);
  return halved ? plain / 2 : plain;
}

/** Slices and their highest pixel clock by DSC_MaxSlices code (HDMI 2.1 table 10-7, from memory). */
const slices: Readonly<Record<number, { maxSlices: number; maxSliceClockMHz: number }>> = {
  1: { maxSlices: 1, maxSliceClockMHz: 340 },
  2: { maxSlices: 2, maxSliceClockMHz: 340 },
  3: { maxSlices: 4, maxSliceClockMHz: 340 },
  4: { maxSlices: 8, maxSliceClockMHz: 340 },
  5: { maxSlices: 8, maxSliceClockMHz: 400 },
  6: { maxSlices: 12, maxSliceClockMHz: 400 },
  7: { maxSlices: 16, maxSliceClockMHz: 400 },
};

function compressionOf(dsc: ForumDsc | null): CompressionCapabilities | null {
  const maxRate = frlRateOf(dsc?.maxFrlCode ?? null);
  const slice = slices[dsc?.maxSlicesCode ?? 0];
  if (!dsc?.dsc12a || !maxRate || !slice) return null;
  const depths: [number, boolean][] = [
    [10, dsc.bpc10],
    [12, dsc.bpc12],
    [16, dsc.bpc16],
  ];
  return {
    maxRate,
    ...slice,
    maxLineBytes: (dsc.chunkCode + 1) * 1024,
    allTargets: dsc.allBpp,
    native420: dsc.native420,
    bitsPerComponent: depths.filter(([, there]) => there).map(([depth]) => depth),
  };
}

function deepColour(flags: { dc30: boolean; dc36: boolean; dc48: boolean } | null | undefined) {
  const depths: VideoFormat['bitsPerComponent'][] = [8];
  if (flags?.dc30) depths.push(10);
  if (flags?.dc36) depths.push(12);
  if (flags?.dc48) depths.push(16);
  return depths;
}

/** YCbCr 4:2:2 always travels in 12 bits, whatever the deep colour flags say (HDMI 1.4b section 6.2.4). */
function depthsOf(
  edid: Edid,
  blocks: readonly DataBlock[],
  forum: HdmiForumBlock | undefined,
): DepthsByEncoding {
  const hdmi = blocksOf(blocks, 'hdmi')[0]?.hdmi;
  if (!hdmi && !forum) return { rgb: [8], ycbcr444: [], ycbcr422: [], ycbcr420: [] };
  const ctas = ctaExtensions(edid);
  const has420 = blocks.some((block) => block.kind === 'ycbcr420Video' || block.kind === 'ycbcr420Map');
  const flags = hdmi?.capabilities;
  return {
    rgb: deepColour(flags),
    ycbcr444: ctas.some((cta) => cta.ycbcr444) ? (flags?.dcY444 ? deepColour(flags) : [8]) : [],
    ycbcr422: ctas.some((cta) => cta.ycbcr422) ? [8, 10, 12] : [],
    ycbcr420: has420 ? deepColour(forum?.deepColour420) : [],
  };
}

function luminances(blocks: readonly DataBlock[]): SinkCapabilities['luminance'] {
  const hdr = blocksOf(blocks, 'hdrStatic')[0]?.hdr;
  const max = hdr?.maxLuminanceCode || null;
  const average = hdr?.maxFrameAverageCode || null;
  const min = hdr?.minLuminanceCode || null;
  return {
    max: max && luminanceOf(max),
    maxFrameAverage: average && luminanceOf(average),
    min: min && max && minLuminanceOf(min, max),
  };
}

function vrrOf(forum: HdmiForumBlock | undefined): SinkCapabilities['vrr'] {
  if (!forum?.vrrMinHz) return null;
  return { minHz: forum.vrrMinHz, maxHz: forum.vrrMaxHz || null };
}

const inMs = ({ videoCode, audioCode }: Latency): SinkLatency => ({
  videoMs: latencyMs(videoCode),
  audioMs: latencyMs(audioCode),
});

function latencyOf(hdmi: HdmiBlock | undefined): SinkCapabilities['latency'] {
  const { latency, interlacedLatency } = hdmi?.details ?? {};
  if (!latency) return null;
  return { progressive: inMs(latency), interlaced: interlacedLatency ? inMs(interlacedLatency) : null };
}

const audioOf = (blocks: readonly DataBlock[]): SinkAudio[] =>
  blocksOf(blocks, 'audio')
    .flatMap((block) => [...block.descriptors])
    .filter((descriptor) => descriptor.formatCode !== 0)
    .map((descriptor) => ({
      format: audioFormatName(descriptor),
      channels: descriptor.channels,
      ratesKHz: audioRatesKHz(descriptor),
      sampleSizes: sampleSizes(descriptor),
    }));

const distinct = <T>(items: readonly T[]): T[] => [...new Set(items)];

/**
 * What the sink behind an EDID accepts. Where several blocks state the same thing, lists are joined and the first
 * HDMI and HDMI Forum block count.
 */
export function sinkCapabilities(edid: Edid): SinkCapabilities {
  const blocks = dataBlocks(edid);
  const formats = sinkFormats(edid);
  const sections = displayIdBlocks(edid);
  const forum = blocksOf(blocks, 'hdmiForum')[0]?.forum;
  const hdmi = blocksOf(blocks, 'hdmi')[0]?.hdmi;
  const [maxTmdsCharacterRateMHz, tmdsRateStated] = tmdsRate(blocks, formats);
  const eotfBits = blocksOf(blocks, 'hdrStatic').reduce((bits, { hdr }) => bits | hdr.eotfBits, 0);
  const colorimetryBits = blocksOf(blocks, 'colorimetry').reduce((bits, block) => bits | block.bits, 0);
  const allocation = blocksOf(blocks, 'speakers').reduce((bits, block) => bits | block.allocation, 0);
  const vendorVideo = blocksOf(blocks, 'vendor').filter((block) => block.scope === 'video');
  return {
    hdmi: Boolean(hdmi ?? forum),
    maxTmdsCharacterRateMHz,
    tmdsRateStated,
    frl: frlRateOf(forum?.maxFrlCode ?? null),
    compression: compressionOf(forum?.dsc ?? null),
    depths: depthsOf(edid, blocks, forum),
    formats,
    eotfs: eotfs.filter((_, i) => bit(eotfBits, i)),
    luminance: luminances(blocks),
    dynamicMetadataTypes: distinct(
      blocksOf(blocks, 'hdrDynamic').flatMap((block) => block.types.map(({ type }) => type)),
    ),
    vendorVideoOuis: distinct(vendorVideo.map((block) => block.oui)),
    colorimetry: namesOfColorimetry(colorimetryBits),
    audio: audioOf(blocks),
    basicAudio: ctaExtensions(edid).some((cta) => cta.basicAudio),
    speakers: namesOfSpeakers(allocation),
    scdc: forum?.flags?.scdcPresent ?? false,
    allm: forum?.features?.allm ?? false,
    qms: forum?.features?.qms ?? false,
    threeD: hdmi?.details?.video?.threeDPresent ?? false,
    vrr: vrrOf(forum),
    refreshRange: refreshRangeOf(sections),
    tiling: tilingOf(sections),
    latency: latencyOf(hdmi),
    physicalAddress: hdmi?.physicalAddress ?? null,
  };
}
