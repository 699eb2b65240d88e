import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlanReply } from '../../shared/contract/plan.ts';
import { openHeavyWork, TooMuchMemoryError } from '../../src/heavy-work/index.ts';
import { heavyTask } from '../../src/heavy-work/task.ts';
import { workerThreads } from '../../src/heavy-work/worker-pool.ts';
import { postForm } from '../features/evidence/form-client.ts';
import { largestChain } from '../support/largest-chain.ts';
import { openTestApp, type TestApp } from '../support/test-app.ts';
import { databaseKinds } from '../support/test-database.ts';
import { accepted, bodyOf } from '../support/tickets.ts';

describe.each(databaseKinds())('with worker threads, on the %s database', (kind) => {
  let test: TestApp;
  let ticketId: string;
  let chainId: string;
  beforeAll(async () => {
    test = await openTestApp(kind, { heavyWork: openHeavyWork() });
    const { dispatcher, technician } = test.home;
    const site = {
      client: 'Family Overwell',
      address: '1 Mill Lane',
      contact: { phone: '+44 1632 960 143' },
    };
    const { id: siteId } = bodyOf<{ id: string }>(await dispatcher.post('/sites', { body: site }), 201);
    const chain = await dispatcher.post(`/sites/${siteId}/chains`, { body: largestChain(30) });
    chainId = bodyOf<{ id: string }>(chain, 201).id;
    const intake = { symptom: { kind: 'noPicture', perHour: 6 } };
    const body = { siteId, chainId, assigneeId: technician.id, intake };
    ticketId = bodyOf<{ id: string }>(await dispatcher.post('/tickets', { body }), 201).id;
  });
  afterAll(() => test.close());

  const planOf = async (query = ''): Promise<PlanReply> =>
    bodyOf(await test.home.technician.get(`/tickets/${ticketId}/plan${query}`), 200);

  it('plans a large chain, and answers others meanwhile', async () => {
    await planOf();
    let isPlanning = true;
    const planning = planOf('?people=2').finally(() => {
      isPlanning = false;
    });
    await setTimeout(1);
    await test.other.technician.get('/me');
    expect(isPlanning).toBe(true);
    expect((await planning).suspects.length).toBeGreaterThan(100);
  });

  it('keeps a plan while nothing changes, and makes another as soon as something does', async () => {
    test.setNow(new Date('2026-03-02T10:00:10Z'));
    const first = await planOf();
    const begun = performance.now();
    const second = await planOf();
    const keptMs = performance.now() - begun;
    expect(second).toEqual(first);
    test.setNow(null);
    await accepted(test.home.technician, ticketId, { type: 'reviewAudit', chainVersion: 1 });
    const changed = performance.now();
    const third = await planOf();
    expect(third.offers).not.toEqual(first.offers);
    expect(performance.now() - changed).toBeGreaterThan(keptMs);
    const phone = await test.home.dispatcher.get(`/tickets/${ticketId}/phone-plan`);
    expect(phone.status).toBe(200);
    expect(
      bodyOf<{ readings: unknown[] }>(await test.home.support.get(`/chains/${chainId}/edids`), 200),
    ).toEqual({ readings: [], comparisons: [] });
  });

  it('reads a log', async () => {
    const file = Buffer.from('2026-03-02T19:00:00Z input 1: sync lost\n');
    const reply = await postForm(test, test.home.technician, ticketId, { about: { kind: 'log' }, file });
    expect(bodyOf(reply, 201)).toMatchObject({ facts: { log: { events: [{ kind: 'syncLost' }] } } });
  });
});

describe('a worker thread', () => {
  const asked = { orgId: 'a', memberId: 'a' };
  const order = (run: () => unknown) => ({ name: 'trial', input: JSON.stringify(String(run)) });
  const trials = () =>
    workerThreads(1, { file: new URL('./trial-worker.ts', import.meta.url), memoryMiB: 64 });

  it('that takes too much memory is ended, and the next work gets another', async () => {
    const executor = trials();
    const { signal } = new AbortController();
    const hoard = order(() => {
      const kept: number[][] = [];
      for (;;) kept.push(Array.from({ length: 100_000 }, (_, at) => at));
    });
    await expect(executor.execute(hoard, signal)).rejects.toBeInstanceOf(TooMuchMemoryError);
    expect(
      await executor.execute(
        order(() => 1),
        signal,
      ),
    ).toBe('1');
    await executor.close();
  });

  it('is stopped when whoever asked hangs up, also where it computes without end', async () => {
    const work = openHeavyWork(trials);
    const endless = heavyTask('trial', 'plans', (_run: string): number => 0);
    const hangUp = new AbortController();
    const stopped = work.compute(
      endless,
      String(() => {
        for (;;);
      }),
      { ...asked, signal: hangUp.signal },
    );
    setTimeout(300).then(() => hangUp.abort());
    await expect(stopped).rejects.toMatchObject({ name: 'HungUpError' });
    expect(
      await work.compute(
        endless,
        String(() => 2),
        asked,
      ),
    ).toBe(2);
    await work.close();
  });
});
