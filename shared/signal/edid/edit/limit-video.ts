import { hdmiVicTiming, vicTiming } from '../../timings/index.ts';
import type { DataBlock } from '../cta/data-blocks.ts';
import { capabilityMapOf, type ShortVideoDescriptor } from '../cta/video.ts';
import { fewerRates } from '../cta/video-formats.ts';
import { edited } from '../exact.ts';
import { shortVideoDescriptors, ycbcr420CapabilityVics, ycbcr420Vics } from '../facts.ts';
import type { ResolvedLimits } from './edid-limits.ts';

/** What becomes of the formats of all data blocks of an EDID. */
export type VideoPlan = {
  /** VICs that stay in the video blocks. */
  keep: ReadonlySet<number>;
  /** VICs that can be sent as YCbCr 4:2:0 alone from now on. */
  only420: readonly number[];
  /** VICs that can be sent as 4:2:0 besides. */
  too420: ReadonlySet<number>;
};

const clockMHz = (vic: number): number | null => {
  const timing = vicTiming(vic);
  return timing && timing.pixelClockKHz / 1000;
};

/** A format of unknown clock goes when clocks are limited: nobody could say that it fits. */
function fits(vic: number, limitMHz: number, halved: boolean): boolean {
  if (limitMHz === Number.POSITIVE_INFINITY) return true;
  const clock = clockMHz(vic);
  return clock !== null && clock / (halved ? 2 : 1) <= limitMHz;
}

/** Decides over all video blocks together, because capability maps count over all of them. */
export function planVideo(blocks: readonly DataBlock[], limits: ResolvedLimits): VideoPlan {
  const formats = shortVideoDescriptors(blocks);
  const capable = new Set(limits.drop420 ? [] : ycbcr420CapabilityVics(blocks));
  const limit = limits.formatClockMHz;
  const keep = new Set(formats.map(({ vic }) => vic).filter((vic) => fits(vic, limit, false)));
  const already = limits.drop420 ? [] : ycbcr420Vics(blocks);
  const moved = [...capable].filter((vic) => !keep.has(vic));
  const too420 = new Set([...capable].filter((vic) => keep.has(vic)));
  return {
    keep,
    only420: [...new Set([...already, ...moved])].filter((vic) => fits(vic, limit, true) && !too420.has(vic)),
    too420,
  };
}

/** Longest payload of a block with an extended tag. */
const mostIn420Block = 30;

/** True when any of a list's first sixteen formats goes: 3D structures count them by position. */
const shifts3D = (blocks: readonly DataBlock[], plan: VideoPlan): boolean =>
  shortVideoDescriptors(blocks)
    .slice(0, 16)
    .some(({ vic }) => !plan.keep.has(vic));

function limitHdmiVideo(
  block: Extract<DataBlock, { kind: 'hdmi' }>,
  limits: ResolvedLimits,
  lose3D: boolean,
): DataBlock {
  const { details } = block.hdmi;
  if (!details?.video) return block;
  const within = (hdmiVic: number) => {
    const timing = hdmiVicTiming(hdmiVic);
    return (
      limits.formatClockMHz === Number.POSITIVE_INFINITY ||
      (timing !== null && timing.pixelClockKHz / 1000 <= limits.formatClockMHz)
    );
  };
  const hdmiVics = details.video.hdmiVics.filter(within);
  if (hdmiVics.length === details.video.hdmiVics.length && !lose3D) return block;
  const video = {
    ...details.video,
    hdmiVics,
    ...(lose3D ? { threeDMultiCode: 0, threeD: new Uint8Array() } : {}),
  };
  return edited(block, { hdmi: { ...block.hdmi, details: { ...details, video } } });
}

/** Where a descriptor is too short to say which rates are left of it, it goes as a whole. */
function limitVideoFormats(
  block: Extract<DataBlock, { kind: 'videoFormats' }>,
  limits: ResolvedLimits,
): DataBlock[] {
  const { video } = block;
  const in420 = video.in420 && !limits.drop420;
  const descriptors = video.descriptors.flatMap((descriptor) => {
    if (limits.formatClockMHz === Number.POSITIVE_INFINITY) return descriptor;
    const left = fewerRates(descriptor, ({ pixelClockKHz }) => pixelClockKHz / 1000 <= limits.formatClockMHz);
    return left === descriptor || video.bytesEach > 1 ? (left ?? []) : [];
  });
  if (descriptors.length === 0 && video.descriptors.length > 0) return [];
  const unchanged =
    in420 === video.in420 &&
    descriptors.length === video.descriptors.length &&
    descriptors.every((left, i) => left === video.descriptors[i]);
  return [unchanged ? block : edited(block, { video: { ...video, in420, descriptors } })];
}

/**
 * Applies a plan to the data blocks of all extensions, list by list. The 4:2:0 blocks are written anew after the first
 * video block; a map that would name nothing goes, for an empty one names everything.
 */
export function applyVideoPlan(
  extensions: readonly (readonly DataBlock[])[],
  plan: VideoPlan,
  limits: ResolvedLimits,
): DataBlock[][] {
  const all = extensions.flat();
  const lose3D = shifts3D(all, plan);
  const kept = shortVideoDescriptors(all).filter(({ vic }) => plan.keep.has(vic));
  const mapped = kept.flatMap(({ vic }, i) => (plan.too420.has(vic) ? [i] : []));
  const fresh: DataBlock[] = [];
  if (plan.only420.length > 0)
    fresh.push({
      kind: 'ycbcr420Video',
      formats: plan.only420.slice(0, mostIn420Block).map((vic) => ({ vic, native: false })),
    });
  if (mapped.length > 0) fresh.push({ kind: 'ycbcr420Map', map: capabilityMapOf(mapped) });
  const limited = extensions.map((blocks) =>
    blocks.flatMap((block): DataBlock[] => {
      switch (block.kind) {
        case 'video': {
          const formats = block.formats.filter(({ vic }) => plan.keep.has(vic));
          return formats.length > 0 ? [edited(block, { formats })] : [];
        }
        case 'ycbcr420Video':
        case 'ycbcr420Map':
          return [];
        case 'videoFormats':
          return limitVideoFormats(block, limits);
        case 'hdmi':
          return [limitHdmiVideo(block, limits, lose3D)];
        default:
          return [block];
      }
    }),
  );
  const target = Math.max(extensions.findIndex(has420), 0);
  return limited.map((blocks, i) => (i === target ? afterVideo(blocks, fresh) : blocks));
}

/** Native and progressive. */
export const isNativeFrame = ({ vic, native }: ShortVideoDescriptor): boolean =>
  native && vicTiming(vic)?.interlaced === false;

const has420 = (blocks: readonly DataBlock[]): boolean =>
  blocks.some((block) => block.kind === 'ycbcr420Video' || block.kind === 'ycbcr420Map');

/** Blocks of one kind belong together near the front; a reader that stops early should see them. */
function afterVideo(blocks: readonly DataBlock[], fresh: readonly DataBlock[]): DataBlock[] {
  const at = blocks.findLastIndex((block) => block.kind === 'video') + 1;
  return [...blocks.slice(0, at), ...fresh, ...blocks.slice(at)];
}
