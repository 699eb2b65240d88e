import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { RolledBackError } from '../../src/database/index.ts';
import { databaseKinds, openTestDatabase, type TestDatabase } from '../support/test-database.ts';

describe.each(databaseKinds())('transactions on the %s database', (kind) => {
  let test: TestDatabase;
  const orgId = randomUUID();
  const tenant = { orgId, memberId: null };

  beforeAll(async () => {
    test = await openTestDatabase(kind);
    await test.database.provision((tx) =>
      tx.organisation.create({
        data: { orgId, handle: 'one', name: 'One', settings: {} },
        select: { orgId: true },
      }),
    );
  });
  afterAll(() => test.drop());

  it('refuses to commit what a swallowed error has undone', async () => {
    const work = test.database.inTenant(tenant, async (tx) => {
      await tx.organisation.update({ where: { orgId }, data: { name: 'Lost' } });
      await tx.$executeRaw`select 1/0`.catch(() => undefined);
      return 'acknowledged';
    });
    await expect(work).rejects.toBeInstanceOf(RolledBackError);
  });
});
