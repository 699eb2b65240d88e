import { message } from '../../../message/index.ts';
import { blockSize, byteAt, checksumOf, concatBytes, littleEndian, toLittleEndian } from '../bytes.ts';
import { type DataBlock, encodeDataBlock } from '../cta/data-blocks.ts';
import { decodeDataBlocks } from '../cta/extension.ts';
import { type Exact, readFrom } from '../exact.ts';
import { type Report, shifted } from '../problems.ts';
import {
  type DetailedTimingType,
  type DisplayIdTiming,
  decodeDisplayIdTimings,
  encodeDisplayIdTimings,
} from './timings.ts';

/** Product identification (DisplayID 1.3 section 4.2.1 with a PNP id, DisplayID 2.0 section 4.1 with an OUI). */
export type DisplayIdProduct = {
  /** Three bytes as written: ASCII letters of the PNP id, or the OUI, first byte most significant. */
  vendorBytes: Uint8Array;
  productCode: number;
  serialNumber: number;
  /** As written: 1..52, 0 where unknown, 255 where the year is that of the model. */
  week: number;
  year: number;
  /** ASCII; the maker's product name or code. */
  productId: string;
};

/** A data block of a DisplayID section. `flags` is its second byte: revision and what the block does with it. */
export type DisplayIdBlock = Exact &
  (
    | { kind: 'product'; tag: number; flags: number; product: DisplayIdProduct }
    | { kind: 'timings'; type: DetailedTimingType; flags: number; timings: readonly DisplayIdTiming[] }
    /** Data blocks of CTA-861 (DisplayID 1.3 section 4.8, tag 81h in both versions). */
    | { kind: 'cta'; flags: number; dataBlocks: readonly DataBlock[] }
    | { kind: 'unknown'; tag: number; flags: number; payload: Uint8Array }
  );

/** An EDID extension with a DisplayID section in it (DisplayID 1.3 appendix B, extension tag 70h). */
export type DisplayIdExtension = Exact & {
  kind: 'displayId';
  version: number;
  revision: number;
  /** Product type (1.x) or primary use (2.x). */
  productTypeCode: number;
  /** Further sections announced. */
  extensionCount: number;
  blocks: readonly DisplayIdBlock[];
};

export const displayIdTag = 0x70;
const sectionStart = 1;
const blocksStart = 5;
/** Most bytes of blocks: what is left beside tag, head, section checksum and block checksum. */
const mostBlockBytes = blockSize - blocksStart - 2;
const ctaTag = 0x81;
const productTags: readonly number[] = [0x00, 0x20];
const timingTypes: Readonly<Record<number, DetailedTimingType>> = { 3: 'I', 4: 'II', 19: 'VI', 34: 'VII' };
const timingTags = { I: 3, II: 4, VI: 0x13, VII: 0x22 } as const;
const firstYear = 2000;
const productLength = 12;

function decodeProduct(payload: Uint8Array): DisplayIdProduct {
  const name = payload.subarray(productLength, productLength + byteAt(payload, 11));
  return {
    vendorBytes: payload.slice(0, 3),
    productCode: littleEndian(payload, 3, 2),
    serialNumber: littleEndian(payload, 5, 4),
    week: byteAt(payload, 9),
    year: firstYear + byteAt(payload, 10),
    productId: String.fromCharCode(...name),
  };
}

const encodeProduct = (product: DisplayIdProduct): number[] => [
  ...product.vendorBytes,
  ...toLittleEndian(product.productCode, 2),
  ...toLittleEndian(product.serialNumber, 4),
  product.week,
  product.year - firstYear,
  product.productId.length,
  ...Array.from(product.productId, (letter) => letter.charCodeAt(0)),
];

function decodeBlock(tag: number, flags: number, payload: Uint8Array, report: Report): DisplayIdBlock {
  const type = timingTypes[tag];
  if (type) {
    const { timings, left } = decodeDisplayIdTimings(type, payload);
    if (left > 0)
      report('error', 2, message('edid/displayIdTimingNotWhole', { bytes: left, type: String(type) }));
    return { kind: 'timings', type, flags, timings };
  }
  if (productTags.includes(tag) && payload.length >= productLength)
    return { kind: 'product', tag, flags, product: decodeProduct(payload) };
  if (tag === ctaTag) {
    const end = payload.length;
    const dataBlocks = decodeDataBlocks(payload, 0, end, end, shifted(report, 3));
    return { kind: 'cta', flags, dataBlocks };
  }
  return { kind: 'unknown', tag, flags, payload: payload.slice() };
}

const tagOf = (block: DisplayIdBlock): number => {
  switch (block.kind) {
    case 'timings':
      return timingTags[block.type];
    case 'cta':
      return ctaTag;
    default:
      return block.tag;
  }
};

