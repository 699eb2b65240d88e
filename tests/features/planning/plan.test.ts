import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { PhonePlanReply, PlanReply } from '../../../shared/contract/plan.ts';
import { filledIn } from '../../../state-machines/index.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import {
  accepted,
  bodyOf,
  bringToReproduce,
  bringToSubstitute,
  openTestTicket,
  type TestTicket,
  temporaryCable,
} from '../../support/tickets.ts';

const minutesAgo = (minutes: number): string => new Date(Date.now() - minutes * 60_000).toISOString();
const total = (numbers: readonly number[]): number => numbers.reduce((sum, each) => sum + each, 0);

const typesOf = ({ offers }: PlanReply): string[][] =>
  offers.map(({ steps }) => steps.map(({ type }) => type));

describe.each(databaseKinds())('the plan of a ticket, on the %s database', (kind) => {
  let test: TestApp;
  let ticket: TestTicket;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());
  beforeEach(async () => {
    ticket = await openTestTicket(test);
  });

  const planOf = async (query = ''): Promise<PlanReply> =>
    bodyOf<PlanReply>(await test.home.technician.get(`/tickets/${ticket.ticketId}/plan${query}`), 200);
  const tell = (command: { type: string } & Record<string, unknown>) =>
    accepted(test.home.technician, ticket.ticketId, command);

  it('begins with what has to be known first', async () => {
    const plan = await planOf();
    expect(plan.state).toBe('baseline');
    expect(typesOf(plan)).toEqual([['reviewAudit'], ['answerWhatChanged'], ['recordAsFound']]);
    expect(total(plan.suspects.map(({ probability }) => probability))).toBeCloseTo(1, 9);
  });

  it('says how long to watch for a fault of the rate told, then finds the side by a menu', async () => {
    await bringToReproduce(test.home.technician, ticket.ticketId);
    const before = await planOf();
    // three an hour, missed with 5 %: -ln(0.05)/3 hours
    expect(before.watchMin).toBeCloseTo((-Math.log(0.05) / 3) * 60, 6);
    await tell({ type: 'startWatch', happenedAt: minutesAgo(600) });
    for (const at of [590, 570, 550]) await tell({ type: 'recordOccurrence', happenedAt: minutesAgo(at) });
    await tell({ type: 'endWatch', happenedAt: minutesAgo(540) });
    await tell({ type: 'acceptReproduction' });
    const plan = await planOf();
    expect(plan.next?.kind).toBe('menu');
    expect(plan.offers[0]?.steps).toMatchObject([{ type: 'startWatch' }]);
    expect(plan.offers[0]?.test).toEqual(plan.next);
    expect(total(plan.next?.outcomes.map(({ chance }) => chance) ?? [])).toBeCloseTo(1, 9);
  });

  it('goes back to the menus where one that can still tell a side tells more than any change', async () => {
    await bringToSubstitute(test.home.technician, ticket.ticketId, 'receiver');
    const refused = encodeURIComponent('[{"test":"replaceCable"}]');
    const { next, offers } = await planOf(`?refused=${refused}`);
    expect(next).toMatchObject({ kind: 'menu', target: { kind: 'device' } });
    const [offer] = offers;
    expect(offer?.steps).toMatchObject([
      { type: 'locateSideAgain' },
      { type: 'startWatch', menuDeviceId: next?.target.kind === 'device' && next.target.deviceId },
    ]);
    expect(offer?.toSay).toEqual(['reason']);
    const reason = 'Another menu tells more';
    for (const command of filledIn(offer ?? { steps: [] }, { reason })) await tell(command);
    expect((await planOf()).offers.map(({ steps }) => steps[0]?.type)).toContain('recordOccurrence');
  });

  it('asks for no menu that could not be concluded from: none is left behind the last device that draws one', async () => {
    await bringToSubstitute(test.home.technician, ticket.ticketId);
    const { next, others } = await planOf();
    const menus = [next, ...others].filter((each) => each?.kind === 'menu').map((each) => each?.target);
    // of all devices that draw a menu, only the projector has anything that can be at fault on both of its sides
    expect(menus).toEqual([{ kind: 'device', deviceId: 'projector' }]);
  });

  it('proposes a change that is accepted when declared, and follows it to its end', async () => {
    await bringToSubstitute(test.home.technician, ticket.ticketId);
    const noMenus = encodeURIComponent('[{"test":"menu"}]');
    const { next, others, offers, sentence } = await planOf(`?refused=${noMenus}`);
    expect(offers[0]).toMatchObject({
      steps: [{ type: 'declareChange', kind: next?.kind, target: next?.target }],
      toSay: ['expected'],
    });
    expect(sentence.text).toContain(next?.text.text);
    expect(others.length).toBeGreaterThan(0);
    const expected = 'It stays away if that is the cause.';
    const [declaring] = filledIn(offers[0] ?? { steps: [] }, { expected });
    await tell({ ...(declaring as { type: string }), happenedAt: minutesAgo(410) });
    expect(typesOf(await planOf())[0]).toEqual(['applyChange']);
    await tell({ type: 'applyChange', happenedAt: minutesAgo(400) });
    const watching = await planOf();
    expect(watching.next).toBeNull();
    // seen four times in 80 minutes, at a risk of 5 %
    expect(Math.abs((watching.watchMin ?? 0) - 80 * (0.05 ** (-1 / 4) - 1))).toBeLessThan(1);
    await tell({ type: 'startWatch', happenedAt: minutesAgo(390) });
    await tell({ type: 'endWatch', happenedAt: minutesAgo(200) });
    expect(typesOf(await planOf())[0]).toEqual(['judgeRetest']);
    await tell({ type: 'judgeRetest' });
    await tell({ type: 'restoreChange', happenedAt: minutesAgo(190) });
    const put = await planOf();
    expect(typesOf(put).slice(0, 2)).toEqual([['startWatch'], ['nameCulprit']]);
    const suspect = put.suspects[0];
    expect(suspect?.component).toBe(next?.outcomes[0]?.component);
    expect(suspect?.name).toEqual(next?.outcomes[0]?.likeliest);
    expect(suspect?.because.some(({ decibans }) => decibans > 0)).toBe(true);
  });

  it('takes no cable that is not at hand, and nothing that the client won’t have', async () => {
    await bringToSubstitute(test.home.technician, ticket.ticketId);
    const { next, others } = await planOf(`?kit=${encodeURIComponent('[]')}`);
    for (const each of [next, ...others]) expect(each?.kit ?? []).toEqual([]);
    const { next: usual } = await planOf();
    expect(usual).not.toBeNull();
    const refused = encodeURIComponent(JSON.stringify([{ test: usual?.kind }]));
    const without = await planOf(`?refused=${refused}`);
    expect([without.next, ...without.others].map((each) => each?.kind)).not.toContain(usual?.kind);
  });

  it('refuses kit that is no kit', async () => {
    const { technician } = test.home;
    for (const kit of ['{', '[{"kind":"hammer"}]']) {
      const reply = await technician.get(`/tickets/${ticket.ticketId}/plan?kit=${encodeURIComponent(kit)}`);
      expect(reply.status).toBe(400);
    }
  });

  it('is moved by the organisation’s own figures', async () => {
    const { admin } = test.home;
    const before = await planOf();
    const [first] = before.suspects;
    const organisation = await admin.get('/organisation');
    const { name, settings } = organisation.body;
    const figures = (await admin.get('/fault-model')).body.items as { path: string; figure: number }[];
    const contact = figures.filter(({ path }) => path.startsWith('linkWeights/contact/'));
    const faultModel = Object.fromEntries(contact.map(({ path, figure }) => [path, figure / 50]));
    const put = (own: object) =>
      admin.get('/organisation').then((now) =>
        admin.put('/organisation', {
          body: { name, settings: { ...settings, faultModel: own } },
          headers: { 'if-match': now.headers.etag ?? '' },
        }),
      );
    expect((await put(faultModel)).status).toBe(200);
    const after = await planOf();
    const share = (plan: PlanReply) =>
      plan.suspects.find(({ component }) => component === first?.component)?.probability;
    expect(share(after)).not.toBeCloseTo(share(before) ?? 0, 3);
    expect((await put({})).status).toBe(200);
    expect((await planOf()).suspects).toEqual(before.suspects);

    await bringToSubstitute(test.home.technician, ticket.ticketId);
    expect((await put({ 'changeMinutes/reseat/setup': 33 })).status).toBe(200);
    const { items } = (await test.home.technician.get(`/tickets/${ticket.ticketId}/applicable-changes`)).body;
    const reseat = (items as { kind: string; setupMin: number }[]).filter((each) => each.kind === 'reseat');
    expect(new Set(reseat.map(({ setupMin }) => setupMin))).toEqual(new Set([33]));
    expect((await put({ 'planning/escalation/minutes': 0 })).status).toBe(200);
    expect((await planOf()).next).toBeNull();
    expect((await put({})).status).toBe(200);
  });

  it('says by phone only what a client can safely do, and packs the van', async () => {
    const path = `/tickets/${ticket.ticketId}/phone-plan`;
    const near = bodyOf<PhonePlanReply>(await test.home.dispatcher.get(path), 200);
    for (const each of [near.next, ...near.others]) {
      expect([
        'menu',
        'otherSource',
        'reissueHotPlug',
        undefined,
        'raisePortMode',
        'disableProcessing',
        'limitInputBandwidth',
        'limitOutputBandwidth',
      ]).toContain(each?.kind);
      expect(each?.kit ?? []).toEqual([]);
    }
    expect(near.visitChance).toBeGreaterThan(0);
    expect(near.visitChance).toBeLessThanOrEqual(1);
    expect(near.van.length).toBeGreaterThan(0);
    const { devices } = (await test.home.dispatcher.get(`/chains/${ticket.chainId}`)).body.chain as {
      devices: { id: string }[];
    };
    const reachable = devices.map(({ id }) => id).join(',');
    const all = bodyOf<PhonePlanReply>(await test.home.dispatcher.get(`${path}?reachable=${reachable}`), 200);
    expect(all.visitChance).toBeLessThan(near.visitChance);
  });

  it('is the same however often it is asked for', async () => {
    await bringToSubstitute(test.home.technician, ticket.ticketId);
    await tell({ ...temporaryCable });
    expect(await planOf()).toEqual(await planOf());
  });
});
