import type { BaseBlock } from '../base/base-block.ts';
import type { CvtCode, Descriptor } from '../base/descriptors.ts';
import type { DetailedTiming } from '../base/detailed-timing.ts';
import type { RangeLimits } from '../base/range-limits.ts';
import {
  type EstablishedTiming,
  keptEstablished,
  keptEstablishedIII,
  type StandardTiming,
} from '../base/standard-timings.ts';
import { formulaOf, rasterBySize, rastersOfCvtCode, sizeOfStandard, type TimingFormula } from '../by-size.ts';
import type { DisplayIdBlock } from '../displayid/extension.ts';
import { namedTimings } from '../displayid/named-timings.ts';
import type { DisplayIdTiming } from '../displayid/timings.ts';
import { edited } from '../exact.ts';

const clockFits = (pixelClockKHz: number, limitMHz: number): boolean => pixelClockKHz / 1000 <= limitMHz;

/** Which timings may stay, and what is known of the EDID that they stand in. */
export type TimingLimit = { limitMHz: number; revision: number; formula: TimingFormula };

const sizeFits = (picture: EstablishedTiming, { limitMHz, formula }: TimingLimit): boolean =>
  clockFits(rasterBySize(picture, formula).pixelClockKHz, limitMHz);

const standardFits =
  (limit: TimingLimit) =>
  (timing: StandardTiming | null): StandardTiming | null =>
    timing && sizeFits(sizeOfStandard(timing, limit.revision), limit) ? timing : null;

function limitRange(limits: RangeLimits, limitMHz: number): RangeLimits {
  if (limits.maxPixelClockMHz <= limitMHz) return limits;
  const timing = limits.timing.kind === 'cvt' ? { ...limits.timing, clockSteps: 0 } : limits.timing;
  return {
    ...limits,
    maxPixelClockMHz: Math.min(limits.maxPixelClockMHz, Math.ceil(limitMHz / 10) * 10),
    timing,
  };
}

/** Bits of `rateFlags` by the code of the preferred rate: 50, 60 (with either blanking), 75, 85 Hz. */
const cvtFlagsByPreference = [16, 8 + 1, 4, 2] as const;

function limitCvtCode(code: CvtCode | null, limitMHz: number): CvtCode | null {
  if (!code) return null;
  const rateFlags = rastersOfCvtCode(code)
    .filter(({ timing }) => clockFits(timing.pixelClockKHz, limitMHz))
    .reduce((flags, { flag }) => flags | flag, 0);
  if (rateFlags === 0) return null;
  const preferred = cvtFlagsByPreference[code.preferredRateCode] ?? 0;
  if ((rateFlags & preferred) !== 0) return { ...code, rateFlags };
  return {
    ...code,
    rateFlags,
    preferredRateCode: cvtFlagsByPreference.findIndex((flags) => rateFlags & flags),
  };
}

/** The codes that stay, at the front, where a list must begin (E-EDID A.2 section 3.10.3.8); null where none does. */
function limitCvtCodes(codes: readonly (CvtCode | null)[], limitMHz: number): (CvtCode | null)[] | null {
  const kept = codes.flatMap((code) => limitCvtCode(code, limitMHz) ?? []);
  return kept.length === 0 ? null : codes.map((_, i) => kept[i] ?? null);
}

function limitDescriptor(slot: Descriptor, limit: TimingLimit): Descriptor | null {
  const { limitMHz } = limit;
  switch (slot.kind) {
    case 'timing':
      return clockFits(slot.timing.pixelClockKHz, limitMHz) ? slot : null;
    case 'rangeLimits': {
      const limits = limitRange(slot.limits, limitMHz);
      return limits === slot.limits ? slot : edited(slot, { limits });
    }
    case 'standardTimings':
      return edited(slot, { timings: slot.timings.map(standardFits(limit)) });
    case 'establishedTimingsIII':
      return edited(slot, { bits: keptEstablishedIII(slot.bits, (picture) => sizeFits(picture, limit)) });
    case 'cvtCodes': {
      const codes = limitCvtCodes(slot.codes, limitMHz);
      return codes && edited(slot, { codes });
    }
    default:
      return slot;
  }
}

/** The slots that stay, in order; those of timings that are too fast are left out. */
export const limitDescriptors = (slots: readonly Descriptor[], limit: TimingLimit): Descriptor[] =>
  slots.flatMap((slot) => limitDescriptor(slot, limit) ?? []);

