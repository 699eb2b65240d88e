import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Finding } from '../../../shared/contract/chain.ts';
import type { Message } from '../../../shared/contract/message.ts';
import type { BudgetReply } from '../../../shared/contract/signal.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import {
  cable,
  chainOf,
  display,
  homeCinema,
  source,
  withDevice,
  withLink,
} from '../../chain/build-chain.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { bodyOf } from '../../support/tickets.ts';

describe.each(databaseKinds())('chains, on the %s database', (kind) => {
  let test: TestApp;
  let siteId: string;
  beforeAll(async () => {
    test = await openTestApp(kind);
    const site = {
      client: 'Family Overwell',
      address: '1 Mill Lane',
      contact: { phone: '+44 1632 960-143' },
    };
    siteId = bodyOf<{ id: string }>(await test.home.dispatcher.post('/sites', { body: site }), 201).id;
  });
  afterAll(() => test.close());

  const addChain = async (
    body: object = homeCinema(),
  ): Promise<{ document: ChainDocument; etag: string }> => {
    const reply = await test.home.dispatcher.post(`/sites/${siteId}/chains`, { body });
    return { document: bodyOf<ChainDocument>(reply, 201), etag: reply.headers.etag ?? '' };
  };

  it('are kept in every version, with what changed', async () => {
    const { document, etag } = await addChain();
    const changed = withLink(withDevice(homeCinema(), 'processor', { firmware: '3.10' }), 'L4', {
      lengthM: 20,
    });
    const replaced = await test.home.technician.put(`/chains/${document.id}`, {
      body: changed,
      ifMatch: etag,
    });
    const second = bodyOf<ChainDocument>(replaced, 200);
    expect(second.version).toBe(2);
    expect(second.changes).toMatchObject([
      { code: 'firmwareChanged', values: { after: '3.10' } },
      { code: 'lengthChanged', values: { after: 20 } },
    ]);
    const { body: first } = await test.home.support.get(`/chains/${document.id}/versions/1`);
    expect(first.chain).toEqual(document.chain);
    const { body: versions } = await test.home.support.get(`/chains/${document.id}/versions`);
    expect(versions.items.map((one: { version: number }) => one.version)).toEqual([2, 1]);
    expect(versions.items[0].changedByName).toBe('technician of home-firm');
    const { body: back } = await test.home.support.get(`/chains/${document.id}/versions/1/changes-since/2`);
    expect(back.changes).toHaveLength(second.changes.length);
    expect((await test.home.support.get(`/chains/${document.id}/versions/3`)).status).toBe(404);
  });

  it('that come back unchanged make no new version', async () => {
    const { document, etag } = await addChain();
    const again = await test.home.technician.put(`/chains/${document.id}`, {
      body: homeCinema(),
      ifMatch: etag,
    });
    expect(again.body.version).toBe(1);
  });

  it('are refused with every fault and its place, and then nothing is stored', async () => {
    const { document, etag } = await addChain();
    const faulty = chainOf(
      [source('player'), display('projector'), display('lost')],
      [cable('player.out1', 'projector.in1', { id: 'L1', lengthM: -2 })],
    );
    const refused = await test.home.technician.put(`/chains/${document.id}`, { body: faulty, ifMatch: etag });
    expect(refused.status).toBe(422);
    expect(refused.body.type).toBe('/problems/chain-refused');
    const faults = refused.body.errors.map((error: { code: string; pointer: string }) => [
      error.code,
      error.pointer,
    ]);
    expect(faults).toEqual(
      expect.arrayContaining([
        ['lengthNotPositive', '/links/0/lengthM'],
        ['deviceUnconnected', '/devices/2'],
      ]),
    );
    expect((await test.home.support.get(`/chains/${document.id}`)).body.version).toBe(1);
  });

  it('are audited by the limits and firmware levels of their organisation', async () => {
    const chain = withDevice(homeCinema(), 'processor', { model: 'Nimbrel NP-7', firmware: '3.9' });
    const { document } = await addChain(chain);
    const rules = async () => {
      const { body } = await test.home.technician.get(`/chains/${document.id}/audit`);
      return body.findings.map((finding: { rule: string }) => finding.rule);
    };
    expect(await rules()).not.toContain('firmware-level');
    await test.home.admin.post('/firmware-levels', { body: { model: 'Nimbrel NP-7', minimum: '3.10' } });
    expect(await rules()).toContain('firmware-level');
  });

  it('are audited for a symptom, and for the display that shows it', async () => {
    const managed = withDevice(homeCinema(), 'receiver', {
      edidHandling: { kind: 'replaces', edidHex: null },
    });
    const { document } = await addChain(managed);
    const found = async (query: string): Promise<Finding[]> =>
      (await test.home.technician.get(`/chains/${document.id}/audit?${query}`)).body.findings;
    const edid = async (query: string) =>
      (await found(query)).find(({ rule }) => rule === 'edid-management')?.severity;
    expect(await edid('')).toBe('shouldFix');
    expect(await edid('symptom=noHdr')).toBe('mustFix');
    const parallel = async (query: string) =>
      (await found(query)).find(({ rule }) => rule === 'parallel-display')?.text.code;
    expect(await parallel('displayId=projector')).toBeUndefined();
    expect(await parallel('duringTriage=true')).toBe('feedsInParallel');
    expect(await parallel('duringTriage=true&displayId=projector')).toBe('feedsOtherDisplays');
    const path = `/chains/${document.id}/audit`;
    expect((await test.home.technician.get(`${path}?displayId=receiver`)).status).toBe(404);
    expect((await test.home.technician.get(`${path}?symptom=ghosts`)).status).toBe(400);
  });

  it('have a budget, with and without a device, for the formats asked', async () => {
    const { document } = await addChain(withLink(homeCinema(), 'L3', { category: 'highSpeed' }));
    const path = `/chains/${document.id}/budget?format=3840x2160p60/rgb/8,1920x1080p60/rgb/8&without=processor`;
    const { budget, comparison } = bodyOf<{
      budget: { wanted: { verdict: string; sentence: Message; linkId: string }[] };
      comparison: { effect: string }[];
    }>(await test.home.technician.get(path), 200);
    expect(budget.wanted.map((one) => one.verdict)).toEqual(['short', 'fits']);
    expect(budget.wanted[0]?.linkId).toBe('L3');
    const need = { code: 'linkNeeds', values: { need: expect.closeTo(17.82, 2) } };
    expect(budget.wanted[0]?.sentence.values).toMatchObject({ onLink: { values: { need } } });
    expect(comparison).toHaveLength(2);
    expect((await test.home.technician.get(`/chains/${document.id}/budget?format=vga`)).status).toBe(400);
    expect((await test.home.technician.get(`/chains/${document.id}/budget?without=nobody`)).status).toBe(404);
  });

  it('have a budget that says where HDR gets lost', async () => {
    const { document } = await addChain(
      withDevice(homeCinema(), 'receiver', { passes: { dynamicRanges: [] } }),
    );
    const path = `/chains/${document.id}/budget?format=1920x1080p60/rgb/10/hdr10/bt2020,1920x1080p60/rgb/10`;
    const { budget } = bodyOf<BudgetReply>(await test.home.technician.get(path), 200);
    expect(budget.wanted.map(({ verdict }) => verdict)).toEqual(['reduced', 'fits']);
    expect(budget.wanted[0]?.losses).toMatchObject([
      { deviceId: 'receiver', why: 'device', what: [{ code: 'lossOfHdr' }] },
    ]);
    const unheard = await test.home.technician.get(
      `/chains/${document.id}/budget?format=1920x1080p60/rgb/10/hdr11`,
    );
    expect(unheard.status).toBe(400);
  });

  it('have a budget for the smallest and the largest picture that can be asked for', async () => {
    const { document } = await addChain();
    const path = `/chains/${document.id}/budget?format=1x1p1/rgb/8,1x1i1/ycbcr420/8,16384x16384p999/rgb/16`;
    const { body, status } = await test.home.technician.get(path);
    expect(status).toBe(200);
    for (const { figures } of body.budget.links[0].wanted) expect(figures.needGbps).toBeGreaterThan(0);
  });

  it('are budgeted by what their organisation takes for granted', async () => {
    const { document } = await addChain(
      withLink(homeCinema(), 'L4', { category: 'premiumHighSpeed', certified: false }),
    );
    const path = `/chains/${document.id}/budget?format=3840x2160p120/ycbcr444/10`;
    const cable = async () => (await test.home.technician.get(path)).body.budget.links[3].elements[0];
    const before = await cable();
    expect(before.sure.tmdsMHz).toBeCloseTo(before.rated.tmdsMHz * 0.8);
    const { body, headers } = await test.home.admin.get('/organisation');
    const settings = { ...body.settings, budget: { ...body.settings.budget, uncertified: 1 } };
    const ifMatch = headers.etag ?? '';
    await test.home.admin.put('/organisation', { body: { name: body.name, settings }, ifMatch });
    const after = await cable();
    expect(after.sure).toEqual(after.rated);
  });

  it('name the cables to suspect when a display seems to lack a version', async () => {
    const { document } = await addChain();
    const { body } = await test.home.technician.get(`/chains/${document.id}/budget`);
    const [projector] = body.contentProtection.ifADisplaySeemsTooOld;
    expect(projector.displayId).toBe('projector');
    expect(projector.cables[0].linkId).toBe('L4');
  });

  it('lead a search to their site by a serial, in any case', async () => {
    await addChain(withDevice(homeCinema(), 'projector', { serial: 'BL40-77XY' }));
    for (const query of ['40-77xy', 'OVERWELL', 'mill la', '1632960143', '(01632) 960 143'.slice(6)]) {
      const { body } = await test.home.dispatcher.get(`/sites?q=${encodeURIComponent(query)}`);
      expect([query, body.items.map((site: { id: string }) => site.id)]).toEqual([query, [siteId]]);
    }
  });
});

describe('sites by the page', () => {
  it('come in the order of their clients, each once', async () => {
    const test = await openTestApp('embedded');
    const clients = Array.from({ length: 23 }, (_, at) => `Client ${String((at * 7) % 23).padStart(2, '0')}`);
    for (const client of clients)
      await test.home.dispatcher.post('/sites', { body: { client, address: 'A' } });
    const seen: string[] = [];
    let cursor = '';
    do {
      const { body } = await test.home.dispatcher.get(`/sites?limit=5${cursor}`);
      seen.push(...body.items.map((site: { client: string }) => site.client));
      cursor = body.next === null ? '' : `&cursor=${body.next}`;
    } while (cursor !== '');
    expect(seen).toEqual(clients.toSorted());
    await test.close();
  });
});
