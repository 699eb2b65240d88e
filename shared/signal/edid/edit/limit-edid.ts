import { vicTiming } from '../../timings/index.ts';
import type { BaseBlock } from '../base/base-block.ts';
import type { DetailedTiming } from '../base/detailed-timing.ts';
import { formulaOf } from '../by-size.ts';
import type { DataBlock } from '../cta/data-blocks.ts';
import { type CtaExtension, ctaSpaceLeft, ctaTag } from '../cta/extension.ts';
import { listedTimings, listsTimings } from '../displayid/cta-timing-blocks.ts';
import { type DisplayIdExtension, displayIdTag } from '../displayid/extension.ts';
import { blockMapTag } from '../encode.ts';
import { edited } from '../exact.ts';
import { dataBlocks, detailedTimings } from '../facts.ts';
import { sinkFormats } from '../formats.ts';
import { detailedOfRaster } from '../raster.ts';
import type { Edid, ExtensionBlock } from '../tree.ts';
import { type EdidLimits, type ResolvedLimits, resolveLimits } from './edid-limits.ts';
import { limitSink } from './limit-sink.ts';
import { limitBase, limitDescriptors, limitDisplayId } from './limit-timings.ts';
import { applyVideoPlan, isNativeFrame, planVideo } from './limit-video.ts';

/** Extension that lists timings alone (VESA VTB-EXT). */
const videoTimingTag = 0x10;

type Holder = readonly DataBlock[];

/** Changes every list of data blocks, all of them at once. */
function withDataBlocks(edid: Edid, change: (holders: readonly Holder[]) => Holder[]): Edid {
  const holders = edid.extensions.flatMap((extension): Holder[] => {
    if (extension.kind === 'cta') return [extension.dataBlocks];
    if (extension.kind !== 'displayId') return [];
    return extension.blocks.flatMap((block) => (block.kind === 'cta' ? [block.dataBlocks] : []));
  });
  const changed = change(holders);
  let next = 0;
  const take = (before: Holder): Holder => changed[next++] ?? before;
  return {
    ...edid,
    extensions: edid.extensions.map((extension): ExtensionBlock => {
      if (extension.kind === 'cta') return replaceCtaData(extension, take(extension.dataBlocks));
      return extension.kind === 'displayId' ? replaceDisplayIdData(extension, take) : extension;
    }),
  };
}

/** The very same items: nothing was edited. */
const same = (a: readonly object[], b: readonly object[]): boolean =>
  a.length === b.length && a.every((item, i) => item === b[i]);

function replaceCtaData(cta: CtaExtension, blocks: Holder): CtaExtension {
  return same(blocks, cta.dataBlocks) ? cta : fitted(edited(cta, { dataBlocks: blocks }));
}

function replaceDisplayIdData(
  extension: DisplayIdExtension,
  take: (before: Holder) => Holder,
): DisplayIdExtension {
  let touched = false;
  const blocks = extension.blocks.map((block) => {
    if (block.kind !== 'cta') return block;
    const after = take(block.dataBlocks);
    if (same(after, block.dataBlocks)) return block;
    touched = true;
    return edited(block, { dataBlocks: after });
  });
  return touched ? edited(extension, { blocks }) : extension;
}

/** Moving formats into 4:2:0 blocks can take more room than there is: those blocks go first, then timings. */
function fitted(cta: CtaExtension): CtaExtension {
  if (ctaSpaceLeft(cta) >= 0) return cta;
  const at = cta.dataBlocks.findLastIndex(({ kind }) => kind === 'ycbcr420Map' || kind === 'ycbcr420Video');
  if (at >= 0) return fitted(edited(cta, { dataBlocks: cta.dataBlocks.filter((_, i) => i !== at) }));
  return cta.timings.length > 0 ? fitted(edited(cta, { timings: cta.timings.slice(0, -1) })) : cta;
}

