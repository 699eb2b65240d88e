import type { BaseBlock } from '../base/base-block.ts';
import type { Descriptor } from '../base/descriptors.ts';
import type { DetailedTiming } from '../base/detailed-timing.ts';
import type { RangeLimits } from '../base/range-limits.ts';
import {
  type EstablishedTiming,
  keptEstablished,
  keptEstablishedIII,
  type StandardTiming,
} from '../base/standard-timings.ts';
import type { DisplayIdBlock } from '../displayid/extension.ts';
import { edited } from '../exact.ts';
import { rasterBySize, sizeOfStandard } from '../formats.ts';

const clockFits = (pixelClockKHz: number, limitMHz: number): boolean => pixelClockKHz / 1000 <= limitMHz;

const sizeFits = (picture: EstablishedTiming, limitMHz: number): boolean =>
  clockFits(rasterBySize(picture).pixelClockKHz, limitMHz);

function limitRange(limits: RangeLimits, limitMHz: number): RangeLimits {
  if (limits.maxPixelClockMHz <= limitMHz) return limits;
  const timing = limits.timing.kind === 'cvt' ? { ...limits.timing, clockSteps: 0 } : limits.timing;
  return { ...limits, maxPixelClockMHz: Math.floor(limitMHz / 10) * 10, timing };
}

/** Rates of a CVT code by the bits of `rateFlags`, highest bit first; the last has reduced blanking. */
const cvtRatesHz = [50, 60, 75, 85, 60] as const;
const cvtRatio = { '4:3': 4 / 3, '16:9': 16 / 9, '16:10': 16 / 10, '15:9': 15 / 9 } as const;

function limitDescriptor(slot: Descriptor, limitMHz: number, revision: number): Descriptor | null {
  const standard = (timing: StandardTiming | null) =>
    timing && sizeFits(sizeOfStandard(timing, revision), limitMHz) ? timing : null;
  switch (slot.kind) {
    case 'timing':
      return clockFits(slot.timing.pixelClockKHz, limitMHz) ? slot : null;
    case 'rangeLimits': {
      const limits = limitRange(slot.limits, limitMHz);
      return limits === slot.limits ? slot : edited(slot, { limits });
    }
    case 'standardTimings':
      return edited(slot, { timings: slot.timings.map(standard) });
    case 'establishedTimingsIII':
      return edited(slot, { bits: keptEstablishedIII(slot.bits, (picture) => sizeFits(picture, limitMHz)) });
    case 'cvtCodes':
      return edited(slot, {
        codes: slot.codes.map((code) => {
          if (!code) return null;
          const widthPx = Math.floor((code.lines * cvtRatio[code.aspect]) / 8) * 8;
          const rateFlags = cvtRatesHz.reduce((flags, refreshHz, i) => {
            const mask = 16 >> i;
            const offered = (code.rateFlags & mask) !== 0;
            return offered && sizeFits({ widthPx, heightPx: code.lines, refreshHz }, limitMHz)
              ? flags + mask
              : flags;
          }, 0);
          return rateFlags === 0 ? null : { ...code, rateFlags };
        }),
      });
    default:
      return slot;
  }
}

/** The slots that stay, in order; those of timings that are too fast are left out. */
export const limitDescriptors = (
  slots: readonly Descriptor[],
  limitMHz: number,
  revision: number,
): Descriptor[] => slots.flatMap((slot) => limitDescriptor(slot, limitMHz, revision) ?? []);

const slotCount = 4;

/**
 * Limits the base block. It must begin with a timing (E-EDID A.2 section 3.10.1): where its first one goes, the next
 * one that stays moves up, or `substitute` takes the place.
 */
export function limitBase(
  base: BaseBlock,
  limitMHz: number,
  substitute: () => DetailedTiming | null,
): BaseBlock {
  const kept = limitDescriptors(base.descriptors, limitMHz, base.revision);
  const lost = kept.length < base.descriptors.length;
  const timings = kept.filter((slot) => slot.kind === 'timing');
  const others = kept.filter((slot) => slot.kind !== 'timing');
  const first = timings.length > 0 || !lost ? null : substitute();
  const slots: Descriptor[] = lost
    ? [...(first ? [{ kind: 'timing' as const, timing: first }] : timings), ...others]
    : kept;
  while (slots.length < slotCount) slots.push({ kind: 'dummy' });
  const firstStays = slots[0] === base.descriptors[0];
  const standard = (timing: StandardTiming | null) =>
    timing && sizeFits(sizeOfStandard(timing, base.revision), limitMHz) ? timing : null;
  return edited(base, {
    descriptors: slots,
    standardTimings: base.standardTimings.map(standard),
    establishedBits: keptEstablished(base.establishedBits, (picture) => sizeFits(picture, limitMHz)),
    firstTimingNative: base.firstTimingNative && (firstStays || base.revision < 4),
  });
}

/** Tags of DisplayID blocks that list timings in ways that aren't decoded: types III to V, VIII to X, and bitmaps. */
const otherTimingTags: readonly number[] = [0x05, 0x06, 0x07, 0x08, 0x11, 0x23, 0x24, 0x2a];

/** Drops timings that are too fast, and timing blocks of which that can't be told. */
export function limitDisplayId(blocks: readonly DisplayIdBlock[], limitMHz: number): DisplayIdBlock[] {
  return blocks.flatMap((block): DisplayIdBlock[] => {
    if (block.kind === 'unknown') return otherTimingTags.includes(block.tag) ? [] : [block];
    if (block.kind !== 'timings') return [block];
    const timings = block.timings.filter((timing) => clockFits(timing.pixelClockKHz, limitMHz));
    if (timings.length === block.timings.length) return [block];
    return timings.length > 0 ? [edited(block, { timings })] : [];
  });
}
