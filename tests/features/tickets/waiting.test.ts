import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Ticket, TicketSummary } from '../../../shared/contract/ticket.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import {
  accepted,
  bodyOf,
  bringToSubstitute,
  openTestTicket,
  send,
  temporaryCable,
} from '../../support/tickets.ts';

const day = 86_400_000;
const inDays = (days: number): string => new Date(Date.now() + days * day).toISOString();

describe.each(databaseKinds())('tickets that wait, on the %s database', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  const list = async (query: string): Promise<TicketSummary[]> =>
    bodyOf<{ items: TicketSummary[] }>(await test.home.dispatcher.get(`/tickets?${query}`), 200).items;
  const forPart = (until: string) => ({
    type: 'waitFor',
    kind: 'part',
    what: 'An optical cable of twelve metres',
    actor: 'supplier',
    until,
  });

  it('are found by that, say what was left in place, and become overdue', async () => {
    const { technician, dispatcher } = test.home;
    const { ticketId } = await openTestTicket(test);
    await bringToSubstitute(technician, ticketId);
    await accepted(technician, ticketId, temporaryCable);
    await accepted(technician, ticketId, { type: 'applyChange' });
    const until = inDays(3);
    const ticket = await accepted(technician, ticketId, forPart(until));
    expect(ticket).toMatchObject({
      state: 'waiting',
      due: { kind: 'wait', by: until, waitsFor: 'part', actor: 'supplier', isInPlace: true },
    });
    expect(ticket.triage.waits[0]?.leftInPlace).toEqual([ticket.triage.changes[0]?.id]);
    const [listed] = await list('state=waiting');
    expect(listed).toMatchObject({ id: ticketId, due: ticket.due });
    expect(await list(`dueBy=${inDays(2)}`)).toEqual([]);
    expect((await list(`dueBy=${inDays(4)}`)).map(({ id }) => id)).toEqual([ticketId]);

    const refused = await send(technician, ticketId, { type: 'judgeRetest' });
    expect(refused.status).toBe(409);
    expect(refused.body.said).toMatchObject({ code: 'ticketWaits' });
    expect(refused.body.allowedNow).toContainEqual(expect.objectContaining({ type: 'resumeWork' }));

    const resumed = await accepted(dispatcher, ticketId, { type: 'resumeWork', note: 'It has come' });
    expect(resumed).toMatchObject({ state: 'substitute.applied', due: null });
    expect(await list('state=waiting')).toEqual([]);
    expect(await list(`dueBy=${inDays(400)}`)).toEqual([]);
    const plan = await technician.get(`/tickets/${ticketId}/plan`);
    expect(plan.status).toBe(200);
  });

  it('tell in the plan what is waited for', async () => {
    const { technician } = test.home;
    const { ticketId } = await openTestTicket(test);
    await accepted(technician, ticketId, forPart(inDays(1)));
    const plan = bodyOf<{ state: string; sentence: { code: string } }>(
      await technician.get(`/tickets/${ticketId}/plan`),
      200,
    );
    expect(plan).toMatchObject({ state: 'waiting', sentence: { code: 'ticketIsWaiting' } });
  });

  it('lose what was waited for from the list, too, once it is erased', async () => {
    const { technician, admin, dispatcher } = test.home;
    const { ticketId } = await openTestTicket(test);
    await accepted(technician, ticketId, { ...forPart(inDays(1)), what: 'The key from Mrs Overwell' });
    const log = bodyOf<{ items: { sequence: number; type: string }[] }>(
      await admin.get(`/tickets/${ticketId}/log`),
      200,
    ).items;
    const event = log.find(({ type }) => type === 'waitFor')?.sequence;
    const erased = await admin.post(`/tickets/${ticketId}/erasures`, {
      body: { event, pointer: '/what', reason: 'The client asked for it' },
    });
    expect(erased.status).toBe(200);
    const mine = (await list('state=waiting')).find(({ id }) => id === ticketId);
    expect(JSON.stringify(mine?.due)).not.toContain('The key from');
    const whole = bodyOf<Ticket>(await dispatcher.get(`/tickets/${ticketId}`), 200);
    expect(JSON.stringify(whole)).not.toContain('The key from');
  });
});
