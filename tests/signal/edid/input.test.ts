import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { message } from '../../../shared/message/index.ts';
import { encodeEdid, readEdidInput, readEdidText } from '../../../shared/signal/edid/index.ts';
import { edid } from './arbitrary-edid.ts';
import { plainDisplay, wallDisplay } from './build-edid.ts';

const bytes = encodeEdid(wallDisplay);
const hex = (value: number) => value.toString(16).padStart(2, '0');

/** Lines of `width` bytes, each made by `line` from its bytes and their offset. */
function dump(data: Uint8Array, width: number, line: (part: number[], offset: number) => string): string {
  const lines: string[] = [];
  for (let at = 0; at < data.length; at += width) lines.push(line([...data.subarray(at, at + width)], at));
  return `${lines.join('\n')}\n`;
}

const spaced = (part: number[]) => part.map(hex).join(' ');
const letters = (part: number[]) =>
  part.map((value) => (value >= 32 && value < 127 ? String.fromCharCode(value) : '.')).join('');
const words = (part: number[], swapped = false) =>
  part
    .flatMap((value, i) => (i % 2 === 0 ? [[value, part[i + 1] ?? 0]] : []))
    .map((pair) => (swapped ? [...pair].reverse() : pair).map(hex).join(''))
    .join(' ');
const padded = (offset: number, base: number, length: number) => offset.toString(base).padStart(length, '0');

/** As `hexdump -C` writes it, lines that repeat left out. */
function withStars(data: Uint8Array): string {
  let before = '';
  let starred = false;
  const lines = dump(data, 16, (part, offset) => {
    const text = spaced(part);
    if (text === before) {
      if (starred) return '';
      starred = true;
      return '*';
    }
    [before, starred] = [text, false];
    return `${padded(offset, 16, 8)}  ${spaced(part.slice(0, 8))}  ${spaced(part.slice(8))}  |${letters(part)}|`;
  });
  return `${lines.replace(/\n+/g, '\n')}${padded(data.length, 16, 8)}\n`;
}

const blockHeading = (data: Uint8Array) =>
  [0, 128].map((from) => dump(data.subarray(from, from + 128), 16, spaced)).join('\n');

const layouts: [string, string][] = [
  ['bare digits on one line', [...bytes].map(hex).join('')],
  ['bare digits in capitals', [...bytes].map(hex).join('').toUpperCase()],
  ['bare digits, 16 bytes a line', dump(bytes, 16, (part) => part.map(hex).join(''))],
  ['one byte a line', dump(bytes, 1, spaced)],
  [
    'two columns of eight',
    dump(bytes, 16, (part) => `${spaced(part.slice(0, 8))}  ${spaced(part.slice(8))}`),
  ],
  ['xxd', dump(bytes, 16, (part, at) => `${padded(at, 16, 8)}: ${words(part)}  ${letters(part)}`)],
  [
    'xxd of eight bytes',
    dump(bytes, 8, (part, at) => `${padded(at, 16, 8)}: ${words(part)}  ${letters(part)}`),
  ],
  ['hexdump -C', dump(bytes, 16, (part, at) => `${padded(at, 16, 8)}  ${spaced(part)}  |${letters(part)}|`)],
  ['hexdump -C with stars', withStars(bytes)],
  [
    'hexdump, words with the low byte first',
    dump(bytes, 16, (part, at) => `${padded(at, 16, 7)} ${words(part, true)}`),
  ],
  ['od, octal offsets', dump(bytes, 16, (part, at) => `${padded(at, 8, 7)} ${spaced(part)}`)],
  ['od, decimal offsets', dump(bytes, 16, (part, at) => `${padded(at, 10, 7)} ${spaced(part)}`)],
  [
    'i2cdump',
    `     0  1  2  3  4  5  6  7  8  9  a  b  c  d  e  f    0123456789abcdef\n${dump(bytes, 16, (part, at) => `${padded(at % 256, 16, 2)}: ${spaced(part)}    ${letters(part)}`)}`,
  ],
  [
    'C array',
    `static const unsigned char edid[] = { /* ${bytes.length} bytes */\n${dump(bytes, 8, (part) => `  ${part.map((value) => `0x${hex(value)}`).join(', ')}, // row`)}};\n`,
  ],
  ['C string', `"${[...bytes].map((value) => `\\x${hex(value)}`).join('')}"`],
  ['0x in front of all', `0x${[...bytes].map(hex).join('')}`],
  ['registry export', `"EDID"=hex:${dump(bytes, 20, (part) => `${part.map(hex).join(',')},\\`)}`],
  ['property in angle brackets', `    "DisplayEDID" = <${[...bytes].map(hex).join('')}>\n`],
  ['colons between', [...bytes].map(hex).join(':')],
  ['tabs before, as a display server prints it', dump(bytes, 16, (part) => `\t\t${part.map(hex).join('')}`)],
  [
    'decoder output that begins with a dump',
    `edid-decode (hex):\n\n${blockHeading(bytes)}\n----------------\n\nBlock 0, Base EDID:\n  Manufacturer: QZV\n    Detailed mode: 01 01 01 01 01 01 01 01\nBlock 1, CTA-861 Extension Block:\n  Unknown: de ad be ef de ad be ef de ad be ef\n`,
  ],
  ['a log with time stamps', dump(bytes, 16, (part, at) => `[  ${12 + at / 1000}] hdmi0: ${spaced(part)}`)],
  [
    'a log with dates and levels, other lines between',
    `2026-03-04T10:11:12.345Z INFO hot plug on port 2\n${dump(bytes, 16, (part) => `2026-03-04T10:11:12.345Z DEBUG edid ${spaced(part)}`)}2026-03-04T10:11:13.000Z INFO link up\n`,
  ],
  ['a log with seconds since 1970', dump(bytes, 16, (part, at) => `${1_772_000_000 + at} ${spaced(part)}`)],
  [
    'blocks under headings',
    `EDID block 0:\n${dump(bytes.subarray(0, 128), 16, spaced)}EDID block 1:\n${dump(bytes.subarray(128), 16, spaced)}`,
  ],
  ['Windows line ends', dump(bytes, 16, spaced).replaceAll('\n', '\r\n')],
];

