import sharp, { type Sharp } from 'sharp';
import { message } from '../../../shared/message/index.ts';
import { type Refused, refused } from '../../http/index.ts';

/**
 * Most pixels that are decoded, so that a small file can fill neither the memory nor everybody's time; assumed: more than
 * the 50 million of a telephone.
 */
const maxPixels = 64_000_000;
/** Assumed: one of that many pixels takes ten seconds of a processor, which it may have to share. */
const longestS = 90;
/**
 * Assumed. From here on a JPEG is written without its coding made to measure, for which the whole of it is held: at the most
 * pixels it takes 415 MB and 3 s instead of 1150 MB and 7 s, and comes out a seventh larger.
 */
const largePixels = 16_000_000;
const thumbnailPx = 480;

sharp.cache(false);
// One processor for one photo: the others are everybody else's.
sharp.concurrency(1);

export type CleanPhoto = {
  readonly ok: true;
  /** The photo in its own format, upright, with its colour profile and without any other metadata. */
  readonly photo: Buffer;
  /** JPEG, 480 px at its longer side, never enlarged. */
  readonly thumbnail: Buffer;
};

/**
 * Re-encodes a photo (JPEG, PNG or WebP) without its position and other metadata, and makes its thumbnail. It takes up to
 * half a gigabyte meanwhile; whoever calls sees to it that few are at it at a time.
 */
export async function cleanPhoto(path: string, mediaType: string): Promise<CleanPhoto | Refused> {
  try {
    const { width, height } = await sharp(path, { limitInputPixels: false }).metadata();
    if (width * height > maxPixels) {
      return refused('too-large', message('photoTooLarge', { widthPx: width, heightPx: height }));
    }
    const isLarge = width * height > largePixels;
    const photo = await encoded(
      sharp(path, { limitInputPixels: maxPixels, failOn: 'error', sequentialRead: true })
        .autoOrient()
        .keepIccProfile()
        .timeout({ seconds: longestS }),
      { mediaType, isLarge },
    ).toBuffer();
    const thumbnail = await sharp(photo, { limitInputPixels: maxPixels })
      .resize(thumbnailPx, thumbnailPx, { fit: 'inside', withoutEnlargement: true })
      .flatten({ background: 'white' })
      .jpeg({ quality: 78 })
      .timeout({ seconds: longestS })
      .toBuffer();
    return { ok: true, photo, thumbnail };
  } catch (error) {
    if (hasTakenTooLong(error))
      return refused('server-busy', message('tryAgainSoon'), { retryAfterS: longestS });
    return refused('type-not-allowed', message('photoDamaged'));
  }
}

function encoded(
  image: Sharp,
  { mediaType, isLarge }: { readonly mediaType: string; readonly isLarge: boolean },
): Sharp {
  if (mediaType === 'image/png') return image.png();
  if (mediaType === 'image/webp') return image.webp({ quality: 90 });
  return image.jpeg({ quality: 92, chromaSubsampling: '4:4:4', optimiseCoding: !isLarge });
}

/** As the library says it of its own time limit. */
const hasTakenTooLong = (error: unknown): boolean =>
  error instanceof Error && /^timeout\b/.test(error.message);
