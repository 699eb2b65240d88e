import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { mkdir, readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { PassThrough, type Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGunzip, createGzip } from 'node:zlib';
import { z } from 'zod';
import { NotRestorableError } from '../database/index.ts';

/**
 * A backup is a folder:
 *
 *     backup.json             what follows
 *     tables/NAME.ndjson.gz   a row a line
 *     data/…                  of the data folder: anchors, and the secrets that lie there
 *     evidence.sha256         the files of the evidence, by their paths in ../evidence, which all backups beside share
 *     contents.sha256         all of the above; written last
 *
 * `sha256sum -c contents.sha256 evidence.sha256` in it checks all.
 */
export const backupSchema = z.object({
  format: z.literal(1),
  madeAt: z.iso.datetime(),
  migrations: z.array(z.string()),
  tables: z.array(z.object({ name: z.string(), rows: z.int().min(0) })),
  /** Names of files below data/. */
  data: z.array(z.string()),
});
export type Backup = z.output<typeof backupSchema>;

export const descriptionFile = 'backup.json';
export const contentsFile = 'contents.sha256';
export const evidenceFile = 'evidence.sha256';
export const evidenceFolder = '../evidence';
export const dataFolder = 'data';
export const tableFile = (name: string): string => `tables/${name}.ndjson.gz`;

export type HashedFile = { readonly path: string; readonly sha256: string };

/** As `sha256sum` writes and reads it. */
export const hashLine = ({ path, sha256 }: HashedFile): string => `${sha256}  ${path}\n`;

export async function readHashes(folder: string, name: string): Promise<HashedFile[]> {
  const lines = (await readFile(join(folder, name), 'utf8')).split('\n').filter((line) => line !== '');
  return lines.map((line) => {
    const [, sha256, path] = /^([0-9a-f]{64}) {2}(.+)$/.exec(line) ?? [];
    if (sha256 === undefined || path === undefined)
      throw new NotRestorableError(`${name}: not a list of files.`);
    return { path, sha256 };
  });
}

/** Writes a file durably, readable by its owner only. @returns the hash of what lies there now */
export async function writeHashed(
  folder: string,
  path: string,
  source: Readable,
  packed: { readonly gzip: boolean } = { gzip: false },
): Promise<HashedFile> {
  const file = join(folder, path);
  await mkdir(dirname(file), { recursive: true, mode: 0o700 });
  const hash = createHash('sha256');
  const meter = new PassThrough();
  meter.on('data', (chunk: Buffer) => hash.update(chunk));
  const packing = packed.gzip ? createGzip() : new PassThrough();
  await pipeline(source, packing, meter, createWriteStream(file, { mode: 0o600, flags: 'wx', flush: true }));
  return { path, sha256: hash.digest('hex') };
}

export async function hashOf(path: string): Promise<string> {
  const hash = createHash('sha256');
  await pipeline(createReadStream(path), hash);
  return hash.digest('hex');
}

/** The rows of a table, as they were written. */
export async function* readRows(folder: string, table: string): AsyncGenerator<string> {
  const file = createReadStream(join(folder, tableFile(table)));
  const unpacked = createGunzip().setEncoding('utf8');
  file.on('error', (error) => unpacked.destroy(error)).pipe(unpacked);
  let begun = '';
  for await (const text of unpacked) {
    const lines = `${begun}${text}`.split('\n');
    begun = lines.pop() ?? '';
    yield* lines;
  }
  if (begun !== '') yield begun;
}
