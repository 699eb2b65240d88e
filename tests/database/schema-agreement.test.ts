import type pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { evidenceKinds } from '../../shared/contract/evidence.ts';
import { memberRoles } from '../../shared/contract/primitives.ts';
import { priorities } from '../../shared/contract/ticket.ts';
import { changeStatus, symptomKinds } from '../../shared/contract/triage.ts';
import { databaseKinds, openTestDatabase, type TestDatabase } from '../support/test-database.ts';
import { describeDatabase, describePrismaSchema, readPrismaSchema } from './schema-description.ts';

describe.each(databaseKinds())('migrations on the %s database', (kind) => {
  let test: TestDatabase;
  beforeAll(async () => {
    test = await openTestDatabase(kind);
  });
  afterAll(() => test.drop());

  /** Runs `work` as the owner in a transaction that leaves nothing behind. */
  async function undone<T>(work: (client: pg.ClientBase) => Promise<T>): Promise<T> {
    const client = await test.owner.connect();
    try {
      await client.query('begin');
      return await work(client);
    } finally {
      await client.query('rollback');
      client.release();
    }
  }

  it('make the tables that prisma/schema.prisma describes', async () => {
    const asked = await describePrismaSchema(await readPrismaSchema());
    expect(Object.keys(asked).length).toBeGreaterThanOrEqual(15);
    expect(await undone(describeDatabase)).toEqual(asked);
  });

  it.each([
    ['a table too many', 'create table stray (org_id uuid primary key)'],
    ['a table missing', 'drop table packet_grant cascade'],
    ['a column too many', 'alter table site add column colour text'],
    ['a column missing', 'alter table site drop column search_text'],
    ['a type', 'alter table site alter column version type bigint'],
    ['a precision', 'alter table site alter column updated_at type timestamptz(6)'],
    ['null allowed', 'alter table site alter column client_name drop not null'],
    ['a default missing', 'alter table site alter column version drop default'],
    ['another default', 'alter table site alter column version set default 2'],
    ['a primary key', 'alter table packet_grant drop constraint packet_grant_pkey'],
    ['a unique index missing', 'drop index ticket_org_id_number_key'],
    ['an index missing', 'drop index ticket_org_id_state_number_idx'],
    ['an index too many', 'create index on ticket (org_id, updated_at)'],
    [
      'the order in an index',
      'drop index evidence_org_id_ticket_id_uploaded_at_idx; create index on evidence (org_id, uploaded_at, ticket_id)',
    ],
    ['a foreign key missing', 'alter table packet drop constraint packet_org_id_created_by_fkey'],
    [
      'what a foreign key does on delete',
      `alter table packet drop constraint packet_org_id_created_by_fkey, add foreign key (org_id, created_by)
        references member (org_id, id) on delete cascade on update cascade`,
    ],
  ])('would be found to differ in %s', async (_what, sql) => {
    const asked = await describePrismaSchema(await readPrismaSchema());
    const found = await undone(async (client) => {
      await client.query(sql);
      return describeDatabase(client);
    });
    expect(found).not.toEqual(asked);
  });

  it('would be found to differ from a schema that was changed alone', async () => {
    const schema = await readPrismaSchema();
    const changed = schema.replace(
      'clientName String   @map("client_name")',
      'clientName String?  @map("client_name")',
    );
    expect(changed).not.toBe(schema);
    expect(await undone(describeDatabase)).not.toEqual(await describePrismaSchema(changed));
  });

  it.each([
    ['member', 'role', memberRoles],
    ['ticket', 'symptom', symptomKinds],
    ['ticket', 'priority', priorities],
    ['change', 'status', changeStatus.options],
    ['evidence', 'kind', evidenceKinds],
  ])('allow in %s.%s what the contract allows', async (table, column, values) => {
    const { rows } = await test.owner.query<{ definition: string }>(
      `select pg_get_constraintdef(oid) as definition from pg_constraint where contype = 'c' and conname = $1`,
      [`${table}_${column}_check`],
    );
    const allowed = [...(rows[0]?.definition ?? '').matchAll(/'([^']+)'::text/g)].map(([, value]) => value);
    expect(allowed.sort()).toEqual([...values].sort());
  });

  it('leave the kinds of change to the contract, so that a new one needs no migration', async () => {
    const { rows } = await test.owner.query<{ definition: string }>(
      `select pg_get_constraintdef(oid) as definition from pg_constraint
        where contype = 'c' and conrelid = 'change'::regclass`,
    );
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.map(({ definition }) => definition).join()).not.toContain('kind');
  });
});
