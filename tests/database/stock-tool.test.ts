import { readdir, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { PrismaPg } from '@prisma/adapter-pg';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import * as bindings from '@prisma/schema-engine-wasm/schema_engine_bg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { migrationsFolder } from '../../src/database/migrate.ts';
import { databaseKinds, openTestDatabase, type TestDatabase } from '../support/test-database.ts';
import { describeDatabase, readPrismaSchema } from './schema-description.ts';

// Checked from outside: the schema engine of Prisma's own command-line tool, in the form that needs no download.
const noFilters = { externalTables: [], externalEnums: [] };

async function startEngine(pool: ConstructorParameters<typeof PrismaPg>[0]): Promise<bindings.SchemaEngine> {
  const schema: [string, string] = ['schema.prisma', await readPrismaSchema()];
  const adapter = bindMigrationAwareSqlAdapterFactory(new PrismaPg(pool));
  return bindings.SchemaEngine.new({ datamodels: [schema] }, () => undefined, adapter);
}

async function migrationsList() {
  const names = (await readdir(migrationsFolder)).filter((name) => /^\d{14}_/.test(name));
  const read = async (path: string): Promise<string> => readFile(join(migrationsFolder, path), 'utf8');
  return {
    baseDir: migrationsFolder,
    lockfile: { path: 'migration_lock.toml', content: await read('migration_lock.toml') },
    shadowDbInitScript: '',
    migrationDirectories: await Promise.all(
      names.map(async (path) => {
        const content = { tag: 'ok' as const, value: await read(join(path, 'migration.sql')) };
        return { path, migrationFile: { path: 'migration.sql', content } };
      }),
    ),
  };
}

/** Node's types have no WebAssembly. */
type Instantiate = (bytes: Uint8Array, imports: object) => Promise<{ instance: { exports: Exports } }>;
type Exports = { __wbindgen_start(): void };

beforeAll(async () => {
  const wasm = createRequire(import.meta.url)
    .resolve('@prisma/schema-engine-wasm/schema_engine_bg')
    .replace(/\.js$/, '.wasm');
  const { WebAssembly } = globalThis as unknown as { WebAssembly: { instantiate: Instantiate } };
  const imports = { './schema_engine_bg.js': { ...bindings } };
  const { exports } = (await WebAssembly.instantiate(await readFile(wasm), imports)).instance;
  bindings.__wbg_set_wasm(exports);
  exports.__wbindgen_start();
});

describe.each(databaseKinds())("Prisma's own schema engine on the %s database", (kind) => {
  let test: TestDatabase;
  let engine: bindings.SchemaEngine;
  beforeAll(async () => {
    test = await openTestDatabase(kind);
    engine = await startEngine(test.owner);
  });
  afterAll(() => test.drop());

  it('takes what the runner left for its own work, with nothing to do', async () => {
    const list = { migrationsList: await migrationsList(), filters: noFilters };
    expect(await engine.diagnoseMigrationHistory({ ...list, optInToShadowDatabase: false })).toEqual({
      editedMigrationNames: [],
      failedMigrationNames: [],
      hasMigrationsTable: true,
      history: null,
    });
    expect((await engine.applyMigrations(list)).appliedMigrationNames).toEqual([]);
  });

  it('would make the same tables from the schema', async () => {
    const files = [{ path: 'schema.prisma', content: await readPrismaSchema() }];
    const { stdout } = await engine.diff({
      from: { tag: 'empty' },
      to: { tag: 'schemaDatamodel', files },
      script: true,
      exitCode: null,
      filters: noFilters,
    });
    expect(stdout).toContain('CREATE TABLE "ticket_event"');
    const client = await test.owner.connect();
    try {
      const ours = await describeDatabase(client);
      await client.query('drop schema public cascade; create schema public');
      await client.query(stdout ?? '');
      expect(await describeDatabase(client)).toEqual(ours);
    } finally {
      client.release();
    }
  });
});
