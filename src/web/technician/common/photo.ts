/** Long side of a photo that is sent, pixels; assumed: a cable's printed label stays legible, and weak signal carries it. */
const longSidePx = 2560;
/** JPEG quality, 0..1; assumed. */
const quality = 0.82;
/** A photo up to this size is sent as it is; assumed. */
const smallBytes = 500 * 1024;
/** What the evidence store takes as a photo. */
const taken: ReadonlySet<string> = new Set(['image/jpeg', 'image/png', 'image/webp']);

/**
 * A photo made small enough for a weak connection: JPEG, its long side 2560 px at most, never enlarged. Small ones,
 * and those that would not become smaller, stay as they are; so does what this browser can't decode, for the server
 * to judge. The bytes are copied, since a picked file can go away under the page.
 */
export async function photoForSending(file: File): Promise<Blob> {
  const copy = new Blob([await file.arrayBuffer()], { type: file.type });
  if (taken.has(file.type) && file.size <= smallBytes) return copy;
  const picture = await createImageBitmap(copy).catch(() => null);
  if (picture === null) return copy;
  const jpeg = await drawnAsJpeg(picture);
  picture.close();
  const isBetter = jpeg !== null && (jpeg.size < file.size || !taken.has(file.type));
  return isBetter ? jpeg : copy;
}

function drawnAsJpeg(picture: ImageBitmap): Promise<Blob | null> {
  const share = Math.min(1, longSidePx / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(picture.width * share);
  canvas.height = Math.round(picture.height * share);
  const context = canvas.getContext('2d');
  if (context === null) return Promise.resolve(null);
  context.imageSmoothingQuality = 'high';
  context.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality));
}

/** A file's name with the ending of what it has become. */
export const nameFor = (file: File, sent: Blob): string =>
  sent.type === file.type ? file.name : `${file.name.replace(/\.[^.]*$/, '')}.jpg`;