const slotCount = 4;

/** The size of the picture as the block's first timing has it; without one, as the block itself does. */
function imageOf({ descriptors, screen }: BaseBlock): DetailedTiming['imageMm'] {
  const slot = descriptors.find(({ kind }) => kind === 'timing');
  if (slot?.kind === 'timing') return slot.timing.imageMm;
  if (screen.kind !== 'size') return { width: 0, height: 0 };
  return { width: screen.widthCm * 10, height: screen.heightCm * 10 };
}

/** Gives a timing that tells of no size the one that the timing in front of it had told of. */
const withImage =
  (imageMm: DetailedTiming['imageMm']) =>
  (slot: Descriptor, i: number): Descriptor => {
    if (i > 0 || slot.kind !== 'timing' || slot.timing.imageMm.width > 0 || imageMm.width === 0) return slot;
    return edited(slot, { timing: { ...slot.timing, imageMm } });
  };

/**
 * Limits the base block. It must begin with a timing (E-EDID A.2 section 3.10.1): where its first one goes, the next
 * one that stays moves up, or `substitute` takes the place.
 */
export function limitBase(
  base: BaseBlock,
  limitMHz: number,
  substitute: (imageMm: DetailedTiming['imageMm']) => DetailedTiming | null,
): BaseBlock {
  const limit = { limitMHz, revision: base.revision, formula: formulaOf(base) };
  const kept = limitDescriptors(base.descriptors, limit);
  const lost = kept.length < base.descriptors.length;
  const timings = kept.filter((slot) => slot.kind === 'timing');
  const others = kept.filter((slot) => slot.kind !== 'timing');
  const imageMm = imageOf(base);
  const first = timings.length > 0 || !lost ? null : substitute(imageMm);
  const slots: Descriptor[] = lost
    ? [...(first ? [{ kind: 'timing' as const, timing: first }] : timings.map(withImage(imageMm))), ...others]
    : kept;
  while (slots.length < slotCount) slots.push({ kind: 'dummy' });
  const firstStays = slots[0] === base.descriptors[0];
  return edited(base, {
    descriptors: slots,
    standardTimings: base.standardTimings.map(standardFits(limit)),
    establishedBits: keptEstablished(base.establishedBits, (picture) => sizeFits(picture, limit)),
    firstTimingNative: base.firstTimingNative && (firstStays || base.revision < 4),
  });
}

/**
 * Drops timings that are too fast, and whole blocks that name one by a code or formula. A section that had a preferred timing
 * keeps one: the first that stays. Null where the section listed timings and none stays: nothing says more then than the
 * blocks before it, unless data of CTA-861 does.
 */
export function limitDisplayId(blocks: readonly DisplayIdBlock[], limitMHz: number): DisplayIdBlock[] | null {
  const limited = blocks.flatMap((block): DisplayIdBlock[] => {
    if (block.kind === 'unknown')
      return namedTimings(block).every(({ pixelClockKHz }) => clockFits(pixelClockKHz, limitMHz))
        ? [block]
        : [];
    if (block.kind !== 'timings') return [block];
    const timings = block.timings.filter((timing) => clockFits(timing.pixelClockKHz, limitMHz));
    if (timings.length === block.timings.length) return [block];
    return timings.length > 0 ? [edited(block, { timings })] : [];
  });
  const listed = timingsOf(limited);
  if (listed.length === 0 && timingsOf(blocks).length > 0)
    return limited.some(({ kind }) => kind === 'cta') ? limited : null;
  const lostPreferred = timingsOf(blocks).some(isPreferred) && !listed.some(isPreferred);
  return lostPreferred ? preferringFirst(limited) : limited;
}

const isPreferred = ({ preferred }: DisplayIdTiming): boolean => preferred;
const timingsOf = (blocks: readonly DisplayIdBlock[]): DisplayIdTiming[] =>
  blocks.flatMap((block) => (block.kind === 'timings' ? [...block.timings] : []));

function preferringFirst(blocks: readonly DisplayIdBlock[]): DisplayIdBlock[] {
  const first = blocks.findIndex(({ kind }) => kind === 'timings');
  return blocks.map((block, at) => {
    if (at !== first || block.kind !== 'timings') return block;
    return edited(block, {
      timings: block.timings.map((timing, i) => (i === 0 ? { ...timing, preferred: true } : timing)),
    });
  });
}
