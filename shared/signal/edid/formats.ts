import { hdmiVicTiming, type Timing, vicTiming } from '../timings/index.ts';
import type { BaseBlock } from './base/base-block.ts';
import type { Descriptor } from './base/descriptors.ts';
import {
  type EstablishedTiming,
  establishedTimings,
  establishedTimingsIII,
  type StandardTiming,
} from './base/standard-timings.ts';
import { formulaOf, rasterBySize, rastersOfCvtCode, sizeOfStandard } from './by-size.ts';
import { namedTimings } from './displayid/named-timings.ts';
import {
  blocksOf,
  ctaExtensions,
  dataBlocks,
  shortVideoDescriptors,
  ycbcr420CapabilityVics,
  ycbcr420Vics,
} from './facts.ts';
import { rasterOfDetailed, rasterOfDisplayId } from './raster.ts';
import type { Edid } from './tree.ts';

/** Where an EDID names a format. */
export type FormatSource =
  | { kind: 'vic'; vic: number; native: boolean }
  | { kind: 'hdmiVic'; hdmiVic: number }
  | { kind: 'detailed'; block: 'base' | 'cta' }
  | { kind: 'displayId' }
  /** Established or standard timings and CVT codes: known by size and rate, see `rasterBySize`. */
  | { kind: 'bySize' };

/** A format that a sink takes. */
export type SinkFormat = {
  source: FormatSource;
  timing: Timing;
  /** `too`: besides the other encodings; `only`: in YCbCr 4:2:0 alone; `no`: not in 4:2:0. */
  in420: 'no' | 'too' | 'only';
};

/** The formats of an 18-byte slot, which may stand in the base block or in a CTA-861 extension. */
function slotFormats(slot: Descriptor, base: BaseBlock, block: 'base' | 'cta'): SinkFormat[] {
  switch (slot.kind) {
    case 'timing':
      return [{ source: { kind: 'detailed', block }, timing: rasterOfDetailed(slot.timing), in420: 'no' }];
    case 'standardTimings':
      return standardFormats(slot.timings, base);
    case 'establishedTimingsIII':
      return establishedTimingsIII(slot.bits).map((picture) => bySize(picture, base));
    case 'cvtCodes':
      return slot.codes
        .flatMap((code) => (code ? rastersOfCvtCode(code) : []))
        .map(({ timing }) => named(timing));
    default:
      return [];
  }
}

const named = (timing: Timing): SinkFormat => ({ source: { kind: 'bySize' }, timing, in420: 'no' });
const bySize = (picture: EstablishedTiming, base: BaseBlock): SinkFormat =>
  named(rasterBySize(picture, formulaOf(base)));
const standardFormats = (timings: readonly (StandardTiming | null)[], base: BaseBlock): SinkFormat[] =>
  timings.flatMap((timing) => (timing ? bySize(sizeOfStandard(timing, base.revision), base) : []));

const baseFormats = ({ base }: Edid): SinkFormat[] => [
  ...base.descriptors.flatMap((slot) => slotFormats(slot, base, 'base')),
  ...standardFormats(base.standardTimings, base),
  ...establishedTimings(base.establishedBits).map((picture) => bySize(picture, base)),
];

function ctaFormats(edid: Edid): SinkFormat[] {
  const blocks = dataBlocks(edid);
  const formats: SinkFormat[] = [];
  const video = shortVideoDescriptors(blocks);
  const capable = new Set([...ycbcr420CapabilityVics(blocks), ...ycbcr420Vics(blocks)]);
  for (const { vic, native } of video) {
    const timing = vicTiming(vic);
    if (timing)
      formats.push({ source: { kind: 'vic', vic, native }, timing, in420: capable.has(vic) ? 'too' : 'no' });
  }
  const regular = new Set(video.map(({ vic }) => vic));
  for (const vic of ycbcr420Vics(blocks)) {
    const timing = vicTiming(vic);
    if (timing && !regular.has(vic))
      formats.push({ source: { kind: 'vic', vic, native: false }, timing, in420: 'only' });
  }
  for (const { hdmi } of blocksOf(blocks, 'hdmi')) {
    for (const hdmiVic of hdmi.details?.video?.hdmiVics ?? []) {
      const timing = hdmiVicTiming(hdmiVic);
      if (timing) formats.push({ source: { kind: 'hdmiVic', hdmiVic }, timing, in420: 'no' });
    }
  }
  const slots = ctaExtensions(edid).flatMap((cta) => cta.timings);
  return [...formats, ...slots.flatMap((slot) => slotFormats(slot, edid.base, 'cta'))];
}

function displayIdFormats({ extensions }: Edid): SinkFormat[] {
  const blocks = extensions.flatMap((extension) => (extension.kind === 'displayId' ? extension.blocks : []));
  return blocks
    .flatMap((block): Timing[] => {
      if (block.kind === 'timings') return block.timings.map(rasterOfDisplayId);
      return block.kind === 'unknown' ? namedTimings(block) : [];
    })
    .map((timing) => ({ source: { kind: 'displayId' }, timing, in420: 'no' }));
}

/** Every format the EDID names, in its own order: base block detailed first, then CTA-861, DisplayID. */
export const sinkFormats = (edid: Edid): SinkFormat[] => [
  ...baseFormats(edid),
  ...ctaFormats(edid),
  ...displayIdFormats(edid),
];
