import { createHash, randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readdir, readFile, rename, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import pg from 'pg';
import { type Database, databaseOver, migrateOver } from '../../src/database/index.ts';
import { migrationsFolder } from '../../src/database/migrate.ts';
import { type Connections, embeddedOver, extensions, openServer } from '../../src/database/pools.ts';

export type DatabaseKind = Database['kind'];

export type TestDatabase = {
  database: Database;
  /** Its own connections, as the owner, for looking behind the wall. */
  owner: pg.Pool;
  /** On a server: where it is. */
  databaseUrl?: string;
  /** Embedded: puts a copy into a data folder, which a program of its own can open. */
  copyTo?: (dataFolder: string) => Promise<void>;
  drop(): Promise<void>;
};

/** The databases to test on: `embedded` always, `server` where TEST_DATABASE_URL names one. */
export const databaseKinds = (): DatabaseKind[] =>
  (process.env.TEST_DATABASE_URL ?? '') === '' ? ['embedded'] : ['embedded', 'server'];

/** A migrated and otherwise empty database of its own; `drop` it afterwards. */
export async function openTestDatabase(kind: DatabaseKind): Promise<TestDatabase> {
  return kind === 'embedded' ? inMemory() : onServer();
}

async function inMemory(): Promise<TestDatabase> {
  const pglite = await loadMigrated();
  const connections = embeddedOver(pglite);
  const database = await databaseOver(connections);
  const copyTo = async (dataFolder: string): Promise<void> => {
    const loadDataDir = await pglite.dumpDataDir('none');
    await (await PGlite.create(join(dataFolder, 'postgres'), { loadDataDir, extensions })).close();
  };
  return { database, owner: connections.pool, copyTo, drop: () => database.close() };
}

const loadMigrated = async (): Promise<PGlite> =>
  PGlite.create('memory://', { loadDataDir: await migratedDataFolder(), extensions });

async function onServer(): Promise<TestDatabase> {
  const { connections, databaseUrl, drop } = await createOnServer();
  const database = await databaseOver(connections);
  const dropAll = () => database.close().then(drop);
  return { database, owner: connections.pool, databaseUrl, drop: dropAll };
}

/** A database of its own without any table; `drop` closes it too. */
export async function openEmptyDatabase(
  kind: DatabaseKind,
): Promise<{ connections: Connections; databaseUrl?: string; drop(): Promise<void> }> {
  if (kind === 'server') {
    const { connections, databaseUrl, drop } = await createOnServer();
    return { connections, databaseUrl, drop: () => connections.close().then(drop) };
  }
  const connections = embeddedOver(await loadMigrated());
  await connections.pool.query('drop schema public cascade; create schema public');
  return { connections, drop: () => connections.close() };
}

async function createOnServer() {
  const beside = process.env.TEST_DATABASE_URL ?? '';
  const name = `halfsplit_test_${randomUUID().replaceAll('-', '')}`;
  const url = new URL(beside);
  url.pathname = `/${name}`;
  await onceOn(beside, `create database ${name} template template0`);
  const drop = () => onceOn(beside, `drop database ${name} with (force)`);
  return { connections: openServer(url.href), databaseUrl: url.href, drop };
}

async function onceOn(databaseUrl: string, sql: string): Promise<void> {
  const client = new pg.Client(databaseUrl);
  await client.connect();
  try {
    await client.query(sql);
  } finally {
    await client.end();
  }
}

/**
 * Setting PGlite up takes seconds and loading what it set up a fraction of that, so a migrated copy is kept in the
 * temporary folder, under the hash of all that it is made from.
 */
export async function migratedDataFolder(): Promise<Blob> {
  const path = join(tmpdir(), `halfsplit-test-${await fingerprint()}.tar`);
  if (!existsSync(path)) {
    const draft = `${path}.${randomUUID()}`;
    await writeFile(draft, await makeMigratedDataFolder());
    await rename(draft, path);
  }
  return new Blob([await readFile(path)]);
}

async function makeMigratedDataFolder(): Promise<Buffer> {
  const pglite = await PGlite.create('memory://', { extensions });
  const connections = embeddedOver(pglite);
  await migrateOver(connections);
  const dump = await pglite.dumpDataDir('none');
  await connections.close();
  return Buffer.from(await dump.arrayBuffer());
}

async function fingerprint(): Promise<string> {
  const hash = createHash('sha256');
  const pglite = createRequire(import.meta.url).resolve('@electric-sql/pglite');
  hash.update(await readFile(join(dirname(pglite), '..', 'package.json')));
  for (const entry of (await readdir(migrationsFolder, { recursive: true })).sort()) {
    if (entry.endsWith('.sql')) hash.update(entry).update(await readFile(join(migrationsFolder, entry)));
  }
  return hash.digest('hex').slice(0, 16);
}
