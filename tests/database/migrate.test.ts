import { execFile } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { cp, mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { MigrationError, openDatabase } from '../../src/database/index.ts';
import { migrate, migrationsFolder } from '../../src/database/migrate.ts';
import { databaseKinds, openEmptyDatabase } from '../support/test-database.ts';
import { makeFirm } from './two-firms.ts';

const run = promisify(execFile);

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'halfsplit-migrations-'));
});
afterEach(() => rm(folder, { recursive: true }));

async function write(name: string, sql: string): Promise<void> {
  await mkdir(join(folder, name), { recursive: true });
  await writeFile(join(folder, name, 'migration.sql'), sql);
}

describe.each(databaseKinds())('migrating the %s database', (kind) => {
  let empty: Awaited<ReturnType<typeof openEmptyDatabase>>;
  beforeAll(async () => {
    empty = await openEmptyDatabase(kind);
  });
  afterAll(() => empty.drop());
  beforeEach(async () => {
    await empty.connections.pool.query('drop schema public cascade; create schema public');
  });

  async function migrateFrom(from: string): Promise<string[]> {
    const client = await empty.connections.pool.connect();
    try {
      return await migrate(client, from);
    } finally {
      client.release();
    }
  }
  const query = async (sql: string): Promise<Record<string, unknown>[]> =>
    (await empty.connections.pool.query<Record<string, unknown>>(sql)).rows;

  it("applies the project's own migrations once", async () => {
    const names = (await readdir(migrationsFolder)).filter((name) => /^\d{14}_/.test(name)).sort();
    expect(await migrateFrom(migrationsFolder)).toEqual(names);
    expect(await migrateFrom(migrationsFolder)).toEqual([]);
  });

  it('keeps the books as Prisma does', async () => {
    await cp(migrationsFolder, folder, { recursive: true });
    const [name] = await migrateFrom(folder);
    const { stdout } = await run('sha256sum', [join(folder, name ?? '', 'migration.sql')]);
    const [book] = await query('select *, finished_at >= started_at as "inOrder" from _prisma_migrations');
    expect(book).toEqual({
      id: expect.stringMatching(/^[0-9a-f-]{36}$/),
      checksum: stdout.slice(0, 64),
      migration_name: name,
      started_at: expect.any(Date),
      finished_at: expect.any(Date),
      inOrder: true,
      rolled_back_at: null,
      logs: null,
      applied_steps_count: 1,
    });
  });

  it('applies what was added since, in the order of the names', async () => {
    await write('20260101000000_one', 'create table one (n int)');
    expect(await migrateFrom(folder)).toEqual(['20260101000000_one']);
    await write('20260103000000_three', 'insert into one select * from two; create table three (n int)');
    await write('20260102000000_two', 'create table two (n int); insert into two values (2)');
    expect(await migrateFrom(folder)).toEqual(['20260102000000_two', '20260103000000_three']);
    expect(await query('select n from one')).toEqual([{ n: 2 }]);
  });

  it('leaves nothing of a migration behind that fails, and keeps those before it', async () => {
    await write('20260101000000_one', 'create table one (n int)');
    await write('20260102000000_two', "create table two (n int); insert into two values ('no number')");
    await expect(migrateFrom(folder)).rejects.toThrow(/20260102000000_two failed .* invalid input syntax/);
    expect(await query("select to_regclass('one')::text as one, to_regclass('two')::text as two")).toEqual([
      { one: 'one', two: null },
    ]);
    await write('20260102000000_two', 'create table two (n int)');
    expect(await migrateFrom(folder)).toEqual(['20260102000000_two']);
  });

  it('refuses when an applied migration was changed', async () => {
    await write('20260101000000_one', 'create table one (n int)');
    await migrateFrom(folder);
    await write('20260101000000_one', 'create table one (n int);');
    await write('20260102000000_two', 'create table two (n int)');
    await expect(migrateFrom(folder)).rejects.toThrow(/20260101000000_one was changed after it was applied/);
    expect(await query("select to_regclass('two') as two")).toEqual([{ two: null }]);
  });

  it('refuses when an applied migration is missing', async () => {
    await write('20260101000000_one', 'create table one (n int)');
    await migrateFrom(folder);
    await rm(join(folder, '20260101000000_one'), { recursive: true });
    await expect(migrateFrom(folder)).rejects.toThrow(/20260101000000_one was applied .* missing here/);
  });

  it("refuses when Prisma's own tool left a migration half-way, until it is marked as rolled back", async () => {
    await write('20260101000000_one', 'create table one (n int)');
    await migrateFrom(folder);
    await write('20260102000000_two', 'create table two (n int)');
    await query(`insert into _prisma_migrations (id, checksum, migration_name)
      values ('00000000-0000-4000-8000-000000000000', 'x', '20260102000000_two')`);
    await expect(migrateFrom(folder)).rejects.toBeInstanceOf(MigrationError);
    await query('update _prisma_migrations set rolled_back_at = now() where finished_at is null');
    expect(await migrateFrom(folder)).toEqual(['20260102000000_two']);
  });

  it('lets eight start at once, and one of them do the work', async () => {
    const applied = await Promise.all(Array.from({ length: 8 }, () => migrateFrom(migrationsFolder)));
    const workers = applied.filter((names) => names.length > 0);
    expect(workers).toHaveLength(1);
    expect(await query('select migration_name from _prisma_migrations')).toEqual(
      workers[0]?.map((name) => ({ migration_name: name })),
    );
  });

  it('tries again when it met another database of the cluster in the catalog of roles', async () => {
    await query('create sequence tries');
    const twiceInVain = (message: string) =>
      `do $$ begin if nextval('tries') <= 2 then raise '${message}'; end if; end $$`;
    await write('20260101000000_one', twiceInVain('tuple concurrently updated'));
    expect(await migrateFrom(folder)).toEqual(['20260101000000_one']);
    await query("select setval('tries', 1)");
    await write('20260102000000_two', twiceInVain('something else'));
    await expect(migrateFrom(folder)).rejects.toThrow('something else');
  });

  it('lets go of its lock, also after a failure', async () => {
    await write('20260101000000_one', 'create nonsense');
    await expect(migrateFrom(folder)).rejects.toBeInstanceOf(MigrationError);
    // Of this database alone: other test files migrate theirs on the same server.
    const here = 'select oid from pg_database where datname = current_database()';
    const held = `select from pg_locks where locktype = 'advisory' and database = (${here})`;
    expect(await query(held)).toEqual([]);
  });
});

