import { createHash } from 'node:crypto';
import { Readable, Transform } from 'node:stream';
import { ZipFile } from 'yazl';

/** One file of a zip; `open` is called when its turn comes, so that one is held at a time. */
export type ZipEntry = {
  /** Letters, digits, dots, dashes and slashes. */
  readonly path: string;
  /** Deflate would make it no smaller. */
  readonly isPacked: boolean;
  /** What its bytes have to hash to, where that is known beforehand; SHA-256 in lower-case hexadecimal. */
  readonly sha256?: string;
  /** Null where it should be there and isn't. */
  open(): Promise<Readable | null>;
};

/** A file whose bytes are not what they have to be, or that is not there at all. */
type Fault = { readonly path: string; readonly sha256: string; readonly is: 'damaged' | 'missing' };

/** Regular file, readable by everybody, in the upper half of the zip's external attributes. */
const fileMode = 0o100644;

/**
 * A zip as a stream, with `manifest-sha256.txt` as its last file: hash, two spaces and path a line, which
 * `sha256sum -c` reads inside the folder (the form of RFC 8493, section 2.1.3). Hashes are taken as the bytes go by.
 * A file that was damaged or lost since it was kept doesn't keep the rest from leaving: it is listed under the hash that
 * it had, so that the check names it, and in `damage.json`; of a lost one an empty file stands for it.
 * A file that can't be read otherwise, or breaks off, ends the stream with an error: no zip looks whole that isn't.
 */
export function zipWithManifest(folder: string, entries: readonly ZipEntry[], madeAt: Date): Readable {
  const zip = new ZipFile();
  const output = zip.outputStream as Readable;
  const lines: string[] = [];
  const damage: Fault[] = [];
  const fail = (error: unknown): void => {
    output.destroy(error instanceof Error ? error : new Error(String(error)));
  };
  zip.on('error', fail);
  let current: Readable | null = null;
  output.on('close', () => current?.destroy());
  const add = (path: string, compress: boolean, open: () => Promise<Readable>): void => {
    zip.addReadStreamLazy(`${folder}/${path}`, { mtime: madeAt, mode: fileMode, compress }, (give) => {
      if (output.destroyed) return;
      open().then((stream) => {
        current = stream.on('error', fail);
        if (output.destroyed) stream.destroy();
        else give(null, stream);
      }, fail);
    });
  };
  for (const { path, isPacked, sha256, open } of entries) {
    add(path, !isPacked, async () => {
      const source = await open();
      const note = (hash: string): void => {
        lines.push(`${sha256 ?? hash}  ${path}\n`);
        if (sha256 === undefined || sha256 === hash) return;
        damage.push({ path, sha256, is: source === null ? 'missing' : 'damaged' });
      };
      return (source ?? Readable.from([])).on('error', fail).pipe(hashed(note));
    });
  }
  const noteDamage = (hash: string): void => void lines.push(`${hash}  damage.json\n`);
  add('damage.json', true, async () =>
    Readable.from([`${JSON.stringify(damage, null, 1)}\n`]).pipe(hashed(noteDamage)),
  );
  add('manifest-sha256.txt', true, async () => Readable.from([lines.toSorted(byPath).join('')]));
  zip.end();
  return output;
}

const byPath = (a: string, b: string): number => (a.slice(66) < b.slice(66) ? -1 : 1);

function hashed(done: (hash: string) => void): Transform {
  const hash = createHash('sha256');
  return new Transform({
    transform(chunk: Buffer, _encoding, next) {
      hash.update(chunk);
      next(null, chunk);
    },
    flush(next) {
      done(hash.digest('hex'));
      next();
    },
  });
}
