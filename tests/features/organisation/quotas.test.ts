import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Usage } from '../../../shared/contract/usage.ts';
import { openTestApp, type TestApp, type TestMember } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { bodyOf, openTestTicket } from '../../support/tickets.ts';
import { postForm } from '../evidence/form-client.ts';
import { metadataHeader, signed } from '../evidence/tus-client.ts';

const quotas = { openUploads: 2, storedBytes: 1_000, eventStreams: 1, requestsPerMin: 80 };

describe.each(databaseKinds())('what an organisation may use, on the %s database', (kind) => {
  let test: TestApp;
  let tickets: { home: string; other: string };
  beforeAll(async () => {
    test = await openTestApp(kind, { quotas });
    const home = (await openTestTicket(test)).ticketId;
    tickets = { home, other: (await openTestTicket(test, test.other)).ticketId };
  });
  afterAll(() => test.close());

  const usageOf = async (admin: TestMember): Promise<Record<string, number>> => {
    const { items } = bodyOf<{ items: Usage[] }>(await admin.get('/organisation/usage'), 200);
    expect(Object.fromEntries(items.map(({ quota, most }) => [quota, most]))).toEqual(quotas);
    return Object.fromEntries(items.map(({ quota, used }) => [quota, used]));
  };
  const begin = (member: TestMember, ticketId: string, bytes: number) =>
    test
      .request()
      .post('/uploads')
      .set({ ...signed(member), 'upload-length': String(bytes) })
      .set({ 'upload-metadata': metadataHeader({ ticketId, about: JSON.stringify({ kind: 'log' }) }) });

  it('of uploads under way is held, and those given up make room; others have their own', async () => {
    const { technician } = test.home;
    const { headers } = await begin(technician, tickets.home, 9).expect(201);
    await begin(technician, tickets.home, 9).expect(201);
    const refused = await begin(technician, tickets.home, 9).expect(403);
    expect(refused.body).toMatchObject({
      type: '/problems/quota-reached',
      said: { code: 'quotaOpenUploads' },
    });
    await begin(test.other.technician, tickets.other, 9).expect(201);
    expect(await usageOf(test.home.admin)).toMatchObject({ openUploads: 2, storedBytes: 0 });
    await test.request().delete(String(headers.location)).set(signed(technician)).expect(204);
    expect(await usageOf(test.home.admin)).toMatchObject({ openUploads: 1 });
  });

  it('of bytes is held, by form and by upload', async () => {
    const { technician } = test.home;
    const log = (bytes: number) =>
      Buffer.from('2026-03-02T19:00:00Z input 1: sync lost\n'.padEnd(bytes, 'x'));
    const post = (bytes: number) =>
      postForm(test, technician, tickets.home, { about: { kind: 'log' }, file: log(bytes) });
    expect((await post(600)).status).toBe(201);
    expect((await post(401)).body).toMatchObject({ said: { code: 'quotaStoredBytes' } });
    await begin(technician, tickets.home, 401).expect(403);
    expect((await usageOf(test.home.admin)).storedBytes).toBe(600);
  });

  it('of streams of events is held, until one is closed', async () => {
    const address = await test.app.listen({ port: 0, host: '127.0.0.1' });
    const { accessToken } = test.home.dispatcher;
    const open = () => fetch(`${address}/events`, { headers: { authorization: `Bearer ${accessToken}` } });
    const first = await open();
    expect(first.status).toBe(200);
    const second = await open();
    expect(second.status).toBe(429);
    expect(await second.json()).toMatchObject({ said: { code: 'quotaEventStreams' } });
    await first.body?.cancel();
    await expect.poll(async () => (await usageOf(test.home.admin)).eventStreams).toBe(0);
  });

  it('of requests is held by organisation, and said when to come again', async () => {
    const asked = await Promise.all(
      Array.from({ length: quotas.requestsPerMin + 1 }, () => test.home.technician.get('/me')),
    );
    const refused = asked.find(({ status }) => status === 429);
    expect(refused?.body).toMatchObject({
      type: '/problems/too-many-requests',
      said: { code: 'quotaRequests' },
    });
    expect(Number(refused?.headers['retry-after'])).toBeGreaterThan(0);
    expect((await usageOf(test.other.admin)).requestsPerMin).toBeLessThan(quotas.requestsPerMin);
  });
});
