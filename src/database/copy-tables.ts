import type pg from 'pg';

/** One table's rows, on their way out of a database or into one. */
export type TableCopy = {
  readonly name: string;
  /** A row a text of JSON, as PostgreSQL writes it: no number becomes one of JavaScript's, which would round it. */
  rows(): AsyncIterable<string>;
};

/** What a copy of all tables was taken of. */
export type TablesAtOneMoment = {
  /** Names of the migrations that were applied. */
  readonly migrations: readonly string[];
  /** Each after those that its rows refer to. */
  readonly tables: readonly TableCopy[];
};

/** Not our data: Prisma's bookkeeping, which migrating makes, and tries to sign in, which are forgotten within the hour. */
const notCopied = ['_prisma_migrations', 'sign_in_try'];

/** Assumed: rows fetched at once; few enough that snapshots of some hundred kB each fit in memory. */
const fetched = 200;
/** Assumed: characters of rows that go into one statement. */
const insertedChars = 4_000_000;

/** Shows `work` every table as it was at one moment, on a connection of its own; nothing that is written meanwhile waits. */
export async function readTables<T>(
  client: pg.ClientBase,
  work: (tables: TablesAtOneMoment) => Promise<T>,
): Promise<T> {
  await client.query('begin isolation level repeatable read read only');
  try {
    const { rows: migrations } = await client.query<{ name: string }>(
      'select migration_name as name from _prisma_migrations where rolled_back_at is null order by migration_name',
    );
    const names = await tablesInOrder(client);
    await client.query(`set local timezone to 'UTC'; set local role halfsplit_backup`);
    return await work({
      migrations: migrations.map(({ name }) => name),
      tables: names.map((name) => ({ name, rows: () => rowsOf(client, name) })),
    });
  } finally {
    await client.query('rollback');
  }
}

async function* rowsOf(client: pg.ClientBase, table: string): AsyncGenerator<string> {
  const name = client.escapeIdentifier(table);
  await client.query(`declare rows no scroll cursor for select row_to_json(t)::text as row from ${name} t`);
  try {
    for (;;) {
      const { rows } = await client.query<{ row: string }>(`fetch ${fetched} from rows`);
      if (rows.length === 0) return;
      for (const { row } of rows) yield row;
    }
  } finally {
    await client.query('close rows');
  }
}

/**
 * Puts copied rows into the empty tables of a database whose migrations are those of the copy, all or none.
 * @throws what the database says of a row that doesn't fit
 */
export async function writeTables(client: pg.ClientBase, tables: readonly TableCopy[]): Promise<void> {
  await client.query('begin');
  try {
    await client.query(`set local timezone to 'UTC'`);
    for (const table of tables) await writeTable(client, table);
    await client.query('commit');
  } catch (error) {
    await client.query('rollback');
    throw error;
  }
}

/** The wall and what tells of changes are for requests: both are lifted for the owner while rows of all tenants come in. */
async function writeTable(client: pg.ClientBase, { name, rows }: TableCopy): Promise<void> {
  const table = client.escapeIdentifier(name);
  await client.query(`alter table ${table} no force row level security, disable trigger user`);
  const columns = await writtenColumns(client, name);
  let batch: string[] = [];
  let chars = 0;
  const insert = async (): Promise<void> => {
    await client.query(
      `insert into ${table} (${columns}) select ${columns} from json_populate_recordset(null::${table}, $1::json)`,
      [`[${batch.join(',')}]`],
    );
    batch = [];
    chars = 0;
  };
  for await (const row of rows()) {
    batch.push(row);
    chars += row.length;
    if (chars > insertedChars) await insert();
  }
  if (batch.length > 0) await insert();
  await client.query(`alter table ${table} force row level security, enable trigger user`);
}

/** The columns of a table that a row brings; the others the database makes of them. */
async function writtenColumns(client: pg.ClientBase, table: string): Promise<string> {
  const { rows } = await client.query<{ name: string }>(
    `select attname as name from pg_attribute
     where attrelid = $1::regclass and attnum > 0 and not attisdropped and attgenerated = '' order by attnum`,
    [client.escapeIdentifier(table)],
  );
  return rows.map(({ name }) => client.escapeIdentifier(name)).join(', ');
}

/** Whether no table of ours has a row, or there is none. */
export async function isEmpty(client: pg.ClientBase): Promise<boolean> {
  const names = await tablesInOrder(client);
  if (names.length === 0) return true;
  await client.query('begin');
  try {
    await client.query('set local role halfsplit_backup');
    for (const name of names) {
      const { rowCount } = await client.query(`select from ${client.escapeIdentifier(name)} limit 1`);
      if (rowCount !== 0) return false;
    }
    return true;
  } finally {
    await client.query('rollback');
  }
}

/** Each table after those that its rows refer to, else by name. */
async function tablesInOrder(client: pg.ClientBase): Promise<string[]> {
  const { rows } = await client.query<{ name: string; above: string[] }>(
    `select c.relname as name, coalesce(
       (select json_agg(p.relname) from pg_constraint k join pg_class p on p.oid = k.confrelid
        where k.conrelid = c.oid and k.contype = 'f' and k.confrelid <> c.oid), '[]') as above
     from pg_class c
     where c.relnamespace = 'public'::regnamespace and c.relkind = 'r' and not c.relname = any($1)
     order by c.relname`,
    [notCopied],
  );
  const ordered = new Set<string>();
  while (ordered.size < rows.length) {
    const next = rows.filter(
      ({ name, above }) => !ordered.has(name) && above.every((one) => ordered.has(one)),
    );
    if (next.length === 0) throw new Error('Tables refer to one another in a circle.');
    for (const { name } of next) ordered.add(name);
  }
  return [...ordered];
}
