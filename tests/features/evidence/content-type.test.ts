import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { acceptedType, type FileKind } from '../../../src/features/evidence/content-type.ts';
import { textTypeOf } from '../../../src/features/evidence/text-encoding.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'content-type-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** The media type, or the kind of the refusal. The name is a lie on purpose. */
async function typeOf(kind: FileKind, bytes: Uint8Array): Promise<string> {
  const path = join(folder, 'picture.jpg');
  await writeFile(path, bytes);
  const answer = await acceptedType(kind, path, bytes.length);
  return answer.ok ? answer.mediaType : answer.kind;
}

const image = (format: 'jpeg' | 'png' | 'webp' | 'avif') =>
  sharp({ create: { width: 8, height: 8, channels: 3, background: 'red' } })
    .toFormat(format)
    .toBuffer();
const pdf = Buffer.from('%PDF-1.4\n1 0 obj\n<<>>\nendobj\ntrailer\n<<>>\n%%EOF\n');
const edid = Buffer.concat([Buffer.from('00ffffffffffff00', 'hex'), Buffer.alloc(120, 7)]);
const text = (value: string, encoding: BufferEncoding = 'utf8') => Buffer.from(value, encoding);

describe('each kind takes its own types, by the bytes', () => {
  test('photos', async () => {
    expect(await typeOf('photo', await image('jpeg'))).toBe('image/jpeg');
    expect(await typeOf('photo', await image('png'))).toBe('image/png');
    expect(await typeOf('photo', await image('webp'))).toBe('image/webp');
    expect(await typeOf('photo', pdf)).toBe('type-not-allowed');
    expect(await typeOf('photo', text('GIF89a'))).toBe('type-not-allowed');
  });

  test('a photo in the format of a telephone is refused with what to do', async () => {
    const path = join(folder, 'photo.jpg');
    const bytes = Buffer.concat([
      Buffer.from('00000018', 'hex'),
      text('ftypheic'),
      Buffer.from('00000000', 'hex'),
      text('mif1heic'),
    ]);
    await writeFile(path, bytes);
    const answer = await acceptedType('photo', path, bytes.length);
    expect(answer).toMatchObject({ kind: 'type-not-allowed', said: { code: 'photoFormatRare' } });
    expect(await typeOf('photo', await image('avif'))).toBe('type-not-allowed');
  });

  test('logs', async () => {
    expect(await typeOf('log', text('12:00:01 hot plug\n'))).toBe('text/plain; charset=utf-8');
    expect(await typeOf('log', gzipSync('12:00:01 hot plug\n'))).toBe('application/gzip');
    expect(await typeOf('log', await image('png'))).toBe('type-not-allowed');
    expect(await typeOf('log', Buffer.alloc(4096))).toBe('type-not-allowed');
  });

  test('a log that begins like something else is still a log', async () => {
    for (const beginning of ['BM reset', 'MZ ready', 'ID3 seen', 'II* link', 'Rar! lost', '#!AMR up']) {
      expect(await typeOf('log', text(`${beginning}\n12:00:01 hot plug\n`))).toMatch(/^text\/plain/);
    }
  });

  test('EDIDs: bytes in whole blocks whatever their header, or text', async () => {
    expect(await typeOf('edid', edid)).toBe('application/octet-stream');
    expect(await typeOf('edid', Buffer.alloc(256, 0xff))).toBe('application/octet-stream');
    expect(await typeOf('edid', Buffer.alloc(128))).toBe('application/octet-stream');
    expect(await typeOf('edid', text('00 ff ff ff ff ff ff 00'))).toBe('text/plain; charset=utf-8');
    expect(await typeOf('edid', edid.subarray(1))).toBe('type-not-allowed');
    expect(await typeOf('edid', await image('jpeg'))).toBe('type-not-allowed');
  });

  test('settings and documents', async () => {
    expect(await typeOf('settings', text('{"range":"limited"}'))).toBe('application/json');
    expect(await typeOf('settings', text('{"range":'))).toBe('text/plain; charset=utf-8');
    expect(await typeOf('settings', text('range = limited\n'))).toBe('text/plain; charset=utf-8');
    expect(await typeOf('settings', pdf)).toBe('type-not-allowed');
    expect(await typeOf('document', pdf)).toBe('application/pdf');
    expect(await typeOf('document', text('as built, May'))).toBe('text/plain; charset=utf-8');
  });

  test.each([
    '<svg xmlns="http://www.w3.org/2000/svg"/>',
    '<!doctype html><script>1</script>',
    '<?xml version="1.0"?><a/>',
  ])('markup is plain text: %s', async (markup) => {
    for (const kind of ['log', 'settings', 'document'] as const) {
      expect(await typeOf(kind, text(markup))).toMatch(/^text\/plain/);
    }
    expect(await typeOf('photo', text(markup))).toBe('type-not-allowed');
  });

  test('an empty file is none', async () => {
    expect(await typeOf('log', Buffer.alloc(0))).toBe('type-not-allowed');
  });

  test('too large for its kind', async () => {
    const path = join(folder, 'large');
    await writeFile(path, edid);
    expect(await acceptedType('edid', path, 2 * 1024 * 1024)).toMatchObject({ kind: 'too-large' });
  });
});

describe('text, by its encoding', () => {
  const words = 'Überhitzung 61 °C, 12:00:01 hot plug\r\n';

  test('UTF-16 with and without a byte order mark, UTF-8 with one, and 8 bit', () => {
    const utf16 = Buffer.from(words, 'utf16le');
    const swapped = Buffer.from(utf16).swap16();
    expect(textTypeOf(Buffer.concat([Buffer.from('fffe', 'hex'), utf16]))).toBe(
      'text/plain; charset=utf-16le',
    );
    expect(textTypeOf(Buffer.concat([Buffer.from('feff', 'hex'), swapped]))).toBe(
      'text/plain; charset=utf-16be',
    );
    expect(textTypeOf(utf16)).toBe('text/plain; charset=utf-16le');
    expect(textTypeOf(swapped)).toBe('text/plain; charset=utf-16be');
    expect(textTypeOf(text(`\ufeff${words}`))).toBe('text/plain; charset=utf-8');
    expect(textTypeOf(text(words, 'latin1'))).toBe('text/plain');
  });

  test('a character cut in half at the end of the sample is no reason to doubt', () => {
    const long = text('°'.repeat(40_000));
    expect(textTypeOf(long.subarray(0, 65_535))).toBe('text/plain; charset=utf-8');
  });

  test('any string without controls is text in UTF-8', () => {
    const printable = fc.string({ unit: 'grapheme', minLength: 1 }).filter((value) => !/\p{Cc}/u.test(value));
    fc.assert(fc.property(printable, (value) => textTypeOf(text(value)) === 'text/plain; charset=utf-8'));
  });

  test('bytes with zeros here and there are no text', () => {
    expect(textTypeOf(Buffer.from('4c6f67000102004c6f67', 'hex'))).toBeNull();
  });
});
