import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  decodeEdid,
  type Edid,
  encodeEdid,
  withoutNeedlessBytes,
} from '../../../shared/signal/edid/index.ts';
import { edid } from './arbitrary-edid.ts';
import { plainDisplay, wallDisplay } from './build-edid.ts';

describe('EDID encode and decode', () => {
  it('gives back any well-formed tree', () => {
    fc.assert(
      fc.property(edid, (tree) => {
        const decoded = decodeEdid(encodeEdid(tree));
        expect(fieldsOf(decoded.edid)).toEqual(tree);
        expect(decoded.checksumsValid).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  it('gives back the bytes of any EDID whose checksums, header and counts are right', () => {
    const scribbled = fc.tuple(
      edid,
      fc.array(fc.tuple(fc.nat(), fc.integer({ min: 0, max: 255 })), { maxLength: 12 }),
    );
    fc.assert(
      fc.property(scribbled, ([tree, scribbles]) => {
        const bytes = encodeEdid(tree);
        for (const [at, value] of scribbles) scribble(bytes, at, value);
        const read = decodeEdid(mended(bytes)).edid ?? tree;
        expect(encodeEdid(read)).toEqual(mended(bytes));
        expect(encodeEdid(withoutNeedlessBytes(read))).toEqual(mended(bytes));
      }),
      { numRuns: 500 },
    );
  });

  it('reads an EDID that is there several times over once, without an error, and gives back its bytes', () => {
    fc.assert(
      fc.property(edid, fc.integer({ min: 2, max: 8 }), (tree, copies) => {
        const once = encodeEdid(tree);
        const bytes = new Uint8Array(once.length * copies);
        for (let copy = 0; copy < copies; copy += 1) bytes.set(once, copy * once.length);
        const decoded = decodeEdid(bytes);
        // An override block may count more blocks than byte 126: then they are no copies.
        fc.pre(once[126] === once.length / 128 - 1);
        expect(fieldsOf(decoded.edid)).toEqual({ ...tree, copies });
        expect(decoded.problems.filter(({ severity }) => severity === 'error')).toEqual(
          decodeEdid(once).problems.filter(({ severity }) => severity === 'error'),
        );
        expect(encodeEdid(decoded.edid ?? tree)).toEqual(bytes);
      }),
      { numRuns: 300 },
    );
  });

  it('takes no other bytes for a copy', () => {
    const once = encodeEdid(wallDisplay);
    const twice = new Uint8Array([...once, ...once]);
    twice[300] = (twice[300] ?? 0) ^ 1;
    expect(decodeEdid(twice).edid?.copies).toBeUndefined();
    expect(decodeEdid(twice).edid?.extensions.length).toBe(3);
  });

  it.each([
    ['wallDisplay', wallDisplay],
    ['plainDisplay', plainDisplay],
  ])('keeps the tree of %s', (_, tree) => {
    const decoded = decodeEdid(encodeEdid(tree));
    expect(fieldsOf(decoded.edid)).toEqual(tree);
    expect(decoded.problems).toEqual([]);
  });
});

/** The fields, which have to say all that is in the bytes. */
const fieldsOf = (edid: Edid | null): Edid | null => edid && withoutNeedlessBytes(edid);

/** Changes a byte that is not of the header, nor an extension count, tag or checksum. */
function scribble(bytes: Uint8Array, at: number, value: number): void {
  const index = at % bytes.length;
  const inBlock = index % 128;
  const fixed = index < 8 || index === 126 || inBlock === 127 || (index >= 128 && inBlock === 0);
  if (!fixed) bytes[index] = value;
}

/** With right checksums; an extension count that scribbling has put into an override block is followed too. */
function mended(bytes: Uint8Array): Uint8Array {
  const whole = bytes.slice();
  const tree = decodeEdid(whole).edid;
  const [first] = tree?.extensions ?? [];
  const overridden =
    first?.kind === 'cta' && first.dataBlocks.some(({ kind }) => kind === 'extensionOverride');
  whole[126] = overridden ? 1 : whole.length / 128 - 1;
  for (let block = 0; block < whole.length; block += 128) {
    if (block > 0 && whole[block] === 0x70) mendSection(whole, block);
    whole[block + 127] = checksum(whole, block, block + 127);
  }
  return whole;
}

function mendSection(bytes: Uint8Array, block: number): void {
  const at = block + 5 + (bytes[block + 2] ?? 0);
  if (at < block + 127) bytes[at] = checksum(bytes, block + 1, at);
}

const checksum = (bytes: Uint8Array, from: number, to: number): number =>
  (256 - (bytes.subarray(from, to).reduce((sum, value) => sum + value, 0) % 256)) % 256;
