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
import type { DataBlock } from './cta/data-blocks.ts';
import { timingsOfDescriptor } from './cta/video-formats.ts';
import { listedTimings } from './displayid/cta-timing-blocks.ts';
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
  | { kind: 'rid'; rid: number }
  | { kind: 'detailed'; block: 'base' | 'cta' }
  /** In a section of DisplayID, or in a block of CTA-861 that is written like one. */
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

function shortVideoFormats(blocks: readonly DataBlock[]): SinkFormat[] {
  const formats: SinkFormat[] = [];
  const video = shortVideoDescriptors(blocks);
  const only = ycbcr420Vics(blocks);
  const capable = new Set([...ycbcr420CapabilityVics(blocks), ...only]);
  for (const { vic, native } of video) {
    const timing = vicTiming(vic);
    if (timing)
      formats.push({ source: { kind: 'vic', vic, native }, timing, in420: capable.has(vic) ? 'too' : 'no' });
  }
  const regular = new Set(video.map(({ vic }) => vic));
  for (const vic of only) {
    const timing = vicTiming(vic);
    if (timing && !regular.has(vic))
      formats.push({ source: { kind: 'vic', vic, native: false }, timing, in420: 'only' });
  }
  return formats;
}

const hdmiFormats = (blocks: readonly DataBlock[]): SinkFormat[] =>
  blocksOf(blocks, 'hdmi')
    .flatMap(({ hdmi }) => hdmi.details?.video?.hdmiVics ?? [])
    .flatMap((hdmiVic) => {
      const timing = hdmiVicTiming(hdmiVic);
      return timing ? { source: { kind: 'hdmiVic', hdmiVic }, timing, in420: 'no' } : [];
    });

const ridFormats = (blocks: readonly DataBlock[]): SinkFormat[] =>
  blocksOf(blocks, 'videoFormats').flatMap(({ video }) =>
    video.descriptors.flatMap((descriptor) =>
      timingsOfDescriptor(descriptor).map(
        (timing): SinkFormat => ({
          source: { kind: 'rid', rid: descriptor.rid },
          timing,
          in420: video.in420 ? 'too' : 'no',
        }),
      ),
    ),
  );

const listedFormats = (blocks: readonly DataBlock[]): SinkFormat[] =>
  blocks
    .flatMap(listedTimings)
    .map(({ timing, in420 }) => ({ source: { kind: 'displayId' }, timing, in420: in420 ? 'too' : 'no' }));

function ctaFormats(edid: Edid): SinkFormat[] {
  const blocks = dataBlocks(edid);
  const slots = ctaExtensions(edid).flatMap((cta) => cta.timings);
  return [
    ...shortVideoFormats(blocks),
    ...hdmiFormats(blocks),
    ...ridFormats(blocks),
    ...listedFormats(blocks),
    ...slots.flatMap((slot) => slotFormats(slot, edid.base, 'cta')),
  ];
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
