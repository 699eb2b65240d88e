import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PastCase } from '../../../shared/contract/past-case.ts';
import { commonOf, likenessOf } from '../../../src/features/tickets/likeness.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { accepted, bodyOf, bringToReproduce, openTestTicket } from '../../support/tickets.ts';

const hours = (ago: number) => new Date(Date.now() - ago * 3_600_000);

describe.each(databaseKinds())('past cases, on the %s database', (kind) => {
  let test: TestApp;
  let closed: string;
  beforeAll(async () => {
    test = await openTestApp(kind);
    const { technician } = test.home;
    ({ ticketId: closed } = await openTestTicket(test));
    test.setNow(hours(11));
    await bringToReproduce(technician, closed);
    await accepted(technician, closed, { type: 'startWatch' });
    test.setNow(hours(1));
    await accepted(technician, closed, { type: 'endWatch' });
    const remedy = { kind: 'noFaultFound', what: 'Watched a night through: quiet.' };
    await accepted(technician, closed, { type: 'chooseRemedy', remedy });
    await accepted(technician, closed, { type: 'finishRemedy', asLeftChainVersion: 1 });
    await accepted(technician, closed, { type: 'close', note: '' });
    test.setNow(null);
  });
  afterAll(() => test.close());

  const found = async (query: string): Promise<PastCase[]> =>
    bodyOf<{ items: PastCase[] }>(await test.home.support.get(`/past-cases?${query}`), 200).items;

  it('are closed tickets with what they were, found by any words of them and by symptom', async () => {
    const { ticketId: open } = await openTestTicket(test);
    const [only, ...others] = await found('');
    expect(others).toEqual([]);
    expect(only).toMatchObject({
      id: closed,
      client: 'Family Overwell',
      symptom: 'dropOuts',
      culprit: null,
      remedy: { kind: 'noFaultFound', what: 'Watched a night through: quiet.' },
      common: null,
    });
    const device = homeCinema().devices[0]?.name ?? 'no device';
    for (const words of ['overwell', 'QUIET night', 'L4', device]) {
      const ids = (await found(`q=${encodeURIComponent(words)}`)).map(({ id }) => id);
      expect(ids, words).toEqual([closed]);
    }
    expect(await found('q=overwell+nowhere')).toEqual([]);
    expect(await found('symptom=sparkles')).toEqual([]);
    const [alike] = await found(`like=${open}`);
    expect(alike).toMatchObject({ id: closed, common: { symptom: true, culprit: false } });
    // A case is not like itself.
    expect(await found(`like=${closed}`)).toEqual([]);
  });

  it('are not told of a ticket that is not there', async () => {
    const reply = await test.home.support.get('/past-cases?like=7d9b3a52-5f0e-4e61-9c55-0d8f6c1f3f6a');
    expect(reply.status).toBe(404);
  });
});

describe('what two cases have in common', () => {
  const chain = homeCinema() as Parameters<typeof commonOf>[0]['chain'];
  const models = new Set(chain?.devices.flatMap(({ model }) => model ?? []));
  const link = { kind: 'link', linkId: chain?.links[0]?.id ?? '' } as const;

  it('is symptom, models of devices, and the part that was the culprit', () => {
    const now = { symptom: 'dropOuts', chain, culprit: null };
    const same = commonOf(now, { symptom: 'dropOuts', chain, culprit: link });
    expect(same).toEqual({ symptom: true, models: [...models], culprit: true });
    const other = commonOf(now, { symptom: 'sparkles', chain: null, culprit: null });
    expect(other).toEqual({ symptom: false, models: [], culprit: false });
    expect(likenessOf(other)).toBe(0);
    expect(likenessOf(same)).toBeGreaterThan(likenessOf({ ...same, culprit: false }));
  });

  it('is no cable of a common make alone', () => {
    expect(likenessOf({ symptom: false, models: [], culprit: true })).toBe(0);
  });
});