const servers = databaseKinds().filter((kind) => kind === 'server');
describe.each(servers)('a %s login that is no superuser', (kind) => {
  const login = `halfsplit_test_login_${randomUUID().slice(0, 8)}`;
  let empty: Awaited<ReturnType<typeof openEmptyDatabase>>;
  let databaseUrl: string;
  const asAdministrator = (sql: string) => empty.connections.pool.query(sql);

  beforeEach(async () => {
    empty = await openEmptyDatabase(kind);
    // So that the roles are there, whichever test runs first on this server.
    const client = await empty.connections.pool.connect();
    await migrate(client).finally(() => client.release());
    await asAdministrator('drop schema public cascade');
    await asAdministrator(`create role ${login} login password 'for tests'`);
    await asAdministrator(`create schema public authorization ${login}`);
    const url = new URL(empty.databaseUrl ?? '');
    url.username = login;
    url.password = 'for tests';
    databaseUrl = url.href;
  });
  afterEach(async () => {
    await asAdministrator(`drop owned by ${login}`);
    await asAdministrator(`drop role ${login}`);
    await empty.drop();
  });

  it('needs nothing but the schema and to be a member of the roles, and is walled itself', async () => {
    await asAdministrator(
      `grant halfsplit_request, halfsplit_lookup, halfsplit_provision, halfsplit_backup to ${login}`,
    );
    const database = await openDatabase({ databaseUrl, dataFolder: folder });
    const firm = await makeFirm(database, 'firm');
    const seen = await database.inTenant(firm.tenant, (tx) => tx.ticket.count());
    await database.close();
    const client = new pg.Client(databaseUrl);
    await client.connect();
    const { rows } = await client.query('select count(*)::int as n from ticket');
    await client.end();
    expect([seen, rows]).toEqual([1, [{ n: 0 }]]);
  });

  it('is told what it lacks when it is no member, and leaves nothing behind', async () => {
    await expect(openDatabase({ databaseUrl, dataFolder: folder })).rejects.toThrow(
      /_roles failed and left nothing behind: .*halfsplit_request/,
    );
    const { rows } = await asAdministrator("select to_regclass('public.ticket') as ticket");
    expect(rows).toEqual([{ ticket: null }]);
  });
});
