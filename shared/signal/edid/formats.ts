import {
  dmtTimings,
  findTiming,
  hdmiVicTiming,
  refreshHz,
  type Timing,
  vicTiming,
} from '../timings/index.ts';
import {
  type EstablishedTiming,
  establishedTimings,
  establishedTimingsIII,
  type StandardTiming,
  standardTimingHeightPx,
} from './base/standard-timings.ts';
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
  /** Established or standard timings: known by size and rate, the raster found in DMT or by CVT. */
  | { kind: 'bySize' };

/** A format that a sink takes. */
export type SinkFormat = {
  source: FormatSource;
  timing: Timing;
  /** `too`: besides the other encodings; `only`: in YCbCr 4:2:0 alone; `no`: not in 4:2:0. */
  in420: 'no' | 'too' | 'only';
};

/** Standard timings name whole rates; their rasters in DMT lie within this of them (assumed). */
const nominalToleranceHz = 0.6;
const exactToleranceHz = 0.005;

/**
 * The raster of an established or standard timing: the one in DMT at that very rate, else the fastest near it, for that
 * is the one with the standard's code; what DMT lacks by CVT with its wider blanking.
 */
export function rasterBySize(picture: EstablishedTiming): Timing {
  const interlaced = picture.interlaced ?? false;
  const distance = (timing: Timing) => Math.abs(refreshHz(timing) - picture.refreshHz);
  const near = [...dmtTimings.values()].filter(
    (timing) =>
      timing.widthPx === picture.widthPx &&
      timing.heightPx === picture.heightPx &&
      timing.interlaced === interlaced &&
      distance(timing) < nominalToleranceHz,
  );
  const exact = near.find((timing) => distance(timing) < exactToleranceHz);
  const [fastest] = near.sort((a, b) => b.pixelClockKHz - a.pixelClockKHz);
  return exact ?? fastest ?? findTiming({ ...picture, interlaced }, 'standard').timing;
}

/** A standard timing as size and rate; `revision` is that of the EDID 1.x. */
export const sizeOfStandard = (timing: StandardTiming, revision: number): EstablishedTiming => ({
  widthPx: timing.widthPx,
  heightPx: standardTimingHeightPx(timing, revision < 3),
  refreshHz: timing.refreshHz,
});

function baseFormats({ base }: Edid): SinkFormat[] {
  const formats: SinkFormat[] = [];
  const bySize = (picture: EstablishedTiming) =>
    formats.push({ source: { kind: 'bySize' }, timing: rasterBySize(picture), in420: 'no' });
  const standard = (timings: readonly (StandardTiming | null)[]) => {
    for (const timing of timings) if (timing) bySize(sizeOfStandard(timing, base.revision));
  };
  for (const slot of base.descriptors) {
    if (slot.kind === 'timing')
      formats.push({
        source: { kind: 'detailed', block: 'base' },
        timing: rasterOfDetailed(slot.timing),
        in420: 'no',
      });
    if (slot.kind === 'standardTimings') standard(slot.timings);
    if (slot.kind === 'establishedTimingsIII') establishedTimingsIII(slot.bits).forEach(bySize);
  }
  standard(base.standardTimings);
  establishedTimings(base.establishedBits).forEach(bySize);
  return formats;
}

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
  for (const slot of ctaExtensions(edid).flatMap((cta) => cta.timings)) {
    if (slot.kind === 'timing')
      formats.push({
        source: { kind: 'detailed', block: 'cta' },
        timing: rasterOfDetailed(slot.timing),
        in420: 'no',
      });
  }
  return formats;
}

function displayIdFormats({ extensions }: Edid): SinkFormat[] {
  const blocks = extensions.flatMap((extension) => (extension.kind === 'displayId' ? extension.blocks : []));
  return blocks
    .flatMap((block) => (block.kind === 'timings' ? block.timings : []))
    .map((timing) => ({ source: { kind: 'displayId' }, timing: rasterOfDisplayId(timing), in420: 'no' }));
}

/** Every format the EDID names, in its own order: base block detailed first, then CTA-861, DisplayID. */
export const sinkFormats = (edid: Edid): SinkFormat[] => [
  ...baseFormats(edid),
  ...ctaFormats(edid),
  ...displayIdFormats(edid),
];
