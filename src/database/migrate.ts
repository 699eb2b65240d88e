import { createHash, randomUUID } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type pg from 'pg';
import { programFolder } from '../program-folder.ts';

/** Prisma's own advisory lock, so that its command-line tool and this runner never migrate at the same time. */
const migrationLock = 72707369;

/** Prisma's own bookkeeping table, column for column. */
const bookkeepingTable = `
  create table if not exists _prisma_migrations (
    id varchar(36) primary key not null,
    checksum varchar(64) not null,
    finished_at timestamptz,
    migration_name varchar(255) not null,
    logs text,
    rolled_back_at timestamptz,
    started_at timestamptz not null default now(),
    applied_steps_count integer not null default 0
  )`;

export const migrationsFolder = join(programFolder, 'prisma/migrations');

type Migration = { name: string; sql: string; checksum: string };
type Applied = { migration_name: string; checksum: string; finished_at: Date | null };

/** The database and the program's migrations don't fit together; a person has to decide what to do. */
export class MigrationError extends Error {
  override readonly name = 'MigrationError';
}

/**
 * Brings a database up to the migrations in `folder` (Prisma's form: `<timestamp>_<name>/migration.sql`), each in one
 * transaction with its row in `_prisma_migrations`, all under Prisma's advisory lock. Safe to call from many processes
 * at once.
 * @param only where it is given, all that are applied
 * @returns the names of the migrations it applied, in order.
 * @throws MigrationError when an applied migration's file has changed or is gone, one failed half-way, or one fails now.
 */
export async function migrate(
  client: pg.ClientBase,
  folder: string = migrationsFolder,
  only?: ReadonlySet<string>,
): Promise<string[]> {
  const migrations = await readMigrations(folder);
  await client.query('select pg_advisory_lock($1)', [migrationLock]);
  try {
    await client.query(bookkeepingTable);
    const waiting = notYetApplied(migrations, await readApplied(client)).filter(
      ({ name }) => only === undefined || only.has(name),
    );
    for (const migration of waiting) await apply(client, migration);
    return waiting.map(({ name }) => name);
  } finally {
    await ignoringLoss(client.query('select pg_advisory_unlock($1)', [migrationLock]));
  }
}

/** On a connection that is gone, lock and transaction are too; the error that tells is the one before. */
const ignoringLoss = (query: Promise<unknown>): Promise<unknown> => query.catch(() => undefined);

/** In the order in which they are applied. */
export async function migrationNames(folder: string = migrationsFolder): Promise<string[]> {
  const entries = await readdir(folder, { withFileTypes: true });
  return entries
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
}

async function readMigrations(folder: string): Promise<Migration[]> {
  return Promise.all(
    (await migrationNames(folder)).map(async (name) => {
      const sql = await readFile(`${folder}/${name}/migration.sql`, 'utf8');
      return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') };
    }),
  );
}

async function readApplied(client: pg.ClientBase): Promise<Applied[]> {
  const { rows } = await client.query<Applied>(
    `select migration_name, checksum, finished_at from _prisma_migrations
     where rolled_back_at is null order by started_at, migration_name`,
  );
  return rows;
}

function notYetApplied(migrations: readonly Migration[], applied: readonly Applied[]): Migration[] {
  const byName = new Map(migrations.map((migration) => [migration.name, migration]));
  for (const { migration_name: name, checksum, finished_at } of applied) {
    const migration = byName.get(name);
    if (finished_at === null) {
      throw new MigrationError(
        `Migration ${name} was begun and never finished. Put the database right, then mark it with "prisma migrate resolve".`,
      );
    }
    if (migration === undefined) {
      throw new MigrationError(
        `Migration ${name} was applied to this database but its file is missing here: is the program older than the database?`,
      );
    }
    if (migration.checksum !== checksum) {
      throw new MigrationError(
        `Migration ${name} was changed after it was applied. Restore its file, and put the change into a new migration.`,
      );
    }
  }
  const done = new Set(applied.map(({ migration_name }) => migration_name));
  return migrations.filter(({ name }) => !done.has(name));
}

const triesAllowed = 5;

async function apply(client: pg.ClientBase, migration: Migration): Promise<void> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await applyOnce(client, migration);
    } catch (error) {
      await ignoringLoss(client.query('rollback'));
      if (attempt < triesAllowed && isRaceForRoles(error)) continue;
      const reason = error instanceof Error ? error.message : String(error);
      throw new MigrationError(`Migration ${migration.name} failed and left nothing behind: ${reason}`, {
        cause: error,
      });
    }
  }
}

async function applyOnce(client: pg.ClientBase, { name, sql, checksum }: Migration): Promise<void> {
  await client.query('begin');
  const { rows } = await client.query<{ at: Date }>('select clock_timestamp() as at');
  await client.query(sql);
  await client.query(
    `insert into _prisma_migrations (id, checksum, migration_name, started_at, finished_at, applied_steps_count)
     values ($1, $2, $3, $4, clock_timestamp(), 1)`,
    [randomUUID(), checksum, name, rows[0]?.at],
  );
  await client.query('commit');
}

/**
 * Roles are shared by all databases of a cluster and the lock above is not: two databases that are migrated at the same
 * time can meet in the catalog of roles, for which PostgreSQL has no error code of its own.
 */
const isRaceForRoles = (error: unknown): boolean =>
  error instanceof Error && /tuple concurrently (updated|deleted)/.test(error.message);
