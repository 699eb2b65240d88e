import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PastCase } from '../../../shared/contract/past-case.ts';
import { commonOf, likenessOf } from '../../../src/features/tickets/likeness.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import {
  accepted,
  bodyOf,
  bringToReproduce,
  bringToSubstitute,
  openTestTicket,
  temporaryCable,
} from '../../support/tickets.ts';

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

  it('are found by the culprit that was named, also where a letter of it is wrong, all of them page by page', async () => {
    const { technician } = test.home;
    const named: string[] = [];
    for (const explanation of ['Kinked behind the rack', 'Kinked in the conduit', 'Kinked at the coupler']) {
      const { ticketId } = await openTestTicket(test);
      test.setNow(null);
      await bringToSubstitute(technician, ticketId);
      const at = (type: string, minutes: number, more: object = {}) =>
        accepted(technician, ticketId, {
          type,
          happenedAt: new Date(Date.now() - minutes * 60_000).toISOString(),
          ...more,
        });
      const { type, ...change } = temporaryCable;
      await at(type, 470, change);
      await at('applyChange', 465);
      await at('startWatch', 460);
      await at('endWatch', 5);
      const { triage } = await accepted(technician, ticketId, { type: 'judgeRetest' });
      await accepted(technician, ticketId, { type: 'restoreChange' });
      await accepted(technician, ticketId, {
        type: 'nameCulprit',
        changeId: triage.changes[0]?.id,
        place: temporaryCable.target,
        explanation,
        confirmation: { kind: 'notDone', reason: 'The client had to leave' },
      });
      const remedy = { kind: 'permanent', what: 'An optical cable in its place' };
      await accepted(technician, ticketId, { type: 'chooseRemedy', remedy });
      await accepted(technician, ticketId, { type: 'finishRemedy', asLeftChainVersion: 1 });
      await accepted(technician, ticketId, {
        type: 'close',
        note: '',
        override: { reason: 'Nobody can watch tonight' },
      });
      named.push(ticketId);
    }
    const idsOf = async (query: string) => (await found(query)).map(({ id }) => id);
    expect((await idsOf('q=kinked')).sort()).toEqual(named.toSorted());
    expect(await idsOf('q=coupler+kinked+optical')).toEqual([named[2]]);
    // A letter wrong, left out, turned round.
    for (const slip of ['cuopler', 'couplr', 'coupker'])
      expect(await idsOf(`q=${slip}`), slip).toEqual([named[2]]);
    expect(await idsOf('q=copuelr')).toEqual([]);
    const paged: string[] = [];
    let cursor = '';
    for (let pages = 0; pages < 9; pages += 1) {
      const query = `limit=1&q=kinkd${cursor === '' ? '' : `&cursor=${cursor}`}`;
      const page = bodyOf<{ items: PastCase[]; next: string | null }>(
        await test.home.support.get(`/past-cases?${query}`),
        200,
      );
      paged.push(...page.items.map(({ id }) => id));
      if (page.next === null) break;
      cursor = page.next;
    }
    expect(paged).toEqual(await idsOf('q=kinked'));
    expect(paged).toHaveLength(3);
    const [one] = await found('q=coupler');
    expect(one).toMatchObject({ explanation: 'Kinked at the coupler', remedy: { kind: 'permanent' } });
    expect(one?.culprit?.code).toBe('suspect');
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
