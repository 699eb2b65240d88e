import { createHash, type Hash, randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, open, readdir, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { type Readable, Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type {
  ByteRange,
  Condition,
  Content,
  EvidenceStore,
  Received,
  ReceivedFile,
  StoredContent,
  TooLarge,
} from './store.ts';

/**
 * Opens the store in a folder, which is made when it is missing, and clears what a crash left half received.
 * Files lie in `<orgId>/<aa>/<sha256>`.
 */
export async function openEvidenceStore(options: { readonly folder: string }): Promise<EvidenceStore> {
  const store = new LocalDisk(options.folder);
  await mkdir(store.temporaryFolder, { recursive: true, mode: 0o700 });
  await store.removeTemporary();
  return store;
}

const organisationId = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;
const digest = /^[0-9a-f]{64}$/;

/** Where a file lies below the store's folder. @throws TypeError for anything that no store has */
export function pathOfContent(orgId: string, sha256: string): string {
  if (!organisationId.test(orgId)) throw new TypeError('not an organisation id');
  if (!digest.test(sha256)) throw new TypeError('not a SHA-256 in hexadecimal');
  return join(orgId, sha256.slice(0, 2), sha256);
}

const namesIn = async (folder: string, form: RegExp): Promise<string[]> =>
  (await readdir(folder)).filter((name) => form.test(name));

class LocalDisk implements EvidenceStore {
  readonly stagingFolder: string;
  readonly temporaryFolder: string;
  private readonly folder: string;

  constructor(folder: string) {
    this.folder = folder;
    this.stagingFolder = join(folder, 'staging');
    this.temporaryFolder = join(this.stagingFolder, 'received');
  }

  async receive(source: Readable, limits: { readonly maxBytes: number }): Promise<Received | TooLarge> {
    const path = join(this.temporaryFolder, randomUUID());
    const meter = new Meter(limits.maxBytes);
    const file = await open(path, 'wx', 0o600);
    try {
      await pipeline(source, meter, file.createWriteStream({ flush: true }));
      return { ok: true, file: { path, ...meter.result() } };
    } catch (error) {
      await file.close().catch(() => undefined);
      await rm(path, { force: true });
      if (error instanceof LimitReached) return { ok: false, reason: 'tooLarge', maxBytes: limits.maxBytes };
      throw error;
    }
  }

  async inspect(path: string): Promise<ReceivedFile> {
    const content = await measure(path);
    await syncFile(path);
    return { path, ...content };
  }

  async keep(orgId: string, file: ReceivedFile): Promise<Content> {
    const address = this.addressOf(orgId, file.sha256);
    if ((await conditionOf(address, file.sha256)) === 'whole') {
      await this.discard(file);
    } else {
      await this.makeFolder(dirname(address));
      await rename(file.path, address);
    }
    await syncFolder(dirname(address));
    return { sha256: file.sha256, sizeBytes: file.sizeBytes };
  }

  async discard(file: Pick<ReceivedFile, 'path'>): Promise<void> {
    await rm(file.path, { force: true });
  }

  async put(
    orgId: string,
    source: Readable,
    limits: { readonly maxBytes: number },
  ): Promise<(Content & { readonly ok: true }) | TooLarge> {
    const received = await this.receive(source, limits);
    return received.ok ? { ok: true, ...(await this.keep(orgId, received.file)) } : received;
  }

  async get(orgId: string, sha256: string, range?: ByteRange): Promise<Readable> {
    const file = await open(this.addressOf(orgId, sha256), 'r');
    return file.createReadStream(range === undefined ? {} : { start: range.start, end: range.end });
  }

  check(orgId: string, sha256: string): Promise<Condition> {
    return conditionOf(this.addressOf(orgId, sha256), sha256);
  }

  size(orgId: string, sha256: string): Promise<number | null> {
    return sizeOf(this.addressOf(orgId, sha256));
  }

  async has(orgId: string, sha256: string): Promise<boolean> {
    return (await this.size(orgId, sha256)) !== null;
  }

  async removeTemporary(idleForS = 3600): Promise<void> {
    const idleSince = Date.now() - idleForS * 1000;
    for (const name of await readdir(this.temporaryFolder)) {
      const path = join(this.temporaryFolder, name);
      const { mtimeMs } = await stat(path).catch(() => ({ mtimeMs: Number.POSITIVE_INFINITY }));
      if (mtimeMs <= idleSince) await rm(path, { force: true });
    }
  }

  async *contents(): AsyncGenerator<StoredContent> {
    for (const orgId of await namesIn(this.folder, organisationId)) {
      for (const start of await namesIn(join(this.folder, orgId), /^[0-9a-f]{2}$/))
        for (const sha256 of await namesIn(join(this.folder, orgId, start), digest)) yield { orgId, sha256 };
    }
  }

  private addressOf(orgId: string, sha256: string): string {
    return join(this.folder, pathOfContent(orgId, sha256));
  }

  private async makeFolder(folder: string): Promise<void> {
    const made = await mkdir(folder, { recursive: true, mode: 0o700 });
    if (made === undefined) return;
    await syncFolder(dirname(folder));
    await syncFolder(this.folder);
  }
}

/** Counts and hashes what passes, and stops it after `maxBytes`. */
class Meter extends Transform {
  private readonly hash: Hash = createHash('sha256');
  private readonly maxBytes: number;
  private sizeBytes = 0;

  constructor(maxBytes: number) {
    super();
    this.maxBytes = maxBytes;
  }

  override _transform(chunk: Buffer, _encoding: BufferEncoding, done: (error: Error | null) => void): void {
    this.sizeBytes += chunk.length;
    if (this.sizeBytes > this.maxBytes) {
      done(new LimitReached());
    } else {
      this.hash.update(chunk);
      this.push(chunk);
      done(null);
    }
  }

  result(): Content {
    return { sha256: this.hash.digest('hex'), sizeBytes: this.sizeBytes };
  }
}

class LimitReached extends Error {}

async function measure(path: string): Promise<Content> {
  const hash = createHash('sha256');
  let sizeBytes = 0;
  for await (const chunk of createReadStream(path, { highWaterMark: 1 << 18 })) {
    hash.update(chunk);
    sizeBytes += chunk.length;
  }
  return { sha256: hash.digest('hex'), sizeBytes };
}

async function conditionOf(path: string, sha256: string): Promise<Condition> {
  try {
    return (await measure(path)).sha256 === sha256 ? 'whole' : 'damaged';
  } catch (error) {
    if (hasCode(error, 'ENOENT')) return 'missing';
    throw error;
  }
}

async function sizeOf(path: string): Promise<number | null> {
  try {
    return (await stat(path)).size;
  } catch (error) {
    if (hasCode(error, 'ENOENT')) return null;
    throw error;
  }
}

async function syncFile(path: string): Promise<void> {
  const file = await open(path, 'r+');
  await file.sync().finally(() => file.close());
}

/** POSIX: a rename is durable once its folder is synced. Windows opens no folders and needs no such step. */
async function syncFolder(path: string): Promise<void> {
  if (process.platform === 'win32') return;
  const folder = await open(path, 'r');
  await folder.sync().finally(() => folder.close());
}

const hasCode = (error: unknown, code: string): boolean =>
  error instanceof Error && 'code' in error && error.code === code;
