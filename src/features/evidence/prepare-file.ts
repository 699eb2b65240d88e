import { Readable } from 'node:stream';
import type { FileEvidenceAbout, Span } from '../../../shared/contract/evidence.ts';
import type { EvidenceStore, ReceivedFile } from '../../evidence-store/index.ts';
import type { Refused } from '../../http/index.ts';
import { acceptedType } from './content-type.ts';
import { type Facts, factsOf, type Reader } from './facts.ts';
import { cleanPhoto } from './photo.ts';

/** A file that was looked at and may be kept; its parts still lie in the staging folder. */
export type PreparedFile = {
  readonly ok: true;
  readonly main: ReceivedFile;
  readonly mediaType: string;
  readonly thumbnail: ReceivedFile | null;
  /** Hash of the file as it was sent, where another one is kept in its place. */
  readonly originalSha256: string | null;
  readonly facts: Facts | null;
  /** The time that a log covers, by its own stamps. */
  readonly span: Span | null;
};

const noLimit = { maxBytes: Number.POSITIVE_INFINITY };
export const thumbnailType = 'image/jpeg';

/**
 * Looks at a received file: is it of a type that this kind of evidence may have? A picture is replaced by one
 * without position and other metadata, and gets a thumbnail; an EDID is decoded, a log read. The caller keeps the
 * file's staging copy until it knows what came of it.
 *
 * @throws what heavy work throws, see src/heavy-work
 */
export async function prepareFile(
  store: EvidenceStore,
  file: ReceivedFile,
  { about, ...reader }: { about: FileEvidenceAbout } & Reader,
): Promise<PreparedFile | Refused> {
  const accepted = await acceptedType(about.kind, file.path, file.sizeBytes);
  if (!accepted.ok) return accepted;
  const { mediaType } = accepted;
  if (!mediaType.startsWith('image/')) {
    const read = await factsOf(about, { path: file.path, mediaType }, reader);
    if (!read.ok) return read;
    return { ...read, main: file, mediaType, thumbnail: null, originalSha256: null };
  }
  const { heavyWork, asked } = reader;
  const cleaned = await heavyWork.inTurn('photos', asked, () => cleanPhoto(file.path, mediaType));
  if (!cleaned.ok) return cleaned;
  return {
    ok: true,
    main: await receiveBytes(store, cleaned.photo),
    mediaType,
    thumbnail: await receiveBytes(store, cleaned.thumbnail),
    originalSha256: file.sha256,
    facts: null,
    span: null,
  };
}

async function receiveBytes(store: EvidenceStore, bytes: Buffer): Promise<ReceivedFile> {
  const received = await store.receive(Readable.from([bytes]), noLimit);
  if (!received.ok) throw new Error('the evidence store refused a file without a limit');
  return received.file;
}

/** Removes what a prepared file left in the staging folder. What was kept is not there any more. */
export async function discardPrepared(store: EvidenceStore, prepared: PreparedFile): Promise<void> {
  await store.discard(prepared.main);
  if (prepared.thumbnail !== null) await store.discard(prepared.thumbnail);
}
