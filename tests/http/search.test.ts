import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { homeCinema, withDevice } from '../chain/build-chain.ts';
import { openTestApp, type TestApp } from '../support/test-app.ts';
import { databaseKinds } from '../support/test-database.ts';
import { bodyOf } from '../support/tickets.ts';

const sites = {
  overwell: {
    client: 'Family Overwell',
    address: '14 Mill Lane, Tarnby',
    contact: { name: 'Ansel Overwell', phone: '+44 (0)1632 960-143', email: null },
  },
  gorse: {
    client: 'Gorse Hill Hotel',
    address: '3 Mill Road, Estwick',
    contact: { name: null, phone: '01632 960 877', email: 'desk@gorse.example' },
  },
};

describe.each(databaseKinds())('searching as people speak, on the %s database', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
    const { dispatcher } = test.home;
    for (const site of Object.values(sites)) {
      const { id } = bodyOf<{ id: string }>(await dispatcher.post('/sites', { body: site }), 201);
      if (site !== sites.overwell) continue;
      const chain = withDevice(homeCinema(), 'processor', { serial: 'BL40-2217' });
      const { id: chainId } = bodyOf<{ id: string }>(
        await dispatcher.post(`/sites/${id}/chains`, { body: chain }),
        201,
      );
      const intake = { symptom: { kind: 'dropOuts' } };
      bodyOf(await dispatcher.post('/tickets', { body: { siteId: id, chainId, intake } }), 201);
    }
  });
  afterAll(() => test.close());

  const found = async (path: '/sites' | '/tickets', q: string): Promise<string[]> => {
    const reply = await test.home.dispatcher.get(`${path}?q=${encodeURIComponent(q)}`);
    return bodyOf<{ items: { client: string }[] }>(reply, 200).items.map(({ client }) => client);
  };
  const [overwell, gorse] = [sites.overwell.client, sites.gorse.client];

  it.each([
    ['words in any order', 'lane overwell tarnby', [overwell]],
    ['words of client and person', 'ansel mill', [overwell]],
    ['a word that both have', 'mill', [overwell, gorse]],
    ['words of which one is nowhere', 'overwell windmill', []],
    ['a number with its country code', '+44 1632 960143', [overwell]],
    ['the same, as it is dialled there', '01632 960 143', [overwell]],
    ['the same, without any space', '01632960143', [overwell]],
    ['a number kept without its country code, dialled with it', '+44 1632 960877', [gorse]],
    ['the same, with 00', '0044 1632 960877', [gorse]],
    ['a number and a name', 'gorse 01632-960', [gorse]],
    ['a house number and the end of a telephone number', '14 960 143', [overwell]],
    ['a serial and a name', 'overwell bl40-2217', [overwell]],
    ['a cable and a name', 'overwell l4', [overwell]],
    ['a letter wrong', 'overwall', [overwell]],
    ['letters that UTF-16 writes in two', '𝔤𝔬𝔯𝔰𝔢', []],
    ['a letter left out', 'overwel tarby', [overwell]],
    ['a letter too many', 'gorrse hotel', [gorse]],
    ['two letters turned', 'esttwick hotle', [gorse]],
    ['two slips in one word', 'ovirwall', []],
    ['signs that a pattern would take for anything', 'over%_', []],
  ])('finds sites by %s', async (_, query, expected) => {
    expect(await found('/sites', query)).toEqual(expected);
  });

  it.each([
    ['words in any order', 'tarnby overwell', 1],
    ['a number without its country code', '01632 960143', 1],
    ['a cable and a serial', 'l4 bl40', 1],
    ['a letter wrong', 'tarnbi', 1],
    ['its own number', '1', 1],
    ['words of another site', 'gorse', 0],
  ])('finds tickets by %s', async (_, query, count) => {
    expect(await found('/tickets', query)).toHaveLength(count);
  });

  it('finds nothing of another organisation', async () => {
    const reply = await test.other.dispatcher.get('/sites?q=overwell');
    expect(bodyOf<{ items: unknown[] }>(reply, 200).items).toEqual([]);
  });
});
