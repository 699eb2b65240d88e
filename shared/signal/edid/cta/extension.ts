import { message } from '../../../message/index.ts';
import { checkDescriptor, type Descriptor, decodeDescriptor, encodeDescriptor } from '../base/descriptors.ts';
import { descriptorSize } from '../base/detailed-timing.ts';
import { bit, blockSize, byteAt, checksumOf, concatBytes, flagByte } from '../bytes.ts';
import { type Exact, readFrom } from '../exact.ts';
import { type Report, shifted } from '../problems.ts';
import { dataBlockLength } from './data-block-length.ts';
import { type DataBlock, decodeDataBlock, encodeDataBlock } from './data-blocks.ts';

/**
 * A CTA-861 extension block (CTA-861-H section 7.5; revisions 1 and 2 in CTA-861-A and -B). Revision 1 has neither flags
 * nor data blocks, revision 2 no data blocks; what they lack is false or empty.
 */
export type CtaExtension = Exact & {
  kind: 'cta';
  revision: number;
  underscan: boolean;
  basicAudio: boolean;
  ycbcr444: boolean;
  ycbcr422: boolean;
  /** How many of the timings at the front are native, 0..15. */
  nativeTimings: number;
  dataBlocks: readonly DataBlock[];
  /** 18-byte slots; display descriptors are allowed here too. */
  timings: readonly Descriptor[];
};

export const ctaTag = 0x02;
const dataStart = 4;
const dataEnd = blockSize - 1;
const audioTag = 1;
const extendedTag = 7;

/**
 * Reads data blocks from `from` while they begin before `to`. A block that runs over `to` is read to its own end, but
 * not beyond `limit`; an audio block that does is not believed, since its last formats are made of other bytes.
 */
export function decodeDataBlocks(
  bytes: Uint8Array,
  from: number,
  to: number,
  limit: number,
  report: Report,
): DataBlock[] {
  const blocks: DataBlock[] = [];
  let reservedSeen = false;
  let at = from;
  while (at < to) {
    const filler = zerosFrom(bytes, at, to);
    if (filler > 0) {
      blocks.push({ kind: 'filler', length: filler });
      at += filler;
      continue;
    }
    const head = byteAt(bytes, at);
    const tag = head >> 5;
    const end = at + 1 + (head & 31);
    if (end > to) report('error', at, message('edid/dataBlockOverruns', { bytes: head & 31 }));
    if (tag === 0 && !reservedSeen) report('warning', at, message('edid/dataBlockReserved'));
    reservedSeen ||= tag === 0;
    if (end > to && tag === audioTag) {
      const payload = bytes.slice(at + 1, Math.min(end, limit));
      blocks.push({ kind: 'unknown', tag, extendedTag: null, payload });
    } else blocks.push(decodeAt(bytes, at, tag, Math.min(end, limit), report));
    at = end;
  }
  return blocks;
}

/** How many zeros there are in a row: blocks of the reserved tag 0 without content, which nothing but filling needs. */
function zerosFrom(bytes: Uint8Array, from: number, to: number): number {
  let at = from;
  while (at < to && byteAt(bytes, at) === 0) at += 1;
  return at - from;
}

function decodeAt(bytes: Uint8Array, at: number, tag: number, end: number, report: Report): DataBlock {
  if (tag !== extendedTag)
    return decodeDataBlock(tag, null, bytes.subarray(at + 1, end), shifted(report, at + 1));
  if (end < at + 2) {
    report('error', at, message('edid/extendedTagMissing'));
    return { kind: 'unknown', tag, extendedTag: null, payload: new Uint8Array() };
  }
  return decodeDataBlock(tag, byteAt(bytes, at + 1), bytes.subarray(at + 2, end), shifted(report, at + 2));
}

/** Zeros are the padding (CTA-861-H section 7.5): the first empty slot ends the timings. */
function decodeTimings(bytes: Uint8Array, from: number, report: Report): Descriptor[] {
  const timings: Descriptor[] = [];
  for (let at = from; at + descriptorSize <= dataEnd; at += descriptorSize) {
    const slot = decodeDescriptor(bytes.subarray(at, at + descriptorSize));
    if (slot.kind === 'empty') break;
    checkDescriptor(slot, at, report);
    timings.push(slot);
  }
  return timings;
}

