import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crc32, deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { cleanPhoto } from '../../../src/features/evidence/photo.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'photo-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const latitude = '47/1 22/1 0/1';

/** 1200 x 800, red on the left half, with a position, a comment and a colour profile, lying on its side. */
async function phonePhoto(format: 'jpeg' | 'png' | 'webp'): Promise<string> {
  const left = await sharp({ create: { width: 600, height: 800, channels: 3, background: 'red' } })
    .png()
    .toBuffer();
  const bytes = await sharp({ create: { width: 1200, height: 800, channels: 3, background: 'blue' } })
    .composite([{ input: left, left: 0, top: 0 }])
    .withIccProfile('p3')
    .withExif({
      IFD0: { Copyright: 'left in the camera', Orientation: '6' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: latitude },
    })
    .withMetadata({ orientation: 6 })
    .toFormat(format)
    .toBuffer();
  const path = join(folder, `photo.${format}`);
  await writeFile(path, bytes);
  return path;
}

test.each(['jpeg', 'png', 'webp'] as const)(
  'a %s loses its position and keeps what shows',
  async (format) => {
    const path = await phonePhoto(format);
    const before = await sharp(path).metadata();
    expect(before.exif?.includes('left in the camera')).toBe(true);
    expect(before.orientation).toBe(6);

    const cleaned = await cleanPhoto(path, `image/${format}`);
    if (!cleaned.ok) throw new Error(JSON.stringify(cleaned.said));
    const after = await sharp(cleaned.photo).metadata();
    expect(after).toMatchObject({ format, width: 800, height: 1200 });
    expect(after.exif).toBeUndefined();
    expect(after.xmp).toBeUndefined();
    expect(after.iptc).toBeUndefined();
    expect(after.icc).toBeDefined();
    expect(cleaned.photo.includes('left in the camera')).toBe(false);
    expect(await topColour(cleaned.photo)).toBe('red');
  },
);

test('the thumbnail is 480 px at its longer side, without metadata', async () => {
  const cleaned = await cleanPhoto(await phonePhoto('jpeg'), 'image/jpeg');
  if (!cleaned.ok) throw new Error(JSON.stringify(cleaned.said));
  const thumbnail = await sharp(cleaned.thumbnail).metadata();
  expect(thumbnail).toMatchObject({ format: 'jpeg', width: 320, height: 480 });
  expect(thumbnail.exif).toBeUndefined();
  expect(cleaned.thumbnail.length).toBeLessThan(60_000);
});

test('a small photo is not enlarged', async () => {
  const path = join(folder, 'small.png');
  await sharp({ create: { width: 20, height: 10, channels: 4, background: '#0000' } })
    .png()
    .toFile(path);
  const cleaned = await cleanPhoto(path, 'image/png');
  if (!cleaned.ok) throw new Error(JSON.stringify(cleaned.said));
  expect(await sharp(cleaned.thumbnail).metadata()).toMatchObject({ width: 20, height: 10 });
});

test('a photo that was cut short is refused', async () => {
  const path = join(folder, 'cut.jpg');
  const noise = await sharp({
    create: {
      width: 400,
      height: 400,
      channels: 3,
      background: 'red',
      noise: { type: 'gaussian', sigma: 40 },
    },
  })
    .jpeg()
    .toBuffer();
  await writeFile(path, noise.subarray(0, noise.length / 2));
  expect(await cleanPhoto(path, 'image/jpeg')).toMatchObject({ ok: false, kind: 'type-not-allowed' });
});

test('a few bytes that would unfold into gigabytes are refused by their size', async () => {
  const path = join(folder, 'bomb.png');
  await writeFile(path, emptyPng(60_000, 60_000));
  expect(await cleanPhoto(path, 'image/png')).toMatchObject({ ok: false, kind: 'too-large' });
});

test('a picture of more pixels than a camera takes is refused before it is decoded', async () => {
  const path = join(folder, 'wide.png');
  await writeFile(path, emptyPng(16_000, 7_400));
  expect(await cleanPhoto(path, 'image/png')).toMatchObject({ ok: false, kind: 'too-large' });
});

async function topColour(photo: Buffer): Promise<string> {
  const { data } = await sharp(photo)
    .extract({ left: 400, top: 100, width: 1, height: 1 })
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return (data[0] ?? 0) > (data[2] ?? 0) ? 'red' : 'blue';
}

/** A PNG (ISO/IEC 15948, clause 5) that says it has this many black pixels. */
function emptyPng(width: number, height: number): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([1, 0, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from('89504e470d0a1a0a', 'hex'),
    pngChunk('IHDR', header),
    pngChunk('IDAT', deflateSync(Buffer.alloc(10_000))),
    pngChunk('IEND', Buffer.alloc(0)),
  ]);
}

function pngChunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const whole = Buffer.alloc(body.length + 8);
  whole.writeUInt32BE(data.length, 0);
  body.copy(whole, 4);
  whole.writeUInt32BE(crc32(body), body.length + 4);
  return whole;
}
