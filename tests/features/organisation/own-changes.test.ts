import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import type { ApplicableChange } from '../../../state-machines/triage/changes/described.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { accepted, bodyOf, bringToSubstitute, openTestTicket, send } from '../../support/tickets.ts';

const ferrites = {
  id: '5d0f4a52-6a1f-4a0e-9a77-0a3f5b1f2c01',
  name: 'Clip ferrites on',
  actsOn: 'link',
  setupMin: 4,
  restoreMin: 2,
  kit: 'two ferrites',
  caution: 'Open no housing.',
  mayStay: true,
  keepsAway: 0.4,
};
const minutesAgo = (minutes: number): string => new Date(Date.now() - minutes * 60_000).toISOString();
const atCable = { type: 'declareChange', target: { kind: 'link', linkId: 'L4' }, expected: 'It stays away' };
const own = { ...atCable, kind: 'ownKind', ownKindId: ferrites.id };

describe.each(databaseKinds())('an organisation’s own kinds of change, on the %s database', (kind) => {
  let test: TestApp;
  let ticketId = '';
  beforeAll(async () => {
    test = await openTestApp(kind);
    ({ ticketId } = await openTestTicket(test));
    await bringToSubstitute(test.home.technician, ticketId);
  });
  afterAll(() => test.close());

  async function setOwn(ownChanges: readonly object[], org = test.home) {
    const now = await org.admin.get('/organisation');
    const { name, settings } = bodyOf<{ name: string; settings: object }>(now, 200);
    const body = { name, settings: { ...settings, ownChanges } };
    return org.admin.put('/organisation', { body, headers: { 'if-match': now.headers.etag ?? '' } });
  }
  const applicable = async (): Promise<ApplicableChange[]> => {
    const { technician } = test.home;
    const reply = await technician.get(`/tickets/${ticketId}/applicable-changes`);
    return bodyOf<{ items: ApplicableChange[] }>(reply, 200).items;
  };
  /** Makes the change that is declared, and judges by hand that it cleared the fault. */
  async function judgedCleared(at: string): Promise<void> {
    const { technician } = test.home;
    await accepted(technician, at, { type: 'applyChange', happenedAt: minutesAgo(440) });
    await accepted(technician, at, { type: 'startWatch', happenedAt: minutesAgo(430) });
    await accepted(technician, at, { type: 'endWatch', happenedAt: minutesAgo(420) });
    const override = { verdict: 'cleared', reason: 'Seen by the client' };
    await accepted(technician, at, { type: 'judgeRetest', override, happenedAt: minutesAgo(410) });
  }
  const lastChange = ({ triage }: Ticket) => triage.changes.at(-1);

  it('are refused where they do not fit, at the field that does not', async () => {
    const wrong = await setOwn([{ ...ferrites, setupMin: -1, keepsAway: 1, actsOn: 'room' }]);
    expect(wrong.status).toBe(400);
    expect(wrong.body.errors.map(({ pointer }: { pointer: string }) => pointer).toSorted()).toEqual([
      '/settings/ownChanges/0/actsOn',
      '/settings/ownChanges/0/keepsAway',
      '/settings/ownChanges/0/setupMin',
    ]);
    const twice = await setOwn([ferrites, { ...ferrites, name: ferrites.name.toUpperCase() }]);
    expect(twice.status).toBe(400);
    expect(twice.body.errors).toMatchObject([
      { pointer: '/settings/ownChanges/1/id', code: 'fieldThereAlready' },
      { pointer: '/settings/ownChanges/1/name', code: 'fieldThereAlready' },
    ]);
  });

  it('are declared by nobody while there is none', async () => {
    expect((await applicable()).filter((change) => change.own !== null)).toEqual([]);
    const refused = await send(test.home.technician, ticketId, own);
    expect(refused.body).toMatchObject({
      type: '/problems/change-not-applicable',
      said: { code: 'ownKindUnknown' },
    });
  });

  it('apply with their minutes, kit and caution once an admin has added them, and take no figure too', async () => {
    expect((await setOwn([ferrites])).status).toBe(200);
    const found = (await applicable()).filter((change) => change.own?.id === ferrites.id);
    expect(found.map(({ target }) => target)).toContainEqual(atCable.target);
    expect(found[0]).toMatchObject({ setupMin: 4, restoreMin: 2, diagnostic: false });
    expect(JSON.stringify(found[0]?.needs)).toContain(ferrites.kit);
    expect(JSON.stringify(found[0]?.caution)).toContain(ferrites.caution);
    expect((await setOwn([{ ...ferrites, keepsAway: null }])).status).toBe(200);
    const { technician } = test.home;
    expect((await technician.get(`/tickets/${ticketId}/plan`)).status).toBe(200);
  });

  it('are those of the organisation alone', async () => {
    const { settings } = bodyOf<{ settings: { ownChanges: unknown[] } }>(
      await test.other.admin.get('/organisation'),
      200,
    );
    expect(settings.ownChanges).toEqual([]);
  });

  it('stand in the ticket as they were when they were declared, also once they are withdrawn', async () => {
    const { technician } = test.home;
    expect((await setOwn([ferrites])).status).toBe(200);
    expect(
      lastChange(await accepted(technician, ticketId, { ...own, happenedAt: minutesAgo(450) })),
    ).toMatchObject({ own: ferrites });
    expect((await setOwn([])).status).toBe(200);
    await judgedCleared(ticketId);
    const kept = await accepted(technician, ticketId, { type: 'keepChange' });
    expect(lastChange(kept)).toMatchObject({ status: 'kept', own: ferrites });
    const check = await test.home.support.get(`/tickets/${ticketId}/log/check`);
    expect(check.body).toMatchObject({ isClean: true });
  });

  it('have one beside them that is described in words: with what, where, and whether it may stay', async () => {
    const { technician } = test.home;
    const { ticketId: other } = await openTestTicket(test);
    await bringToSubstitute(technician, other);
    const described = { ...atCable, kind: 'otherChange' };
    expect((await send(technician, other, described)).body.said.code).toBe('describeTheChange');
    const nowhere = { ...described, detail: 'Turned round', target: { kind: 'link', linkId: 'L99' } };
    expect((await send(technician, other, nowhere)).status).toBeGreaterThanOrEqual(400);
    const whole = { ...described, detail: 'Dimmed the lights', target: { kind: 'chain' }, mayStay: true };
    const happenedAt = minutesAgo(450);
    const ticket = await accepted(technician, other, { ...whole, happenedAt });
    expect(lastChange(ticket)).toMatchObject({
      target: { kind: 'chain' },
      detail: 'Dimmed the lights',
      diagnostic: false,
      own: null,
    });
    await accepted(technician, other, { type: 'withdrawChange', reason: 'Not the lights', happenedAt });
    const goes = await accepted(technician, other, {
      ...described,
      detail: 'Turned the plug round',
      happenedAt,
    });
    expect(lastChange(goes)).toMatchObject({ diagnostic: true });
    await judgedCleared(other);
    expect((await send(technician, other, { type: 'keepChange' })).status).toBe(409);
  });
});
