import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dataBlockLength } from '../../../shared/signal/edid/cta/data-block-length.ts';
import { type DataBlock, encodeDataBlock } from '../../../shared/signal/edid/cta/data-blocks.ts';
import { decodeDataBlocks } from '../../../shared/signal/edid/cta/extension.ts';
import { edited } from '../../../shared/signal/edid/exact.ts';
import { limitEdid } from '../../../shared/signal/edid/index.ts';
import { dataBlock } from './arbitrary-data-blocks.ts';
import { edid } from './arbitrary-edid.ts';
import { anyLimits } from './arbitrary-limits.ts';

/** Read from bytes whose header says how many they are; every block of them that has fields. */
function readBlocks(bytes: Uint8Array): DataBlock[] {
  return decodeDataBlocks(bytes, 0, bytes.length, bytes.length, () => {});
}

/** A block that ends early, with the header that it then has. */
function cutAfter(bytes: Uint8Array, content: number): Uint8Array {
  const cut = bytes.slice(0, 1 + Math.min(content, bytes.length - 1));
  cut[0] = ((cut[0] ?? 0) & 0xe0) + cut.length - 1;
  return cut;
}

const expectLength = (block: DataBlock): void =>
  expect(dataBlockLength(block), block.kind).toBe(encodeDataBlock(block).length);

describe('the length of a data block', () => {
  it('is that of what is encoded, from bytes and from fields', () => {
    fc.assert(
      fc.property(dataBlock, (block) => {
        expectLength(block);
        for (const read of readBlocks(encodeDataBlock(block))) {
          expectLength(read);
          expectLength(edited(read, {}));
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('is that of what is encoded, wherever the block ended', () => {
    fc.assert(
      fc.property(dataBlock, fc.integer({ min: 1, max: 31 }), (block, content) => {
        for (const read of readBlocks(cutAfter(encodeDataBlock(block), content))) {
          expectLength(read);
          expectLength(edited(read, {}));
        }
      }),
      { numRuns: 3000 },
    );
  });

  it('is that of what is encoded of bytes that mean nothing', () => {
    const anyBytes = fc.uint8Array({ minLength: 1, maxLength: 100 });
    fc.assert(
      fc.property(anyBytes, (bytes) => {
        for (const read of readBlocks(bytes)) {
          expectLength(read);
          expectLength(edited(read, {}));
        }
      }),
      { numRuns: 3000 },
    );
  });

  it('is never more than its header can say', () => {
    for (const extendedTag of [null, 2])
      for (const content of [29, 30, 31, 32, 40])
        expectLength({ kind: 'unknown', tag: 7, extendedTag, payload: new Uint8Array(content) });
  });

  it('is that of what is encoded after limiting', () => {
    fc.assert(
      fc.property(edid, anyLimits, (display, limits) => {
        for (const extension of limitEdid(display, limits).extensions)
          if (extension.kind === 'cta') extension.dataBlocks.forEach(expectLength);
      }),
      { numRuns: 500 },
    );
  });
});