function nothingIn(revision: number): CtaExtension {
  return {
    kind: 'cta',
    revision,
    underscan: false,
    basicAudio: false,
    ycbcr444: false,
    ycbcr422: false,
    nativeTimings: 0,
    dataBlocks: [],
    timings: [],
  };
}

function decodeFields(bytes: Uint8Array, report: Report): CtaExtension {
  const revision = byteAt(bytes, 1);
  const timingsAt = byteAt(bytes, 2);
  const nothing = nothingIn(revision);
  if (revision === 0) {
    report('error', 1, message('edid/ctaRevisionZero'));
    return nothing;
  }
  if (timingsAt < dataStart) {
    if (timingsAt > 0) report('error', 2, message('edid/timingsInsideHead', { byte: timingsAt }));
    else report('note', 2, message('edid/blockHoldsNothing'));
    return nothing;
  }
  if (timingsAt > dataEnd) report('error', 2, message('edid/timingsOutsideBlock', { byte: timingsAt }));
  const flags = byteAt(bytes, 3);
  const hasFlags = revision >= 2;
  const collectionEnd = Math.min(timingsAt, dataEnd);
  return {
    ...nothing,
    underscan: hasFlags && bit(flags, 7),
    basicAudio: hasFlags && bit(flags, 6),
    ycbcr444: hasFlags && bit(flags, 5),
    ycbcr422: hasFlags && bit(flags, 4),
    nativeTimings: hasFlags ? flags & 15 : 0,
    dataBlocks: revision >= 3 ? decodeDataBlocks(bytes, dataStart, collectionEnd, dataEnd, report) : [],
    timings: decodeTimings(bytes, timingsAt, report),
  };
}

/** Reads the 128 bytes of a block whose tag is 02h. */
export function decodeCtaExtension(bytes: Uint8Array, report: Report): CtaExtension {
  return readFrom(decodeFields(bytes, report), bytes.subarray(0, dataEnd));
}

/** All but the checksum. Timings that don't fit whole are left out. */
function encodeFields(cta: CtaExtension): Uint8Array {
  const data = concatBytes(cta.revision >= 3 ? cta.dataBlocks.map(encodeDataBlock) : []);
  const timings = concatBytes(cta.timings.map(encodeDescriptor));
  const bytes = new Uint8Array(blockSize - 1);
  bytes.set(data.subarray(0, dataEnd - dataStart), dataStart);
  const timingsAt = dataStart + data.length;
  const flags = flagByte(cta.underscan, cta.basicAudio, cta.ycbcr444, cta.ycbcr422) * 16 + cta.nativeTimings;
  bytes.set([ctaTag, cta.revision, timingsAt, cta.revision >= 2 ? flags : 0]);
  const slots = Math.floor(Math.max(0, dataEnd - timingsAt) / descriptorSize);
  bytes.set(timings.subarray(0, slots * descriptorSize), Math.min(timingsAt, dataEnd));
  return bytes;
}

/** The 128 bytes of a CTA-861 block with its right checksum. What doesn't fit is cut off: see `ctaSpaceLeft`. */
export function encodeCtaExtension(cta: CtaExtension): Uint8Array {
  const bytes = new Uint8Array(blockSize);
  bytes.set(cta.exactBytes ?? encodeFields(cta));
  bytes[dataEnd] = checksumOf(bytes, 0, dataEnd);
  return bytes;
}

/** Bytes that are still free in a block; negative when its content doesn't fit. */
export function ctaSpaceLeft(cta: Pick<CtaExtension, 'dataBlocks' | 'timings'>): number {
  const data = cta.dataBlocks.reduce((sum, block) => sum + dataBlockLength(block), 0);
  return dataEnd - dataStart - data - cta.timings.length * descriptorSize;
}
