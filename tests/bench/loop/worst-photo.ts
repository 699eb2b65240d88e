import sharp from 'sharp';

/** Just under what the server takes, in pixels. */
const width = 9_100;
const height = 7_000;

/** Noise, which packs badly, as a progressive JPEG, which has to be held whole to be decoded. */
export async function writeWorstPhoto(path: string): Promise<void> {
  const noise = { type: 'gaussian', mean: 128, sigma: 60 } as const;
  await sharp({ create: { width, height, channels: 3, background: 'grey', noise }, limitInputPixels: false })
    .jpeg({ quality: 85, progressive: true })
    .toFile(path);
}
