import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { databaseKinds, openTestDatabase, type TestDatabase } from '../support/test-database.ts';
import {
  asRole,
  checkViolation,
  codeOf,
  foreignKeyViolation,
  insufficientPrivilege,
  type Sql,
  uniqueViolation,
} from './as-role.ts';
import { ourTables } from './schema-description.ts';
import { type Firm, makeFirm } from './two-firms.ts';

describe.each(databaseKinds())('what each role may do on the %s database', (kind) => {
  let test: TestDatabase;
  let firm: Firm;

  beforeAll(async () => {
    test = await openTestDatabase(kind);
    firm = await makeFirm(test.database, 'firm');
  });
  afterAll(() => test.drop());

  const asRequest = <T>(work: (sql: Sql) => Promise<T>) =>
    asRole(test.owner, 'halfsplit_request', firm.tenant, work);

  describe('a request', () => {
    it.each(['ticket_event', 'chain_version', 'stored_file', 'packet'])(
      'only ever adds to %s',
      async (table) => {
        const { rows } = await test.owner.query<{ attname: string }>(
          `select attname from pg_attribute where attrelid = $1::regclass and attnum > 0`,
          [table],
        );
        expect(rows.length).toBeGreaterThan(3);
        const codes = await asRequest(async (sql) => {
          const updates = [];
          for (const { attname } of rows) {
            updates.push(await codeOf(sql(`update ${table} set ${attname} = ${attname}`)));
          }
          return [
            ...updates,
            await codeOf(sql(`delete from ${table}`)),
            await codeOf(sql(`truncate ${table} cascade`)),
          ];
        });
        expect(new Set(codes)).toEqual(new Set([insufficientPrivilege]));
      },
    );

    it('changes nothing of evidence but that it was withdrawn, and texts that are erased', async () => {
      const { rows } = await test.owner.query<{ attname: string }>(
        `select attname from pg_attribute where attrelid = 'evidence'::regclass and attnum > 0`,
      );
      const changeable = await asRequest(async (sql) => {
        const found = [];
        for (const { attname } of rows) {
          if ((await codeOf(sql(`update evidence set ${attname} = ${attname}`))) === 'succeeded')
            found.push(attname);
        }
        return found;
      });
      expect(changeable).toEqual(['description', 'reading', 'withdrawn']);
    });

    it('sees and touches nothing of who tried to sign in', async () => {
      const codes = await asRequest(async (sql) => [
        await codeOf(sql('select key from sign_in_try')),
        await codeOf(sql(`insert into sign_in_try values ('k', 1, now(), now())`)),
        await codeOf(sql('update sign_in_try set wrong = 0')),
        await codeOf(sql('delete from sign_in_try')),
      ]);
      expect(new Set(codes)).toEqual(new Set([insufficientPrivilege]));
    });

    it('erases a text of a log once, and does nothing else to it', async () => {
      const where = 'where ticket_id = $1';
      const update = (set: string) => (sql: Sql) =>
        sql(`update ticket_text set ${set} ${where}`, [firm.ticketId]);
      expect(await asRequest((sql) => codeOf(update(`text = 'Never said.'`)(sql)))).toBe(
        insufficientPrivilege,
      );
      expect(await asRequest((sql) => codeOf(update(`sequence = 2`)(sql)))).toBe(insufficientPrivilege);
      const counts = await asRequest(async (sql) => {
        const first = await update(`salt = null, text = 'erased'`)(sql);
        const second = await update(`salt = null, text = 'erased otherwise'`)(sql);
        return [first.rowCount, second.rowCount];
      });
      expect(counts).toEqual([1, 0]);
    });

    it('adds to the audit log, changes nothing of it, and takes away what is 90 days old', async () => {
      const [changed, deleted] = await asRequest(async (sql) => {
        const add = (age: string) =>
          sql(
            `insert into audit_entry select (jsonb_populate_record(t, jsonb_build_object('id', gen_random_uuid(),
              'at', now() - $1::interval))).* from audit_entry t limit 1`,
            [age],
          );
        await sql('delete from audit_entry');
        for (const age of ['1 day', '89 days', '91 days']) await add(age);
        return [
          await codeOf(sql(`update audit_entry set kind = 'signedOut'`)),
          (await sql('delete from audit_entry')).rowCount,
        ];
      });
      expect(changed).toBe(insufficientPrivilege);
      expect(deleted).toBe(1);
    });

    it('deletes firmware levels, kept replies, expired refresh tokens and the like, and nothing else', async () => {
      const { rows } = await test.owner.query<{ relname: string }>(
        `select relname from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r'
         and has_table_privilege('halfsplit_request', oid, 'DELETE') order by relname`,
      );
      expect(rows.map(({ relname }) => relname)).toEqual([
        'audit_entry',
        'authenticator_app',
        'firmware_level',
        'idempotency_record',
        'recovery_code',
        'refresh_token',
        'second_step',
      ]);
      const deleted = await asRequest(async (sql) => {
        await sql(
          `insert into refresh_token select (jsonb_populate_record(t, jsonb_build_object('id', gen_random_uuid(),
            'token_hash', 'old', 'expires_at', '2001-01-01'))).* from refresh_token t`,
        );
        return (await sql('delete from refresh_token')).rowCount;
      });
      expect(deleted).toBe(1);
    });

    it('can not give its organisation another handle', async () => {
      const code = await asRequest((sql) => codeOf(sql("update organisation set handle = 'taken'")));
      expect(code).toBe(insufficientPrivilege);
    });

    it('is refused values that mean nothing', async () => {
      const codes = await asRequest(async (sql) => [
        await codeOf(sql("update member set role = 'owner'")),
        await codeOf(
          sql("update member set email = 'One@example.org' where id = $1", [firm.tenant.memberId]),
        ),
        await codeOf(sql('update ticket set sequence = 0')),
        await codeOf(sql("update ticket set priority = 'soon'")),
        await codeOf(sql("update change set status = 'open'")),
      ]);
      expect(new Set(codes)).toEqual(new Set([checkViolation]));
    });

    it('refers to nothing that is not in its organisation', async () => {
      const stranger = await makeFirm(test.database, `stranger-${randomUUID().slice(0, 8)}`);
      const code = await asRequest((sql) =>
        codeOf(sql('update ticket set assignee_id = $1', [stranger.tenant.memberId])),
      );
      expect(code).toBe(foreignKeyViolation);
    });
  });

  describe('one change at a time', () => {
    const addChange = (sql: Sql, status: string) =>
      codeOf(
        sql(
          `insert into change (org_id, id, ticket_id, chain_id, kind, status, opened_at)
           values ($1, $2, $3, $4, 'reseat', $5, now())`,
          [firm.tenant.orgId, randomUUID(), firm.ticketId, firm.chainId, status],
        ),
      );

    it.each(['declared', 'applied', 'judged'])('refuses a second that is %s', async (status) => {
      expect(await asRequest((sql) => addChange(sql, status))).toBe(uniqueViolation);
    });

    it.each(['restored', 'kept', 'withdrawn'])('takes any number that are %s', async (status) => {
      const codes = await asRequest(async (sql) => [
        await addChange(sql, status),
        await addChange(sql, status),
      ]);
      expect(codes).toEqual(['succeeded', 'succeeded']);
    });

    it('takes the next once the first is over, and never a return of the first beside it', async () => {
      const codes = await asRequest(async (sql) => {
        await sql("update change set status = 'kept', closed_at = now()");
        return [
          await addChange(sql, 'declared'),
          await codeOf(sql("update change set status = 'applied' where status = 'kept'")),
        ];
      });
      expect(codes).toEqual(['succeeded', uniqueViolation]);
    });

    /** Copies the open change with another status to another ticket or chain, which is made for it. */
    const addElsewhere = (place: 'ticket' | 'chain', status: string) =>
      asRequest(async (sql) => {
        const otherId = randomUUID();
        const { rows } = await sql(
          `select string_agg(quote_ident(attname), ', ') as columns from pg_attribute
           where attrelid = '${place}'::regclass and attnum > 0 and not attisdropped and attgenerated = ''`,
        );
        await sql(
          `insert into ${place} (${rows[0].columns}) select ${rows[0].columns} from (select
             (jsonb_populate_record(t, jsonb_build_object('id', $1::text, 'number', 2))).* from ${place} t) copied`,
          [otherId],
        );
        const changed = { id: randomUUID(), status, [`${place}_id`]: otherId };
        return codeOf(
          sql('insert into change select (jsonb_populate_record(c, $1)).* from change c', [changed]),
        );
      });

    it.each(['declared', 'applied', 'judged'])(
      'holds apart for ticket and chain when it is %s',
      async (status) => {
        expect(await addElsewhere('ticket', status)).toBe(uniqueViolation);
        expect(await addElsewhere('chain', status)).toBe(uniqueViolation);
      },
    );
  });

  describe('the look-up role', () => {
    const asLookUp = <T>(work: (sql: Sql) => Promise<T>) =>
      asRole(test.owner, 'halfsplit_lookup', null, work);

    it('reads what sign-in and grants need, across organisations, and no other column', async () => {
      const { rows } = await test.owner.query<{ at: string }>(`
        select relname || '.' || attname as at from pg_class c join pg_attribute a on a.attrelid = c.oid
        where relnamespace = 'public'::regnamespace and relkind = 'r' and attnum > 0
          and has_column_privilege('halfsplit_lookup', c.oid, attnum, 'SELECT') order by relname, attnum`);
      expect(rows.map(({ at }) => at)).toEqual([
        'diary.org_id',
        'diary.id',
        'diary.code_hash',
        'member.org_id',
        'member.id',
        'member.email',
        'member.name',
        'member.role',
        'member.active',
        'member.password_hash',
        'organisation.org_id',
        'organisation.handle',
        'organisation.name',
        'sign_in_try.key',
        'sign_in_try.wrong',
        'sign_in_try.free_at',
        'sign_in_try.seen_at',
      ]);
      const found = await test.database.lookUp((tx) =>
        tx.member.findFirst({ where: { id: firm.tenant.memberId }, select: { orgId: true, role: true } }),
      );
      expect(found).toEqual({ orgId: firm.tenant.orgId, role: 'support' });
    });

    it('writes nothing', async () => {
      const codes = await asLookUp(async (sql) => [
        await codeOf(sql("update member set name = 'x'")),
        await codeOf(sql('delete from member')),
        await codeOf(sql('insert into organisation select * from organisation')),
        await codeOf(sql('select from ticket')),
      ]);
      expect(new Set(codes)).toEqual(new Set([insufficientPrivilege]));
    });
  });

  it('lets the provisioning role add organisations and members, and see nothing of their work', async () => {
    const codes = await asRole(test.owner, 'halfsplit_provision', null, async (sql) => {
      const { rows } = await sql('select org_id from organisation');
      expect(rows).toContainEqual({ org_id: firm.tenant.orgId });
      return [
        await codeOf(sql("update member set password_hash = 'x'")),
        await codeOf(sql('delete from organisation')),
        await codeOf(sql('select from ticket')),
        await codeOf(sql('select from evidence')),
      ];
    });
    expect(new Set(codes)).toEqual(new Set([insufficientPrivilege]));
  });

  it('lets the role of backups read every table of ours, and write none', async () => {
    type Access = { name: string; reads: boolean; sees: boolean; writes: boolean };
    const { rows } = await test.owner.query<Access>(`
      select relname as name, has_table_privilege('halfsplit_backup', c.oid, 'SELECT') as reads,
        exists (select from pg_policy p where p.polrelid = c.oid and p.polcmd = 'r'
          and 'halfsplit_backup'::regrole = any(p.polroles)) as sees,
        has_table_privilege('halfsplit_backup', c.oid, 'INSERT') or has_table_privilege('halfsplit_backup', c.oid, 'DELETE')
          or has_any_column_privilege('halfsplit_backup', c.oid, 'UPDATE') as writes
      from pg_class c where ${ourTables}`);
    expect(rows.length).toBeGreaterThan(15);
    expect(rows.filter(({ reads, sees, writes }) => !reads || !sees || writes)).toEqual([]);
  });
});