/** Formats that prefer what is gone, and positions of timings that may have moved, leave the preference list. */
function limitPreferences(blocks: Holder, listed: ReadonlySet<number>): DataBlock[] {
  return blocks.flatMap((block): DataBlock[] => {
    if (block.kind !== 'formatPreference') return [block];
    const references = block.references.filter((reference) => listed.has(reference));
    return references.length > 0 ? [edited(block, { references })] : [];
  });
}

function limitCtaTimings(cta: CtaExtension, limits: ResolvedLimits, base: BaseBlock): CtaExtension {
  const timings = limitDescriptors(cta.timings, {
    limitMHz: limits.formatClockMHz,
    revision: base.revision,
    formula: formulaOf(base),
  });
  const dataBlocks = cta.dataBlocks.filter(
    (block) => !listsTimings(block) || timingsFit(block, limits.formatClockMHz),
  );
  if (same(timings, cta.timings) && same(dataBlocks, cta.dataBlocks)) return cta;
  return edited(cta, { timings, dataBlocks });
}

/** Whether a block lists timings, all of them slow enough: one that lists none in a form that we read goes. */
function timingsFit(block: DataBlock, limitMHz: number): boolean {
  const listed = listedTimings(block);
  return listed.length > 0 && listed.every(({ timing }) => timing.pixelClockKHz / 1000 <= limitMHz);
}

/**
 * What stands first in the base block when its own timings are too fast: the best that is left, else 640x480, on a
 * picture of the size that they had.
 */
function substituteFor(limited: Edid): (imageMm: DetailedTiming['imageMm']) => DetailedTiming | null {
  return (imageMm) => {
    const [detailed] = detailedTimings({ ...limited, base: { ...limited.base, descriptors: [] } });
    if (detailed) return detailed;
    const area = ({ widthPx, heightPx }: { widthPx: number; heightPx: number }) => widthPx * heightPx;
    const candidates = sinkFormats(limited)
      .filter(({ source, in420 }) => source.kind === 'vic' && in420 !== 'only')
      .map(({ timing }) => timing)
      .sort((a, b) => area(b) - area(a) || b.pixelClockKHz - a.pixelClockKHz);
    const mandatory = vicTiming(1);
    return (
      [...candidates, ...(mandatory ? [mandatory] : [])]
        .map((timing) => detailedOfRaster(timing, imageMm))
        .find(Boolean) ?? null
    );
  };
}

const mapLength = 126;

function tagOf(extension: ExtensionBlock): number {
  switch (extension.kind) {
    case 'cta':
      return ctaTag;
    case 'displayId':
      return displayIdTag;
    case 'blockMap':
      return blockMapTag;
    case 'other':
      return extension.tag;
  }
}

/** Writes block maps anew: each lists the blocks that follow it (E-EDID A.2 section 2.2.3). */
const withMaps = (extensions: readonly ExtensionBlock[]): ExtensionBlock[] =>
  extensions.map((extension, i) => {
    if (extension.kind !== 'blockMap') return extension;
    const tags = extensions.slice(i + 1, i + 1 + mapLength).map(tagOf);
    return { kind: 'blockMap', tags: [...tags, ...new Array<number>(mapLength - tags.length).fill(0)] };
  });

function limitFormats(edid: Edid, limits: ResolvedLimits): Edid {
  const limitMHz = limits.formatClockMHz;
  const extensions = edid.extensions.flatMap((extension): ExtensionBlock[] => {
    if (extension.kind === 'cta') return [limitCtaTimings(extension, limits, edid.base)];
    if (extension.kind === 'displayId') {
      const blocks = limitDisplayId(extension.blocks, limitMHz);
      return blocks === null ? [] : [edited(extension, { blocks })];
    }
    return extension.kind === 'other' && extension.tag === videoTimingTag ? [] : [extension];
  });
  const gone = extensions.length < edid.extensions.length;
  const limited = { ...edid, extensions: gone ? withMaps(extensions) : extensions };
  const listed = new Set(
    dataBlocks(limited).flatMap((block) =>
      block.kind === 'video' ? block.formats.map(({ vic }) => vic) : [],
    ),
  );
  const preferring = withDataBlocks(limited, (holders) =>
    holders.map((blocks) => limitPreferences(blocks, listed)),
  );
  return withNativeCounts(edid, {
    ...preferring,
    base: limitBase(edid.base, limitMHz, substituteFor(preferring)),
  });
}

