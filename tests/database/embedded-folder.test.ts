import { type ChildProcessByStdio, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { mkdtemp, readFile, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { PGlite } from '@electric-sql/pglite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lockFolder } from '../../src/database/folder-lock.ts';
import { FolderInUseError, openDatabase } from '../../src/database/index.ts';
import { extensions, openEmbedded } from '../../src/database/pools.ts';
import { migratedDataFolder } from '../support/test-database.ts';

let dataFolder: string;
beforeAll(async () => {
  dataFolder = await mkdtemp(join(tmpdir(), 'halfsplit-data-'));
  const pglite = await PGlite.create(join(dataFolder, 'postgres'), {
    loadDataDir: await migratedDataFolder(),
    extensions,
  });
  await pglite.close();
});
afterAll(() => rm(dataFolder, { recursive: true }));

type Writer = { process: ChildProcessByStdio<null, Readable, null>; written: string[] };
const program = fileURLToPath(new URL('write-until-killed.ts', import.meta.url));

/** Starts the writing program, and waits until it has acknowledged so many rows. */
async function startWriter(rows: number): Promise<Writer> {
  const child = spawn(process.execPath, ['--import', 'tsx', program, dataFolder], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const written: string[] = [];
  const lines = createInterface({ input: child.stdout });
  await new Promise<void>((resolve, reject) => {
    lines.on('line', (line) => {
      written.push(line);
      if (written.length === rows) resolve();
    });
    lines.on('close', () => reject(new Error('the writing program ended early')));
  });
  return { process: child, written };
}

async function kill(writer: Writer): Promise<void> {
  writer.process.kill('SIGKILL');
  await once(writer.process, 'close');
}

describe('the folder of the embedded database', () => {
  it('keeps every acknowledged row through SIGKILL, and opens again', async () => {
    const acknowledged: string[] = [];
    for (const rows of [1, 25]) {
      const writer = await startWriter(rows);
      await kill(writer);
      acknowledged.push(...writer.written);
      const { pool, close } = await openEmbedded(dataFolder);
      const { rows: kept } = await pool.query<{ id: string }>('select id from firmware_level');
      await close();
      expect(kept.map(({ id }) => id)).toEqual(expect.arrayContaining(acknowledged));
    }
    expect(acknowledged.length).toBeGreaterThanOrEqual(26);
  }, 180_000);

  it('is refused to a second process, which harms nothing', async () => {
    const writer = await startWriter(1);
    const second = openDatabase({ dataFolder });
    await expect(second).rejects.toBeInstanceOf(FolderInUseError);
    await expect(second).rejects.toThrow(
      `open in another process (process ${writer.process.pid}). Stop that one, choose another HALFSPLIT_DATA`,
    );
    const before = writer.written.length;
    await expect.poll(() => writer.written.length).toBeGreaterThan(before);
    await kill(writer);
  });

  it('is refused to the same process a second time, and free once closed', async () => {
    const first = await openDatabase({ dataFolder });
    await expect(openDatabase({ dataFolder })).rejects.toBeInstanceOf(FolderInUseError);
    await first.close();
    expect(existsSync(join(dataFolder, 'postgres.lock'))).toBe(false);
    const again = await openDatabase({ dataFolder });
    await again.close();
  });
});

describe('the lock on the folder', () => {
  const path = () => join(dataFolder, 'a.lock');
  const leftBy = (pid: number, machine: string) =>
    writeFile(path(), JSON.stringify({ pid, machine, token: 'theirs' }));
  const thisMachine = async (): Promise<string> => {
    const unlock = await lockFolder(path());
    const { machine } = JSON.parse(await readFile(path(), 'utf8')) as { machine: string };
    await unlock();
    return machine;
  };
  /** Above the highest process id that Linux gives (2^22), so no process has it. */
  const nobody = 2 ** 22 + 1;

  it('goes to one of many that find it left behind by a dead process', async () => {
    await leftBy(nobody, await thisMachine());
    const tries = await Promise.allSettled(Array.from({ length: 10 }, () => lockFolder(path())));
    const [winner, ...others] = tries.filter((attempt) => attempt.status === 'fulfilled');
    expect(others).toEqual([]);
    await winner?.value();
    expect(existsSync(path())).toBe(false);
  });

  it('is taken over where a crash left it empty, and readable by its owner only', async () => {
    await writeFile(path(), '', { mode: 0o644 });
    const unlock = await lockFolder(path());
    expect((await stat(path())).mode & 0o777).toBe(0o600);
    await unlock();
  });

  it('is taken over from another machine that does not touch it any more', async () => {
    await leftBy(process.pid, 'a container that is gone');
    const unlock = await lockFolder(path());
    await unlock();
  });

  it('is left to another machine that touches it', async () => {
    await leftBy(nobody, 'a container that runs');
    const beat = setInterval(() => utimes(path(), new Date(), new Date()), 500);
    await expect(lockFolder(path())).rejects.toBeInstanceOf(FolderInUseError);
    clearInterval(beat);
    await rm(path());
  });
});
