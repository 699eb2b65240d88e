import { spawn } from 'node:child_process';
import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { mkdtemp, readdir, readFile, rm, stat, truncate, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type EvidenceStore, openEvidenceStore } from '../../src/evidence-store/index.ts';

const orgA = randomUUID();
const orgB = randomUUID();
const plenty = { maxBytes: 1 << 30 };
const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

let folder: string;
let store: EvidenceStore;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'evidence-store-'));
  store = await openEvidenceStore({ folder });
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const filesIn = async (path: string): Promise<string[]> =>
  (await readdir(path, { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));

describe('content in, the same content out', () => {
  test('any bytes, in chunks of any size', async () => {
    const chunks = fc.array(fc.uint8Array({ minLength: 1, maxLength: 5000 }), { maxLength: 8 });
    await fc.assert(
      fc.asyncProperty(chunks, async (parts) => {
        const whole = Buffer.concat(parts);
        const kept = await store.put(orgA, Readable.from(parts.map((part) => Buffer.from(part))), plenty);
        expect(kept).toEqual({ ok: true, sha256: sha256Of(whole), sizeBytes: whole.length });
        expect(await buffer(await store.get(orgA, sha256Of(whole)))).toEqual(whole);
        expect(await store.size(orgA, sha256Of(whole))).toBe(whole.length);
      }),
      { numRuns: 30 },
    );
  });

  test('a range counts both ends', async () => {
    const bytes = Buffer.from('0123456789');
    const { sha256 } = await keepBytes(bytes);
    expect(await buffer(await store.get(orgA, sha256, { start: 2, end: 4 }))).toEqual(Buffer.from('234'));
    expect(await buffer(await store.get(orgA, sha256, { start: 9, end: 9 }))).toEqual(Buffer.from('9'));
  });

  test('the file lies under its address, readable by its owner only', async () => {
    const { sha256 } = await keepBytes(Buffer.from('a log line\n'));
    const path = join(folder, orgA, sha256.slice(0, 2), sha256);
    expect((await stat(path)).mode & 0o077).toBe(0);
    expect(await readFile(path, 'utf8')).toBe('a log line\n');
  });
});

describe('one file a content and organisation', () => {
  test('the same content twice is one file', async () => {
    const bytes = randomBytes(100_000);
    const first = await keepBytes(bytes);
    const second = await keepBytes(bytes);
    expect(second).toEqual(first);
    expect(await filesIn(folder)).toHaveLength(1);
  });

  test('twenty at once are one file', async () => {
    const bytes = randomBytes(300_000);
    await Promise.all(Array.from({ length: 20 }, () => keepBytes(bytes)));
    expect(await filesIn(folder)).toHaveLength(1);
  });

  test('another organisation neither has it nor gets it', async () => {
    const { sha256 } = await keepBytes(Buffer.from('private'));
    expect(await store.has(orgA, sha256)).toBe(true);
    expect(await store.has(orgB, sha256)).toBe(false);
    await expect(store.get(orgB, sha256)).rejects.toThrow();
  });

  test('a file that was cut short on disk is made whole by the next upload of it', async () => {
    const bytes = randomBytes(5000);
    const { sha256 } = await keepBytes(bytes);
    await truncate(join(folder, orgA, sha256.slice(0, 2), sha256), 100);
    await keepBytes(bytes);
    expect(await buffer(await store.get(orgA, sha256))).toEqual(bytes);
  });

  test('one byte that changed on disk is found, and healed by the next upload', async () => {
    const bytes = randomBytes(5000);
    const { sha256 } = await keepBytes(bytes);
    expect(await store.check(orgA, sha256)).toBe('whole');
    const changed = Buffer.from(bytes);
    changed[2500] = (bytes[2500] ?? 0) ^ 1;
    await writeFile(join(folder, orgA, sha256.slice(0, 2), sha256), changed);
    expect(await store.check(orgA, sha256)).toBe('damaged');
    await keepBytes(bytes);
    expect(await store.check(orgA, sha256)).toBe('whole');
    await rm(join(folder, orgA, sha256.slice(0, 2), sha256));
    expect(await store.check(orgA, sha256)).toBe('missing');
  });
});

describe('what is not whole is not there', () => {
  test('more than the limit is refused, and nothing stays', async () => {
    const source = Readable.from([Buffer.alloc(600), Buffer.alloc(600)]);
    expect(await store.put(orgA, source, { maxBytes: 1000 })).toEqual({
      ok: false,
      reason: 'tooLarge',
      maxBytes: 1000,
    });
    expect(await filesIn(folder)).toEqual([]);
  });

  test('exactly the limit is taken', async () => {
    const source = Readable.from([Buffer.alloc(1000)]);
    expect(await store.put(orgA, source, { maxBytes: 1000 })).toMatchObject({ ok: true, sizeBytes: 1000 });
  });

  test('a source that breaks off leaves nothing', async () => {
    const source = Readable.from(
      (async function* () {
        yield Buffer.alloc(70_000, 1);
        throw new Error('signal lost');
      })(),
    );
    await expect(store.put(orgA, source, plenty)).rejects.toThrow('signal lost');
    expect(await filesIn(folder)).toEqual([]);
  });

  test('what was received, not kept and left alone is removed; what was kept stays', async () => {
    const kept = await keepBytes(Buffer.from('kept'));
    const received = await store.receive(Readable.from([Buffer.from('half')]), plenty);
    expect(received.ok).toBe(true);
    expect(await filesIn(folder)).toHaveLength(2);
    await store.removeTemporary();
    expect(await filesIn(folder)).toHaveLength(2);
    await store.removeTemporary(0);
    expect(await filesIn(folder)).toEqual([join(folder, orgA, kept.sha256.slice(0, 2), kept.sha256)]);
  });

  test('discarding twice is no error', async () => {
    const received = await store.receive(Readable.from([Buffer.from('x')]), plenty);
    if (!received.ok) throw new Error('not received');
    await store.discard(received.file);
    await store.discard(received.file);
    expect(await filesIn(folder)).toEqual([]);
  });
});

test('killed while receiving: no file under any address, and the next start clears the rest', async () => {
  const script = `
    import { Readable } from 'node:stream';
    import { openEvidenceStore } from ${JSON.stringify(resolve('src/evidence-store/index.ts'))};
    const store = await openEvidenceStore({ folder: ${JSON.stringify(folder)} });
    const endless = Readable.from((async function* () {
      for (let i = 0; ; i += 1) {
        if (i === 20) process.stdout.write('under way');
        yield Buffer.alloc(65_536, i);
        await new Promise((wait) => setTimeout(wait, 5));
      }
    })());
    await store.put(${JSON.stringify(orgA)}, endless, { maxBytes: 1e12 });`;
  const child = spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', script], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const [word] = await once(child.stdout, 'data');
  expect(String(word)).toBe('under way');
  child.kill('SIGKILL');
  await once(child, 'exit');

  expect(await filesIn(folder)).toHaveLength(1);
  const [left] = await filesIn(folder);
  const hoursAgo = new Date(Date.now() - 2 * 3_600_000);
  await utimes(String(left), hoursAgo, hoursAgo);
  await openEvidenceStore({ folder });
  expect(await filesIn(folder)).toEqual([]);
});

test('a finished upload is kept by renaming', async () => {
  const bytes = randomBytes(200_000);
  const path = join(store.stagingFolder, 'upload-1');
  await writeFile(path, bytes);
  const before = (await stat(path)).ino;
  const file = await store.inspect(path);
  const content = await store.keep(orgA, file);
  expect(content).toEqual({ sha256: sha256Of(bytes), sizeBytes: bytes.length });
  expect((await stat(join(folder, orgA, content.sha256.slice(0, 2), content.sha256))).ino).toBe(before);
  await expect(stat(path)).rejects.toThrow('ENOENT');
});

test.each([
  ['../../etc', 'a'.repeat(64)],
  [orgA, '../../../etc/passwd'],
  [orgA, 'A'.repeat(64)],
  [orgA, ''],
])('no address is formed from %s and %s', async (orgId, sha256) => {
  await expect(store.get(orgId, sha256)).rejects.toThrow(TypeError);
});

async function keepBytes(bytes: Buffer): Promise<{ sha256: string; sizeBytes: number }> {
  const kept = await store.put(orgA, Readable.from([bytes]), plenty);
  if (!kept.ok) throw new Error('refused');
  return { sha256: kept.sha256, sizeBytes: kept.sizeBytes };
}
