import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { bodyOf, openTestTicket } from '../../support/tickets.ts';
import { postForm } from '../evidence/form-client.ts';

type Figure = { path: string; figure: number; origin: string; own: number | null };

describe.each(databaseKinds())('an organisation’s own numbers and words, on the %s database', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  const figures = async (): Promise<Figure[]> =>
    bodyOf<{ items: Figure[] }>(await test.home.technician.get('/fault-model'), 200).items;

  /** Sets these settings beside those that are there. */
  async function set(settings: object) {
    const { admin } = test.home;
    const now = await admin.get('/organisation');
    const { name, settings: before } = bodyOf<{ name: string; settings: object }>(now, 200);
    const body = { name, settings: { ...before, ...settings } };
    return admin.put('/organisation', { body, headers: { 'if-match': now.headers.etag ?? '' } });
  }

  it('lists every figure of the fault model with where it is from', async () => {
    const items = await figures();
    expect(items.length).toBeGreaterThan(100);
    expect(new Set(items.map(({ origin }) => origin))).toEqual(new Set(['common practice', 'assumed']));
    expect(items.every(({ own }) => own === null)).toBe(true);
  });

  it('takes an own figure, and shows it beside the built-in one', async () => {
    const [first] = await figures();
    const path = first?.path ?? '';
    const own = (first?.figure ?? 0) / 2;
    expect((await set({ faultModel: { [path]: own } })).status).toBe(200);
    expect((await figures()).find((each) => each.path === path)).toEqual({ ...first, own });
  });

  it('refuses a figure that is not there, and one that makes a fault certain', async () => {
    const nothing = await set({ faultModel: { 'linkWeights/nothing/here': 1 } });
    expect(nothing.status).toBe(400);
    expect(nothing.body.errors).toMatchObject([
      { pointer: '/settings/faultModel/linkWeights~1nothing~1here' },
    ]);
    const chance = (await figures()).find(({ path }) => path.startsWith('menuStays/'));
    expect((await set({ faultModel: { [chance?.path ?? '']: 1 } })).status).toBe(400);
  });

  it('reads logs by the organisation’s own words, and refuses a row that misses its own example', async () => {
    const row = { kind: 'lampFault', all: [['lamp'], ['flicker*']], example: 'lamp flickering, code 7' };
    const wrong = await set({ recognition: [{ ...row, example: 'all is well' }] });
    expect(wrong.status).toBe(400);
    expect(wrong.body.errors).toMatchObject([{ pointer: '/settings/recognition' }]);
    expect((await set({ recognition: [row] })).status).toBe(200);
    const { ticketId } = await openTestTicket(test);
    const file = Buffer.from('<13>1 2026-03-02T19:00:00Z beam lamp 1 - - lamp flickers\n');
    const form = { about: { kind: 'log' }, file, name: 'lamp.log' };
    const item = bodyOf<EvidenceItem>(await postForm(test, test.home.technician, ticketId, form), 201);
    expect(item.facts).toMatchObject({ log: { eventCounts: { lampFault: 1 } } });
  });
});
