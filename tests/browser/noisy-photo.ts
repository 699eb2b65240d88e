import { join } from 'node:path';
import sharp from 'sharp';

/** A photo as a phone's camera makes it: 3600 × 2700 px and more than half a megabyte, each one another. */
export async function noisyPhoto(folder: string, seed: number): Promise<string> {
  const [width, height] = [240, 180];
  let state = seed + 1;
  const pixels = Buffer.from(
    Array.from({ length: width * height }, () => {
      // A linear congruential generator; the constants are of Numerical Recipes (from memory).
      state = (state * 1_664_525 + 1_013_904_223) % 4_294_967_296;
      return 96 + (state >>> 26);
    }),
  );
  const path = join(folder, `end-${seed}.jpg`);
  await sharp(pixels, { raw: { width, height, channels: 1 } })
    .resize(3600, 2700, { kernel: 'cubic' })
    .jpeg({ quality: 95 })
    .toFile(path);
  return path;
}