describe('EDID input', () => {
  it.each(layouts)('reads %s', (_, text) => {
    expect(readEdidText(text).bytes).toEqual(bytes);
    expect(readEdidInput(new TextEncoder().encode(text))).toMatchObject({ form: 'hexText', bytes });
  });

  it('reads UTF-16 text with its byte order mark', () => {
    const text = dump(bytes, 16, spaced);
    const encoded = Uint8Array.from([
      0xff,
      0xfe,
      ...[...text].flatMap((letter) => [letter.charCodeAt(0), 0]),
    ]);
    expect(readEdidInput(encoded).bytes).toEqual(bytes);
  });

  it('takes binary as it is, and from its header on', () => {
    expect(readEdidInput(bytes)).toEqual({ form: 'binary', bytes, notes: [] });
    const late = Uint8Array.from([1, 2, 3, ...bytes]);
    expect(readEdidInput(late)).toEqual({
      form: 'binary',
      bytes,
      notes: [message('edid/bytesBeforeHeader', { bytes: 3 })],
    });
  });

  it('takes the first EDID of a text with two and says so', () => {
    const text = `port 1\n${dump(bytes, 16, spaced)}port 2\n${dump(encodeEdid(plainDisplay), 16, spaced)}`;
    expect(readEdidText(text).bytes).toEqual(bytes);
    expect(readEdidText(text).notes).toEqual([message('edid/moreBytesFollow')]);
  });

  it.each([0, 1, 2])('finds base64 in a text, with %i bytes of padding', (cut) => {
    const part = bytes.slice(0, bytes.length - cut);
    const digits = Buffer.from(part).toString('base64');
    for (const text of [
      digits,
      `EDID=${digits}\n`,
      `${digits.match(/.{1,60}/g)?.join('\r\n')}\n\nKind regards`,
    ])
      expect(readEdidText(text)).toEqual({ form: 'base64', bytes: part, notes: [] });
  });

  it('finds no bytes in a text without a dump', () => {
    expect(readEdidText('The picture drops out at 19:30, then be back.').bytes.length).toBe(0);
    expect(readEdidInput(new TextEncoder().encode('no dump')).form).toBe('otherText');
  });

  it('reads any EDID back from any of the usual dumps', () => {
    const writers = [
      (data: Uint8Array) => [...data].map(hex).join(''),
      (data: Uint8Array) => dump(data, 16, spaced),
      (data: Uint8Array) =>
        dump(data, 16, (part, at) => `${padded(at, 16, 8)}: ${words(part)}  ${letters(part)}`),
      withStars,
      (data: Uint8Array) => dump(data, 16, (part, at) => `${padded(at, 16, 7)} ${words(part, true)}`),
      (data: Uint8Array) => dump(data, 12, (part) => part.map((value) => `0x${hex(value)},`).join(' ')),
    ];
    fc.assert(
      fc.property(edid, fc.constantFrom(...writers), (tree, write) => {
        const data = encodeEdid(tree);
        expect(readEdidText(write(data)).bytes).toEqual(data);
      }),
      { numRuns: 200 },
    );
  });
});
