import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { databaseKinds, openTestDatabase, type TestDatabase } from '../support/test-database.ts';
import { asRole, codeOf, insufficientPrivilege, type Sql, uniqueViolation } from './as-role.ts';
import { ourTables } from './schema-description.ts';
import { type Firm, grantPacket, makeFirm } from './two-firms.ts';

/** Holds what happens before it is known whose it is; tests/database/least-privilege.test.ts keeps requests out of it. */
const ofNobody = 'sign_in_try';

type Table = {
  name: string;
  /** Columns that a request may change. */
  changeable: string[];
  /** All but those that the database makes of others. */
  written: string[];
  mayInsert: boolean;
  mayDelete: boolean;
};

describe.each(databaseKinds())('the wall between tenants on the %s database', (kind) => {
  let test: TestDatabase;
  let home: Firm;
  let other: Firm;
  let tables: Table[];

  beforeAll(async () => {
    test = await openTestDatabase(kind);
    home = await makeFirm(test.database, 'home');
    other = await makeFirm(test.database, 'other');
    const third = await makeFirm(test.database, 'third');
    await grantPacket(test.database, home, third);
    await grantPacket(test.database, other, third);
    const { rows } = await test.owner.query<Table>(`
      select c.relname as name,
        has_table_privilege('halfsplit_request', c.oid, 'INSERT') as "mayInsert",
        has_table_privilege('halfsplit_request', c.oid, 'DELETE') as "mayDelete",
        coalesce((select json_agg(quote_ident(a.attname)) from pg_attribute a
          where a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped and a.attgenerated = ''
            and has_column_privilege('halfsplit_request', c.oid, a.attnum, 'UPDATE')), '[]') as changeable,
        (select json_agg(quote_ident(a.attname)) from pg_attribute a
          where a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped and a.attgenerated = '') as written
      from pg_class c where ${ourTables} and c.relname <> '${ofNobody}'`);
    tables = rows;
  });
  afterAll(() => test.drop());

  const asHome = <T>(work: (sql: Sql) => Promise<T>) =>
    asRole(test.owner, 'halfsplit_request', home.tenant, work);
  const asNobody = <T>(work: (sql: Sql) => Promise<T>) => asRole(test.owner, 'halfsplit_request', null, work);

  /** Tries something on every table; the table is named where it comes out otherwise. */
  async function onEveryTable<T>(
    as: (work: (sql: Sql) => Promise<T>) => Promise<T>,
    attempt: (sql: Sql, table: Table) => Promise<T>,
    expected: (table: Table) => T,
  ): Promise<void> {
    expect(tables.length).toBeGreaterThanOrEqual(15);
    for (const table of tables) {
      const found = await as((sql) => attempt(sql, table));
      expect({ table: table.name, found }).toEqual({ table: table.name, found: expected(table) });
    }
  }

  const countOf = async (sql: Sql, table: Table, where: string, values: unknown[]): Promise<number> => {
    const { rows } = await sql(`select count(*)::int as n from ${table.name} where ${where}`, values);
    return rows[0]?.n;
  };
  const rowCountOf = async (sql: Sql, text: string, values: unknown[]): Promise<number | string> => {
    let count: number | null = null;
    const code = await codeOf(
      sql(text, values).then((result) => {
        count = result.rowCount;
      }),
    );
    return count ?? code;
  };
  /** A text can't be touched but by erasing it. */
  const to = (table: string, column: string): string =>
    table === 'ticket_text' && column === 'salt' ? 'null' : column;
  const touch = ({ name, changeable }: Table): string =>
    `update ${name} set ${changeable.map((column) => `${column} = ${to(name, column)}`).join(', ')} where org_id = $1`;
  const copy = ({ name, written }: Table): string =>
    `insert into ${name} (${written.join()}) select ${written.map((column) => `(row).${column}`).join()} from
      (select jsonb_populate_record(t, jsonb_build_object('org_id', $1::text)) as row from ${name} t limit 1) of_another`;

  it('shows a request rows of its own organisation in every table', () =>
    onEveryTable(
      asHome,
      async (sql, table) => (await countOf(sql, table, 'org_id = $1', [home.tenant.orgId])) > 0,
      () => true,
    ));

  it("shows a request no row of another's in any table", () =>
    onEveryTable(
      asHome,
      (sql, table) => countOf(sql, table, 'org_id <> $1', [home.tenant.orgId]),
      () => 0,
    ));

  it("lets a request change its own rows and none of another's", async () => {
    const owned = ({ changeable }: Table) => changeable.length > 0;
    const changeable = tables.filter(owned);
    expect(changeable.length).toBeGreaterThan(5);
    for (const table of changeable) {
      const own = await asHome((sql) => rowCountOf(sql, touch(table), [home.tenant.orgId]));
      const others = await asHome((sql) => rowCountOf(sql, touch(table), [other.tenant.orgId]));
      expect([table.name, own, others]).toEqual([table.name, expect.any(Number), 0]);
      expect(own, table.name).toBeGreaterThan(0);
    }
  });

  it('lets no request move a row to another organisation', () =>
    onEveryTable(
      asHome,
      (sql, table) => codeOf(sql(`update ${table.name} set org_id = $1`, [other.tenant.orgId])),
      () => insufficientPrivilege,
    ));

  it("lets no request add a row to another's organisation", () =>
    onEveryTable(
      asHome,
      (sql, table) => codeOf(sql(copy(table), [other.tenant.orgId])),
      () => insufficientPrivilege,
    ));

  it('refuses the same row in its own organisation for being there already, not for the wall', () =>
    onEveryTable(
      asHome,
      (sql, table) => codeOf(sql(copy(table), [home.tenant.orgId])),
      ({ mayInsert }) => (mayInsert ? uniqueViolation : insufficientPrivilege),
    ));

  it("lets no request delete another's rows", () =>
    onEveryTable(
      asHome,
      (sql, table) => rowCountOf(sql, `delete from ${table.name} where org_id = $1`, [other.tenant.orgId]),
      ({ mayDelete }) => (mayDelete ? 0 : insufficientPrivilege),
    ));

  it('shows nothing without a tenant', () =>
    onEveryTable(
      asNobody,
      (sql, table) => countOf(sql, table, 'true', []),
      () => 0,
    ));

  it('takes nothing without a tenant', async () => {
    for (const table of tables.filter(({ mayInsert }) => mayInsert)) {
      const row = await test.owner.query(`select to_jsonb(t) as row from ${table.name} t limit 1`);
      const columns = table.written.join();
      const insert = `insert into ${table.name} (${columns}) select ${columns} from jsonb_populate_record(null::${table.name}, $1)`;
      expect([table.name, await asNobody((sql) => codeOf(sql(insert, [row.rows[0]?.row])))]).toEqual([
        table.name,
        insufficientPrivilege,
      ]);
    }
  });

  it('shows nothing to a tenant that is nobody', async () => {
    const stranger = { orgId: randomUUID(), memberId: randomUUID() };
    for (const table of tables) {
      const n = await asRole(test.owner, 'halfsplit_request', stranger, (sql) =>
        countOf(sql, table, 'true', []),
      );
      expect([table.name, n]).toEqual([table.name, 0]);
    }
  });

  it('is on, and holds for the owner of the tables too', async () => {
    const { rows } = await test.owner.query(
      `select c.relname from pg_class c where ${ourTables} and not (c.relrowsecurity and c.relforcerowsecurity)`,
    );
    expect(rows).toEqual([]);
  });

  it('has no way round it: roles without bypass, rights of others, or tables of their own', async () => {
    const { rows } = await test.owner.query(`
      select rolname, rolsuper or rolbypassrls or rolcanlogin or rolcreaterole or rolcreatedb as mighty,
        exists (select from pg_auth_members m where m.member = r.oid) as "isMember",
        exists (select from pg_class c where c.relowner = r.oid) as "ownsTables",
        has_schema_privilege(r.oid, 'public', 'CREATE') as "mayCreate",
        has_table_privilege(r.oid, '_prisma_migrations', 'SELECT') as "readsBookkeeping"
      from pg_roles r where rolname like 'halfsplit\\_%' and rolname not like '%\\_test\\_%' order by rolname`);
    const nothing = {
      mighty: false,
      isMember: false,
      ownsTables: false,
      mayCreate: false,
      readsBookkeeping: false,
    };
    expect(rows).toEqual(
      ['backup', 'lookup', 'provision', 'request', 'search'].map((name) => ({
        rolname: `halfsplit_${name}`,
        ...nothing,
      })),
    );
    const { rows: others } = await test.owner.query(`
      select relname::text as name from pg_class where relnamespace = 'public'::regnamespace and relkind in ('v', 'm', 'f')
      union all select proname from pg_proc where pronamespace = 'public'::regnamespace and prosecdef
        and pg_get_userbyid(proowner) <> 'halfsplit_search'`);
    expect(others).toEqual([]);
  });

  it('holds for what searches as a role of its own: it finds the own tenant only, and nobody is a member of it', async () => {
    const { rows: searching } = await test.owner.query(`
      select proname::text as name from pg_proc where prosecdef and pg_get_userbyid(proowner) = 'halfsplit_search' order by 1`);
    expect(searching.map(({ name }) => name)).toEqual(['found_chains', 'found_past', 'found_sites']);
    const { rows: members } = await test.owner.query(`
      select from pg_auth_members where roleid = 'halfsplit_search'::regrole
        and member not in (select oid from pg_roles where rolsuper)`);
    expect(members).toEqual([]);
    for (const table of ['site', 'chain']) {
      const found = await asHome((sql) => sql(`select found_${table}s(array['%'], 100) as id order by id`));
      const own = await asHome((sql) => sql(`select id from ${table} order by id`));
      expect(found.rows).toEqual(own.rows);
      const all = await test.owner.query(`select count(*)::int as count from ${table}`);
      expect(all.rows[0].count).toBeGreaterThan(own.rows.length);
    }
    const past = await asHome((sql) => sql(`select found_past(array['%'], 100) as id order by id`));
    const closed = await asHome((sql) => sql(`select id from ticket where state = 'closed' order by id`));
    expect(past.rows).toEqual(closed.rows);
    const { rows: strangers } = await test.owner.query(`
      select has_function_privilege('halfsplit_lookup', 'found_sites(text[], integer)', 'execute') as may`);
    expect(strangers).toEqual([{ may: false }]);
  });

  it.each([
    'alter table ticket disable row level security',
    'drop policy own_rows on ticket',
    'create policy all_rows on ticket using (true)',
    'create table stolen as select 1 as one',
    'truncate ticket_event',
  ])('can not be taken down by a request: %s', async (statement) => {
    expect(await asHome((sql) => codeOf(sql(statement)))).toBe(insufficientPrivilege);
  });

  it('does not open where a request switches row security off', async () => {
    const code = await asHome(async (sql) => {
      await sql('set local row_security = off');
      return codeOf(sql('select from ticket'));
    });
    expect(code).toBe(insufficientPrivilege);
  });

  it('has org_id in every table, as the first column of its primary key', async () => {
    const { rows } = await test.owner.query(`
      select c.relname from pg_class c where ${ourTables} and c.relname <> '${ofNobody}' and not exists (
        select from pg_index i join pg_attribute a on a.attrelid = c.oid and a.attnum = i.indkey[0]
        where i.indrelid = c.oid and i.indisprimary and a.attname = 'org_id' and a.attnotnull)`);
    expect(rows).toEqual([]);
  });

  it('runs through every foreign key', async () => {
    const { rows } = await test.owner.query<{ key: string }>(`
      select conname as key from pg_constraint k where contype = 'f' and connamespace = 'public'::regnamespace
        and not exists (
          select from unnest(k.conkey, k.confkey) n (own, referred)
          join pg_attribute a on a.attrelid = k.conrelid and a.attnum = n.own
          join pg_attribute b on b.attrelid = k.confrelid and b.attnum = n.referred
          where a.attname = 'org_id' and b.attname = 'org_id')`);
    expect(rows).toEqual([{ key: 'packet_grant_grantee_org_id_grantee_member_id_fkey' }]);
  });
});
