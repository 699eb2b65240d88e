import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createLineReader } from '../../shared/logs/index.ts';

type Line = { text: string; cut: boolean };

function linesOf(chunks: readonly (Uint8Array | string)[], maxLineBytes?: number): Line[] {
  const lines: Line[] = [];
  const reader = createLineReader((bytes, start, end, cut) => {
    lines.push({ text: new TextDecoder().decode(bytes.slice(start, end)), cut });
  }, maxLineBytes);
  for (const chunk of chunks) reader.push(chunk);
  reader.finish();
  return lines;
}
const textsOf = (chunks: readonly (Uint8Array | string)[]): string[] =>
  linesOf(chunks).map(({ text }) => text);

const utf16 = (text: string, littleEndian: boolean): Uint8Array => {
  const view = new DataView(new ArrayBuffer(text.length * 2));
  for (let index = 0; index < text.length; index += 1)
    view.setUint16(index * 2, text.charCodeAt(index), littleEndian);
  return new Uint8Array(view.buffer);
};

describe('a line reader', () => {
  it('ends lines at LF and CR LF, keeps blank ones, and hands out a last line without an end', () => {
    expect(textsOf(['one\r\ntwo\n\nfour'])).toEqual(['one', 'two', '', 'four']);
    expect(textsOf(['one\n'])).toEqual(['one']);
    expect(textsOf([])).toEqual([]);
  });

  it('cuts an over-long line and goes on with the next', () => {
    expect(linesOf(['abcdefghij\nkl\n'], 4)).toEqual([
      { text: 'abcd', cut: true },
      { text: 'kl', cut: false },
    ]);
    expect(linesOf(['abc', 'def', 'ghij\nkl'], 4)).toEqual([
      { text: 'abcd', cut: true },
      { text: 'kl', cut: false },
    ]);
  });

  it('reads UTF-16 of either order by its byte order mark, and takes UTF-8’s off', () => {
    for (const littleEndian of [true, false])
      expect(textsOf([utf16('\uFEFFäöü 🎬\r\nzwei', littleEndian)])).toEqual(['äöü 🎬', 'zwei']);
    expect(textsOf([Uint8Array.of(0xef, 0xbb, 0xbf, 0x61, 0x0a)])).toEqual(['a']);
  });

  it('passes bytes that are no UTF-8 as replacement characters, within their own line', () => {
    expect(textsOf([Uint8Array.of(0x61, 0xe2, 0x82, 0x0a, 0xff, 0x62)])).toEqual(['a\uFFFD', '\uFFFDb']);
  });

  it('says how many bytes and which encoding it took', () => {
    const reader = createLineReader(() => undefined);
    reader.push('ä\n');
    reader.push(Uint8Array.of(97));
    reader.finish();
    expect([reader.bytes(), reader.encoding()]).toEqual([4, 'utf-8']);
  });

  const anyFile = fc.oneof(
    fc.uint8Array({ maxLength: 300 }),
    fc
      .array(fc.constantFrom(10, 13, 0xef, 0xbb, 0xbf, 0xff, 0xfe, 0xe2, 0x82, 0xac, 0xd8, 97), {
        maxLength: 300,
      })
      .map((bytes) => Uint8Array.from(bytes)),
    fc.string({ unit: 'binary', maxLength: 100 }).map((text) => utf16(`\uFEFF${text}`, true)),
  );
  it('hands out the same lines however the file is cut into pieces', () => {
    fc.assert(
      fc.property(
        anyFile,
        fc.array(fc.nat(300), { maxLength: 12 }),
        fc.integer({ min: 4, max: 64 }),
        (file, cuts, most) => {
          const ends = [...cuts.filter((cut) => cut < file.length), file.length].sort((a, b) => a - b);
          const pieces = ends.map((end, index) => file.slice(ends[index - 1] ?? 0, end));
          expect(linesOf(pieces, most)).toEqual(linesOf([file], most));
        },
      ),
      { numRuns: 500 },
    );
  });

  it('hands out the same lines for text as for its bytes, surrogate pairs split or not', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 80 }), fc.nat(80), (text, cut) => {
        const bytes = new TextEncoder().encode(text);
        expect(textsOf([text.slice(0, cut), text.slice(cut)])).toEqual(textsOf([bytes]));
      }),
    );
  });
});
