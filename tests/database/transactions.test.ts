import { randomUUID } from 'node:crypto';
import { setTimeout } from 'node:timers/promises';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ContendedError, Prisma, RolledBackError } from '../../src/database/index.ts';
import { databaseKinds, openTestDatabase, type TestDatabase } from '../support/test-database.ts';
import { type Firm, makeFirm } from './two-firms.ts';

describe.each(databaseKinds())('transactions on the %s database', (kind) => {
  let test: TestDatabase;
  let firm: Firm;
  let orgId: string;

  beforeAll(async () => {
    test = await openTestDatabase(kind);
    if (kind === 'server') {
      // A server in another time zone must make no difference; new connections take it over.
      await test.owner.query(`do $$ begin
        execute format('alter database %I set timezone to ''America/St_Johns''', current_database()); end $$`);
    }
    firm = await makeFirm(test.database, 'firm');
    orgId = firm.tenant.orgId;
  });
  afterAll(() => test.drop());

  const nameNow = async (): Promise<string> => {
    const { rows } = await test.owner.query<{ name: string }>('select name from organisation');
    return rows[0]?.name ?? '';
  };
  const rename = (name: string) => ({ where: { orgId }, data: { name } });

  it('keep what work did when it returns', async () => {
    const result = await test.database.inTenant(firm.tenant, async (tx) => {
      await tx.organisation.update(rename('Kept'));
      return 'result';
    });
    expect(result).toBe('result');
    expect(await nameNow()).toBe('Kept');
  });

  it.each(['40001', '40P01'])(
    'are run again when the database ends them with %s, and not for ever',
    async (code) => {
      const end = `do $$ begin raise exception 'on purpose' using errcode = '${code}'; end $$`;
      let runs = 0;
      const work = (endings: number) =>
        test.database.inTenant(firm.tenant, async (tx) => {
          runs += 1;
          await tx.organisation.update(rename(`Run ${runs}`));
          if (runs <= endings) await tx.$executeRawUnsafe(end);
          return runs;
        });
      expect(await work(2)).toBe(3);
      expect(await nameNow()).toBe('Run 3');
      runs = 0;
      await expect(work(Number.POSITIVE_INFINITY)).rejects.toThrow(ContendedError);
      expect(runs).toBeLessThan(10);
      expect(await nameNow()).toBe('Run 3');
    },
  );

  it.runIf(kind === 'server')('that lock each other out are both done in the end', async () => {
    const locking = (...keys: [number, number]) =>
      test.database.inTenant(firm.tenant, async (tx) => {
        await tx.$queryRaw`select pg_advisory_xact_lock(${keys[0]}::int)::text`;
        await setTimeout(200);
        await tx.$queryRaw`select pg_advisory_xact_lock(${keys[1]}::int)::text`;
        return 'done';
      });
    expect(await Promise.all([locking(1, 2), locking(2, 1)])).toEqual(['done', 'done']);
  });

  it('undo what work did when it throws', async () => {
    const work = test.database.inTenant(firm.tenant, async (tx) => {
      await tx.organisation.update(rename('Undone'));
      throw new RangeError('on purpose');
    });
    await expect(work).rejects.toThrow(RangeError);
    expect(await nameNow()).not.toBe('Undone');
  });

  it('undo what work did when the database refuses a statement, and go on working', async () => {
    const work = test.database.inTenant(firm.tenant, async (tx) => {
      await tx.organisation.update(rename('Undone'));
      await tx.ticket.update({
        where: { orgId_id: { orgId, id: firm.ticketId } },
        data: { assigneeId: randomUUID() },
      });
    });
    await expect(work).rejects.toMatchObject({ code: 'P2003' });
    expect(await nameNow()).not.toBe('Undone');
    expect(await test.database.isReady()).toBe(true);
  });

  it('refuse to acknowledge what a swallowed error has undone', async () => {
    const work = test.database.inTenant(firm.tenant, async (tx) => {
      await tx.organisation.update(rename('Lost'));
      await tx.$executeRaw`select 1/0`.catch(() => undefined);
      return 'acknowledged';
    });
    await expect(work).rejects.toBeInstanceOf(RolledBackError);
    expect(await nameNow()).not.toBe('Lost');
  });

  it('go on after an error that a savepoint has undone', async () => {
    await test.database.inTenant(firm.tenant, async (tx) => {
      await tx.$executeRaw`savepoint risky`;
      await tx.$executeRaw`select 1/0`.catch(() => undefined);
      await tx.$executeRaw`rollback to savepoint risky`;
      await tx.organisation.update(rename('After all'));
    });
    expect(await nameNow()).toBe('After all');
  });

  it('send what is asked side by side one after the other, without a warning of the driver', async () => {
    const warnings: string[] = [];
    const keep = ({ message }: Error) => warnings.push(message);
    process.on('warning', keep);
    const [ticket] = await test.database.inTenant(firm.tenant, (tx) =>
      tx.ticket.findMany({ include: { site: true, chain: true, assignee: true, events: true } }),
    );
    await setTimeout(10);
    process.off('warning', keep);
    expect(ticket?.site.orgId).toBe(orgId);
    expect(warnings).toEqual([]);
  });

  it('leave neither tenant nor role behind on their connection', async () => {
    await test.database.inTenant(firm.tenant, (tx) => tx.organisation.findMany());
    const left = await Promise.all(
      Array.from({ length: 12 }, () =>
        test.owner.query(`select coalesce(current_setting('app.org', true), '') as org,
          coalesce(current_setting('app.member', true), '') as member, current_user = session_user as own`),
      ),
    );
    for (const { rows } of left) expect(rows).toEqual([{ org: '', member: '', own: true }]);
  });

  it('let 50 race on one row, each with pauses, and lose no update', async () => {
    const start = await test.database.inTenant(firm.tenant, (tx) =>
      tx.organisation.findUniqueOrThrow({ where: { orgId } }),
    );
    await Promise.all(
      Array.from({ length: 50 }, () =>
        test.database.inTenant(firm.tenant, async (tx) => {
          await tx.$queryRaw`select from organisation where org_id = ${orgId}::uuid for update`;
          const { nextTicketNumber } = await tx.organisation.findUniqueOrThrow({ where: { orgId } });
          await setTimeout(2);
          await tx.organisation.update({
            where: { orgId },
            data: { nextTicketNumber: nextTicketNumber + 1 },
          });
        }),
      ),
    );
    const end = await test.database.inTenant(firm.tenant, (tx) =>
      tx.organisation.findUniqueOrThrow({ where: { orgId } }),
    );
    expect(end.nextTicketNumber - start.nextTicketNumber).toBe(50);
  });

  it('let one of 50 open a change and tell the others the same on either database', async () => {
    await test.owner.query("update change set status = 'kept'");
    const results = await Promise.allSettled(
      Array.from({ length: 50 }, () =>
        test.database.inTenant(firm.tenant, async (tx) => {
          await setTimeout(1);
          return tx.change.create({
            data: {
              orgId,
              id: randomUUID(),
              ticketId: firm.ticketId,
              chainId: firm.chainId,
              kind: 'reseat',
              status: 'declared',
              openedAt: new Date(),
            },
          });
        }),
      ),
    );
    const refused = results.filter((result) => result.status === 'rejected').map(({ reason }) => reason);
    expect(refused).toHaveLength(49);
    for (const error of refused) {
      expect(error).toBeInstanceOf(Prisma.PrismaClientKnownRequestError);
      expect(error).toMatchObject({
        code: 'P2002',
        meta: {
          driverAdapterError: {
            cause: {
              originalCode: '23505',
              constraint: { index: expect.stringMatching(/^change_one_open_per_/) },
            },
          },
        },
      });
    }
  });

  it('keep tenants apart that run side by side', async () => {
    const firms = await Promise.all(
      ['a1', 'b2', 'c3', 'd4'].map((handle) => makeFirm(test.database, handle)),
    );
    await Promise.all(
      Array.from({ length: 40 }, async (_, index) => {
        const one = firms[index % firms.length] ?? firm;
        const seen = await test.database.inTenant(one.tenant, async (tx) => {
          const before = await tx.ticket.findMany({ select: { id: true } });
          await setTimeout(1);
          return [...before, ...(await tx.ticket.findMany({ select: { id: true } }))];
        });
        expect(seen).toEqual([{ id: one.ticketId }, { id: one.ticketId }]);
      }),
    );
  });

  it('give moments back to the millisecond', async () => {
    const moments = fc.date({
      min: new Date('1990-01-01T00:00:00.000Z'),
      max: new Date('2199-12-31T23:59:59.999Z'),
      noInvalidDate: true,
    });
    await fc.assert(
      fc.asyncProperty(moments, async (visitAt) => {
        const where = { orgId_id: { orgId, id: firm.ticketId } };
        await test.database.inTenant(firm.tenant, (tx) => tx.ticket.update({ where, data: { visitAt } }));
        const read = await test.database.inTenant(firm.tenant, (tx) =>
          tx.ticket.findUniqueOrThrow({ where }),
        );
        expect(read.visitAt?.toISOString()).toBe(visitAt.toISOString());
        const { rows } = await test.owner.query(
          `select to_char(visit_at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') as text from ticket where id = $1`,
          [firm.ticketId],
        );
        expect(rows).toEqual([{ text: visitAt.toISOString() }]);
      }),
      { numRuns: 20 },
    );
  });

  it('give JSON back as it was', async () => {
    const where = { orgId_id: { orgId, id: firm.ticketId } };
    // What the tables hold are objects and lists (Prisma rounds a bare number, and drops the key `__proto__`, which no
    // JSON body brings in: tests/http/habits.test.ts). PostgreSQL stores neither U+0000 nor half a surrogate pair in jsonb,
    // and JSON's -0 is 0.
    const text = fc.string({ unit: 'grapheme' }).filter((value) => !value.includes('\0'));
    const key = text.filter((value) => value !== '__proto__');
    const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0);
    const { document: documents } = fc.letrec<{ document: object; value: unknown }>((tie) => ({
      document: fc.oneof(
        fc.array(tie('value'), { maxLength: 5 }),
        fc.dictionary(key, tie('value'), { maxKeys: 5, noNullPrototype: true }),
      ),
      value: fc.oneof({ maxDepth: 4 }, fc.constantFrom(null, true, false), text, number, tie('document')),
    }));
    await fc.assert(
      fc.asyncProperty(documents, async (value) => {
        const document = JSON.parse(JSON.stringify(value)) as Prisma.InputJsonValue;
        await test.database.inTenant(firm.tenant, (tx) =>
          tx.ticket.update({ where, data: { snapshot: document } }),
        );
        const read = await test.database.inTenant(firm.tenant, (tx) =>
          tx.ticket.findUniqueOrThrow({ where }),
        );
        expect(read.snapshot).toEqual(document);
      }),
      { numRuns: 40 },
    );
  });

  it('give null in JSON, no JSON, and 64 bit integers back as they were', async () => {
    const where = { orgId_sha256: { orgId, sha256: 'f'.repeat(64) } };
    const [file, record] = await test.database.inTenant(firm.tenant, async (tx) => {
      await tx.storedFile.create({
        data: { ...where.orgId_sha256, sizeBytes: 9_007_199_254_740_993n, mediaType: 'video/mp4' },
      });
      await tx.idempotencyRecord.updateMany({ data: { body: Prisma.JsonNull, headers: Prisma.DbNull } });
      return [
        await tx.storedFile.findUniqueOrThrow({ where }),
        await tx.$queryRaw`select body::text, headers::text from idempotency_record`,
      ];
    });
    expect(file.sizeBytes).toBe(9_007_199_254_740_993n);
    expect(record).toEqual([{ body: 'null', headers: null }]);
  });

  it('that still run when the database is closed come to their end', async () => {
    const short = await openTestDatabase(kind);
    const own = await makeFirm(short.database, 'short');
    const slow = short.database.inTenant(own.tenant, async (tx) => {
      await setTimeout(200);
      return tx.ticket.count();
    });
    await setTimeout(50);
    await short.drop();
    expect(await slow).toBe(1);
    expect(await short.database.isReady()).toBe(false);
  });
});
