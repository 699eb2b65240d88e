import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { forgetOld } from '../src/retention.ts';
import { openTestApp, type TestApp } from './support/test-app.ts';
import { databaseKinds } from './support/test-database.ts';

describe.each(databaseKinds())('what is past its time, on the %s database,', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind, { keepRepliesDays: 30 });
  });
  afterAll(() => test.close());

  const site = { client: 'Family Overwell', address: '1 Mill Lane' };
  const post = (key: string) => test.home.dispatcher.post('/sites', { body: site, key });
  const age = (key: string, days: number) =>
    test.tamper(`update idempotency_record set created_at = now() - $2 * interval '1 day' where key = $1`, [
      key,
      days,
    ]);
  const keptKeys = async (): Promise<string[]> => {
    const tenant = { orgId: test.home.orgId, memberId: null };
    const rows = await test.services.database.inTenant(tenant, (tx) =>
      tx.idempotencyRecord.findMany({ where: { orgId: tenant.orgId }, select: { key: true } }),
    );
    return rows.map(({ key }) => key);
  };

  it('goes, be it more than one transaction takes, and a write under its key is done anew', async () => {
    const first = await post('key-that-gets-old');
    const young = await post('key-that-stays');
    await age('key-that-gets-old', 31);
    await age('key-that-stays', 29);
    await test.tamper(
      `insert into idempotency_record (org_id, member_id, key, request_hash, created_at)
       select $1, $2, 'old-' || n, 'hash', now() - interval '40 days' from generate_series(1, 1100) n`,
      [test.home.orgId, test.home.dispatcher.id],
    );
    await forgetOld(test.services);
    const keys = await keptKeys();
    expect(keys).toContain('key-that-stays');
    expect(keys.filter((key) => key.startsWith('old-') || key === 'key-that-gets-old')).toEqual([]);
    expect((await post('key-that-stays')).body.id).toBe(young.body.id);
    const again = await post('key-that-gets-old');
    expect(again.status).toBe(201);
    expect(again.body.id).not.toBe(first.body.id);
  });

  it('stays in another organisation as long as it is young there, and is not taken from the wrong one', async () => {
    await test.other.dispatcher.post('/sites', { body: site, key: 'key-of-the-other' });
    await forgetOld(test.services);
    await test.other.dispatcher.post('/sites', { body: site, key: 'key-of-the-other' });
    expect((await test.other.dispatcher.get('/sites?limit=200')).body.items).toHaveLength(1);
  });

  it('is a refresh token that has expired, and none that has not', async () => {
    await test.tamper(
      `insert into refresh_token select (jsonb_populate_record(t, jsonb_build_object('id', gen_random_uuid(),
        'token_hash', 'old', 'expires_at', now() - interval '1 minute'))).* from refresh_token t
       where member_id = $1 limit 1`,
      [test.home.technician.id],
    );
    const tokens = () =>
      test.services.database.inTenant({ orgId: test.home.orgId, memberId: null }, (tx) =>
        tx.refreshToken.count({ where: { memberId: test.home.technician.id } }),
      );
    const before = await tokens();
    await forgetOld(test.services);
    expect(await tokens()).toBe(before - 1);
    const renewed = await test
      .request()
      .post('/auth/refresh')
      .send({ refreshToken: test.home.technician.refreshToken });
    expect(renewed.status).toBe(200);
  });
});
