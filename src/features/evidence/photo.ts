import sharp, { type Sharp } from 'sharp';
import { message } from '../../../shared/message/index.ts';
import { type Refused, refused } from '../../http/index.ts';

/**
 * Most pixels that are decoded, so that a small file can fill neither the memory nor everybody's time; assumed: more than
 * the 50 million of a telephone, and 200 MB while it is turned upright.
 */
const maxPixels = 64_000_000;
/** Assumed: photos that may wait for their turn, and about how long one takes, in seconds. */
const mostWaiting = 16;
const aboutOneTakesS = 2;
const thumbnailPx = 480;

sharp.cache(false);

export type CleanPhoto = {
  readonly ok: true;
  /** The photo in its own format, upright, with its colour profile and without any other metadata. */
  readonly photo: Buffer;
  /** JPEG, 480 px at its longer side, never enlarged. */
  readonly thumbnail: Buffer;
};

/** Re-encodes a photo (JPEG, PNG or WebP) without its position and other metadata, and makes its thumbnail. */
export function cleanPhoto(path: string, mediaType: string): Promise<CleanPhoto | Refused> {
  return inTurn(async () => {
    try {
      const { width, height } = await sharp(path, { limitInputPixels: false }).metadata();
      if (width * height > maxPixels) {
        return refused('too-large', message('photoTooLarge', { widthPx: width, heightPx: height }));
      }
      const photo = await encoded(
        sharp(path, { limitInputPixels: maxPixels, failOn: 'error', sequentialRead: true })
          .autoOrient()
          .keepIccProfile(),
        mediaType,
      ).toBuffer();
      const thumbnail = await sharp(photo, { limitInputPixels: maxPixels })
        .resize(thumbnailPx, thumbnailPx, { fit: 'inside', withoutEnlargement: true })
        .flatten({ background: 'white' })
        .jpeg({ quality: 78 })
        .toBuffer();
      return { ok: true, photo, thumbnail };
    } catch {
      return refused('type-not-allowed', message('photoDamaged'));
    }
  });
}

function encoded(image: Sharp, mediaType: string): Sharp {
  if (mediaType === 'image/png') return image.png();
  if (mediaType === 'image/webp') return image.webp({ quality: 90 });
  return image.jpeg({ quality: 92, chromaSubsampling: '4:4:4' });
}

let before: Promise<unknown> = Promise.resolve();
let waiting = 0;
/** One photo at a time: a decoded one can take hundreds of megabytes. Where many wait already, the sender asks again. */
async function inTurn<Result>(work: () => Promise<Result>): Promise<Result | Refused> {
  if (waiting >= mostWaiting)
    return refused('server-busy', message('tryAgainSoon'), { retryAfterS: waiting * aboutOneTakesS });
  waiting += 1;
  const turn = before.then(work).finally(() => {
    waiting -= 1;
  });
  before = turn.catch(() => undefined);
  return turn;
}
