import type { Readable } from 'node:stream';
import { ZipFile } from 'yazl';
import type { BagFile } from '../../../shared/contract/packet.ts';
import type { WrittenFile } from './packet-files.ts';

/** Regular file, readable by everybody, in the upper half of the zip's external attributes. */
const fileMode = 0o100644;
/** What deflate makes no smaller. */
const packedAlready = /\.(jpg|png|webp|gz|pdf)$/;

type ZippedBag = {
  readonly folder: string;
  readonly files: readonly BagFile[];
  readonly madeAt: Date;
  /** What is said beside the bag's own files, last. */
  readonly notes?: readonly WrittenFile[];
};

/**
 * A bag as a zip, streamed: one file is open at a time, and nothing is held whole. The same bag gives the same
 * bytes: times are the packet's own, and in UTC whatever the server's time zone.
 * @param open gives a file's content; its failure, and a content of another size, end the stream with an error
 */
export function zipOf(
  { folder, files, madeAt, notes }: ZippedBag,
  open: (file: BagFile) => Promise<Readable>,
): Readable {
  const zip = new ZipFile();
  const output = zip.outputStream as Readable;
  let current: Readable | null = null;
  const fail = (error: unknown): void => {
    output.destroy(error instanceof Error ? error : new Error(String(error)));
  };
  zip.on('error', fail);
  output.on('close', () => current?.destroy());
  const ofAll = { mtime: inUtc(madeAt), forceDosTimestamp: true, mode: fileMode };
  for (const file of files) {
    const options = {
      ...ofAll,
      size: file.sizeBytes,
      compress: !packedAlready.test(file.path),
    };
    zip.addReadStreamLazy(`${folder}/${file.path}`, options, (give) => {
      if (output.destroyed) return;
      open(file).then((stream) => {
        current = stream.on('error', fail);
        if (output.destroyed) stream.destroy();
        else give(null, stream);
      }, fail);
    });
  }
  for (const { path, content } of notes ?? [])
    zip.addBuffer(Buffer.from(content), `${folder}/${path}`, ofAll);
  zip.end();
  return output;
}

/** A zip's times have no zone and are written in the server's; this moment reads there as the given one in UTC. */
const inUtc = (moment: Date): Date => new Date(moment.getTime() + moment.getTimezoneOffset() * 60_000);