const listsCodes = (block: DataBlock): block is Extract<DataBlock, { kind: 'video' | 'ycbcr420Video' }> =>
  block.kind === 'video' || block.kind === 'ycbcr420Video';

const countsNative = ({ extensions }: Edid): number =>
  Math.max(0, ...extensions.map((extension) => (extension.kind === 'cta' ? extension.nativeTimings : 0)));

/** Whether a progressive timing is said to be native, by its code or by the count of detailed timings. */
const hasNativeFrame = (edid: Edid): boolean =>
  dataBlocks(edid).some((block) => listsCodes(block) && block.formats.some(isNativeFrame)) ||
  detailedTimings(edid)
    .slice(0, countsNative(edid))
    .some(({ interlaced }) => !interlaced);

/** Where the last native frame went, no interlaced timing is what the display shows best. */
function withoutNatives(edid: Edid): Edid {
  const cleared = withDataBlocks(edid, (holders) =>
    holders.map((blocks) =>
      blocks.map((block) => {
        if (!listsCodes(block) || !block.formats.some(({ native }) => native)) return block;
        return edited(block, { formats: block.formats.map((format) => ({ ...format, native: false })) });
      }),
    ),
  );
  return {
    ...cleared,
    extensions: cleared.extensions.map((extension) =>
      extension.kind === 'cta' && extension.nativeTimings > 0
        ? edited(extension, { nativeTimings: 0 })
        : extension,
    ),
  };
}

/**
 * Counts the native timings anew: they are the first ones of the EDID, base block included. Where the first was replaced,
 * or no progressive one is left of them, none is native any more.
 */
function withNativeCounts(before: Edid, after: Edid): Edid {
  const [had, has] = [detailedTimings(before), detailedTimings(after)];
  const unchanged =
    had.length === has.length && had.every(({ horizontal }, i) => has[i]?.horizontal === horizontal);
  const left = (count: number): number => {
    const native = had.slice(0, count);
    const kept = native.filter(({ horizontal }) => has.some((timing) => timing.horizontal === horizontal));
    const stillFirst = kept.every(({ horizontal }, i) => has[i]?.horizontal === horizontal);
    const progressive = kept.some(({ interlaced }) => !interlaced);
    return stillFirst && (progressive || native.every(({ interlaced }) => interlaced)) ? kept.length : 0;
  };
  return {
    ...after,
    extensions: after.extensions.map((extension) => {
      if (extension.kind !== 'cta' || unchanged) return extension;
      const nativeTimings = left(extension.nativeTimings);
      return nativeTimings === extension.nativeTimings ? extension : edited(extension, { nativeTimings });
    }),
  };
}

/**
 * An EDID that admits less: what a switch or receiver shows its sources when it is set to 9 Gbit/s, or without HDR, or
 * for stereo. Formats that would need more than the limit go, or stay as YCbCr 4:2:0 alone where the sink takes them so
 * (half the rate); timings, range limits and what SCDC is for follow. Nothing is ever raised. Encode the result with
 * `encodeEdid`, which puts header, counts and checksums right.
 */
export function limitEdid(edid: Edid, limits: EdidLimits): Edid {
  const resolved = resolveLimits(edid, limits);
  const formatsLimited = resolved.formatClockMHz !== Number.POSITIVE_INFINITY;
  let limited = withDataBlocks(edid, (holders) => holders.map((blocks) => limitSink(blocks, resolved)));
  if (formatsLimited || resolved.drop420) {
    const plan = planVideo(dataBlocks(limited), resolved);
    limited = withDataBlocks(limited, (holders) => applyVideoPlan(holders, plan, resolved));
  }
  if (formatsLimited) limited = limitFormats(limited, resolved);
  return hasNativeFrame(edid) && !hasNativeFrame(limited) ? withoutNatives(limited) : limited;
}