function payloadOf(block: DisplayIdBlock): Uint8Array {
  switch (block.kind) {
    case 'product':
      return new Uint8Array(encodeProduct(block.product));
    case 'timings':
      return encodeDisplayIdTimings(block.type, block.timings);
    case 'cta':
      return concatBytes(block.dataBlocks.map(encodeDataBlock));
    case 'unknown':
      return block.payload;
  }
}

/** A block with its tag, flags and length. */
export function encodeDisplayIdBlock(block: DisplayIdBlock): Uint8Array {
  const payload = block.exactBytes ?? payloadOf(block);
  return concatBytes([[tagOf(block), block.flags, payload.length], payload]);
}

/** Where the zeros begin that fill the section up to `end`. */
function fillerStart(bytes: Uint8Array, end: number): number {
  let start = end;
  while (start > blocksStart && byteAt(bytes, start - 1) === 0) start -= 1;
  return start;
}

function decodeBlocks(bytes: Uint8Array, end: number, report: Report): DisplayIdBlock[] {
  const blocks: DisplayIdBlock[] = [];
  const filler = fillerStart(bytes, end);
  let at = blocksStart;
  while (at + 3 <= end && at < filler) {
    const blockEnd = at + 3 + byteAt(bytes, at + 2);
    if (blockEnd > end) report('error', at, message('edid/displayIdBlockOverruns'));
    const payload = bytes.subarray(at + 3, Math.min(blockEnd, end));
    const block = decodeBlock(byteAt(bytes, at), byteAt(bytes, at + 1), payload, shifted(report, at));
    blocks.push(readFrom(block, payload));
    at = blockEnd;
  }
  return blocks;
}

const withoutChecksum = (bytes: Uint8Array): Uint8Array => bytes.subarray(0, blockSize - 1);

/** Where the section's own checksum is, or null when the section claims more than the block holds. */
function sectionChecksumAt(bytes: Uint8Array): number | null {
  const at = blocksStart + byteAt(bytes, 2);
  return at < blockSize - 1 ? at : null;
}

/** True when the section's own checksum is right. */
export function displayIdSectionValid(bytes: Uint8Array): boolean {
  const at = sectionChecksumAt(bytes);
  return at !== null && checksumOf(bytes, sectionStart, at) === bytes[at];
}

/** Reads the 128 bytes of a block whose tag is 70h. */
export function decodeDisplayIdExtension(bytes: Uint8Array, report: Report): DisplayIdExtension {
  const checksumAt = sectionChecksumAt(bytes);
  if (checksumAt === null) report('error', 2, message('edid/displayIdSectionTooLong'));
  else if (!displayIdSectionValid(bytes)) report('error', checksumAt, message('edid/displayIdChecksumWrong'));
  const version = byteAt(bytes, 1);
  const extension: DisplayIdExtension = {
    kind: 'displayId',
    version: version >> 4,
    revision: version & 15,
    productTypeCode: byteAt(bytes, 3),
    extensionCount: byteAt(bytes, 4),
    blocks: decodeBlocks(bytes, checksumAt ?? blockSize - 2, report),
  };
  return readFrom(extension, withoutChecksum(bytes));
}

const contentOf = (extension: DisplayIdExtension): Uint8Array =>
  concatBytes(extension.blocks.map(encodeDisplayIdBlock)).subarray(0, mostBlockBytes);

/** All but the block's checksum. */
function encodeFields(extension: DisplayIdExtension): Uint8Array {
  const content = contentOf(extension);
  const bytes = new Uint8Array(blockSize);
  bytes.set([
    displayIdTag,
    extension.version * 16 + extension.revision,
    content.length,
    extension.productTypeCode,
    extension.extensionCount,
  ]);
  bytes.set(content, blocksStart);
  const checksumAt = blocksStart + content.length;
  bytes[checksumAt] = checksumOf(bytes, sectionStart, checksumAt);
  return withoutChecksum(bytes);
}

/** The 128 bytes of a DisplayID block with right checksums. */
export function encodeDisplayIdExtension(extension: DisplayIdExtension): Uint8Array {
  const bytes = new Uint8Array(blockSize);
  bytes.set(extension.exactBytes ?? encodeFields(extension));
  const checksumAt = sectionChecksumAt(bytes);
  if (checksumAt !== null) bytes[checksumAt] = checksumOf(bytes, sectionStart, checksumAt);
  bytes[blockSize - 1] = checksumOf(bytes, 0, blockSize - 1);
  return bytes;
}

/** Bytes of blocks that still fit; negative when there are too many. */
export const displayIdSpaceLeft = (extension: Pick<DisplayIdExtension, 'blocks'>): number =>
  mostBlockBytes - extension.blocks.reduce((sum, block) => sum + encodeDisplayIdBlock(block).length, 0);
