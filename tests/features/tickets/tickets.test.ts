import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Ticket, TimelineEntry } from '../../../shared/contract/ticket.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import {
  accepted,
  bodyOf,
  bringToReproduce,
  bringToSubstitute,
  openTestTicket,
  send,
  temporaryCable,
} from '../../support/tickets.ts';

describe.each(databaseKinds())('tickets, on the %s database', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  const read = async (ticketId: string): Promise<Ticket> =>
    bodyOf<Ticket>(await test.home.technician.get(`/tickets/${ticketId}`), 200);

  it('are numbered one after the other, also when they are opened at once', async () => {
    const first = await openTestTicket(test);
    const { number } = await read(first.ticketId);
    const intake = { symptom: { kind: 'sparkles' } };
    const opened = await Promise.all(
      Array.from({ length: 8 }, async () => {
        const { siteId, chainId } = await openTestTicketPlace();
        return test.home.dispatcher.post('/tickets', { body: { siteId, chainId, intake } });
      }),
    );
    const numbers = opened.map((reply) => bodyOf<Ticket>(reply, 201).number).toSorted((a, b) => a - b);
    expect(numbers).toEqual(Array.from({ length: 8 }, (_, at) => number + 1 + at));
  });

  async function openTestTicketPlace() {
    const { dispatcher } = test.home;
    const site = await dispatcher.post('/sites', { body: { client: 'C', address: 'A' } });
    const siteId = bodyOf<{ id: string }>(site, 201).id;
    const chain = await dispatcher.post(`/sites/${siteId}/chains`, {
      body: { name: 'N', devices: [], links: [] },
    });
    return { siteId, chainId: bodyOf<{ id: string }>(chain, 201).id };
  }

  it('hold how the fault comes from the call on, and take a correction of it', async () => {
    const { siteId, chainId } = await openTestTicketPlace();
    const symptom = {
      kind: 'noPicture',
      pattern: { kind: 'trigger', trigger: 'afterStandby' },
      onlyWith: { kind: 'title', what: 'The long river' },
    };
    const body = { siteId, chainId, intake: { symptom } };
    const opened = bodyOf<Ticket>(await test.home.dispatcher.post('/tickets', { body }), 201);
    expect(opened.triage.symptom).toMatchObject({
      perHour: null,
      pattern: symptom.pattern,
      onlyWith: { ...symptom.onlyWith, deviceId: null },
    });
    const corrected = { ...opened.triage.symptom, pattern: { kind: 'warm', afterMin: 30 } };
    const command = { type: 'amendIntake', symptom: corrected };
    await test.home.dispatcher.post(`/tickets/${opened.id}/commands`, { body: command });
    expect((await read(opened.id)).intake.symptom).toEqual(corrected);
    const unknown = { ...symptom, pattern: { kind: 'whenItRains' } };
    const refused = await test.home.dispatcher.post('/tickets', {
      body: { siteId, chainId, intake: { symptom: unknown } },
    });
    expect(refused.status).toBe(400);
  });

  it('at a chain that has one open are shown it first', async () => {
    const { siteId, chainId, ticketId } = await openTestTicket(test);
    const body = { siteId, chainId, intake: { symptom: { kind: 'dropOuts' } } };
    const refused = await test.home.dispatcher.post('/tickets', { body });
    expect(refused.status).toBe(409);
    expect(refused.body.type).toBe('/problems/possible-duplicate');
    expect(refused.body.openTickets).toEqual([expect.objectContaining({ id: ticketId, state: 'baseline' })]);
    const knowing = await test.home.dispatcher.post('/tickets', {
      body: { ...body, seenDuplicates: [ticketId] },
    });
    expect(knowing.status).toBe(201);
  });

  it('are worked by their technician; another takes over first', async () => {
    const { ticketId } = await openTestTicket(test);
    const command = { type: 'reviewAudit', chainVersion: 1 };
    const other = test.home.secondTechnician;
    const refused = await send(other, ticketId, command);
    expect(refused.body.type).toBe('/problems/not-assigned');
    expect(refused.body.said).toEqual({
      code: 'ticketWithSomebody',
      values: { holder: 'technician of home-firm' },
    });
    expect(refused.body.allowedNow).toEqual([expect.objectContaining({ type: 'takeOver' })]);
    const seen = bodyOf<Ticket>(await other.get(`/tickets/${ticketId}`), 200).allowedNow;
    expect(seen.map(({ type }) => type)).toEqual([
      'note',
      'amendIntake',
      'answerWhatChanged',
      'waitFor',
      'takeOver',
    ]);
    expect((await other.post(`/tickets/${ticketId}/take-over`)).status).toBe(200);
    await accepted(other, ticketId, command);
    expect((await send(test.home.technician, ticketId, command)).body.type).toBe('/problems/not-assigned');
    const wrong = await test.home.dispatcher.post(`/tickets/${ticketId}/assignment`, {
      body: { assigneeId: test.home.dispatcher.id },
    });
    expect(wrong.body.said.code).toBe('assigneeNoTechnician');
  });

  it('say what is allowed now, and refuse the rest by name', async () => {
    const { ticketId } = await openTestTicket(test);
    const { allowedNow, state } = await read(ticketId);
    expect(state).toBe('baseline');
    expect(allowedNow.map((one) => one.type)).toEqual(
      expect.arrayContaining(['reviewAudit', 'recordAsFound']),
    );
    const refused = await send(test.home.technician, ticketId, { type: 'beginSubstitution' });
    expect(refused.status).toBe(409);
    expect(refused.body.type).toBe('/problems/not-allowed-now');
    expect(refused.body.allowedNow.length).toBeGreaterThan(0);
    const wrongRole = await send(test.home.dispatcher, ticketId, { type: 'reviewAudit', chainVersion: 1 });
    expect(wrongRole.status).toBe(403);
    expect(wrongRole.body.allowedNow.map(({ type }: { type: string }) => type)).toContain(
      'answerWhatChanged',
    );
    expect((await send(test.home.technician, ticketId, { type: 'dance' })).status).toBe(400);
    const unknown = await send(test.home.technician, ticketId, { type: 'recordAsFound', chainVersion: 9 });
    expect(unknown.status).toBe(404);
    expect(unknown.body.allowedNow).toEqual(allowedNow);
  });

  it('act on what the sender saw when the sender says so', async () => {
    const { ticketId } = await openTestTicket(test);
    const { etag = '' } = (await test.home.technician.get(`/tickets/${ticketId}`)).headers;
    await accepted(test.home.technician, ticketId, { type: 'note', text: 'Meanwhile.' });
    const path = `/tickets/${ticketId}/commands`;
    const late = await test.home.technician.post(path, {
      body: { type: 'note', text: 'Late.' },
      ifMatch: etag,
    });
    expect(late.status).toBe(412);
  });

  it('change what triage does not decide under If-Match', async () => {
    const { ticketId } = await openTestTicket(test);
    const path = `/tickets/${ticketId}`;
    const { etag = '' } = (await test.home.dispatcher.get(path)).headers;
    const visitAt = '2026-12-01T09:00:00.000Z';
    const body = {
      priority: 'urgent',
      assigneeId: null,
      visitAt,
      intake: { triedOnPhone: 'Power off and on.' },
    };
    const updated = bodyOf<Ticket>(await test.home.dispatcher.put(path, { body, ifMatch: etag }), 200);
    expect(updated).toMatchObject({ priority: 'urgent', assigneeId: null, visitAt });
    expect(updated.intake.triedOnPhone).toBe('Power off and on.');
    expect(updated.intake.symptom).toMatchObject({ kind: 'dropOuts', perHour: 3 });
  });

  it('are listed by state, assignee, visit and words, page by page', async () => {
    const { ticketId } = await openTestTicket(test);
    await bringToReproduce(test.home.technician, ticketId);
    const idsAt = async (query: string): Promise<string[]> => {
      const { body } = await test.home.dispatcher.get(`/tickets?limit=200&${query}`);
      return body.items.map((one: { id: string }) => one.id);
    };
    for (const query of [
      'state=reproduce',
      'state=open',
      `assigneeId=${test.home.technician.id}`,
      'q=overwell',
    ]) {
      expect(await idsAt(query)).toContain(ticketId);
    }
    for (const query of ['state=closed', 'assigneeId=none', 'q=nobody-of-that-name', 'symptom=sparkles']) {
      expect(await idsAt(query)).not.toContain(ticketId);
    }
    const first = (await test.home.dispatcher.get('/tickets?limit=2')).body;
    const second = (await test.home.dispatcher.get(`/tickets?limit=2&cursor=${first.next}`)).body;
    const numbers = [...first.items, ...second.items].map((one: { number: number }) => one.number);
    expect(numbers).toEqual(numbers.toSorted((a, b) => b - a));
    expect(new Set(numbers).size).toBe(4);
  });

  it('have a log that holds and a timeline that reads', async () => {
    const { ticketId } = await openTestTicket(test);
    await bringToSubstitute(test.home.technician, ticketId);
    await accepted(test.home.technician, ticketId, temporaryCable);
    const { body: check } = await test.home.support.get(`/tickets/${ticketId}/log/check`);
    expect(check).toMatchObject({ isClean: true });
    const { body: log } = await test.home.support.get(`/tickets/${ticketId}/log`);
    expect(log.items[0].previousHash).toBe('0'.repeat(64));
    expect(log.items.slice(1).map((event: { previousHash: string }) => event.previousHash)).toEqual(
      log.items.slice(0, -1).map((event: { hash: string }) => event.hash),
    );
    const { body: timeline } = await test.home.support.get(`/tickets/${ticketId}/timeline`);
    const texts = timeline.items.map((entry: TimelineEntry) => entry.text);
    expect(texts[0]).toMatchObject({ code: 'log/ticketOpened' });
    const expected = 'No drop-out in two hours if the cable is the cause.';
    expect(texts.at(-1)).toMatchObject({ code: 'log/changeDeclared', values: { expected } });
    const side = { side: 'output', device: expect.objectContaining({ name: 'Cinema processor' }) };
    expect(texts).toContainEqual(
      expect.objectContaining({ code: 'log/sideConcluded', values: expect.objectContaining(side) }),
    );
  });

  it('tell what a phone sent late at the time it happened', async () => {
    const { ticketId } = await openTestTicket(test);
    const opened = Date.now();
    const at = (minutes: number): Date => new Date(opened + minutes * 60_000);
    test.setNow(at(60));
    await accepted(test.home.technician, ticketId, { type: 'note', text: 'Sent at once.' });
    const happenedAt = at(30).toISOString();
    await accepted(test.home.technician, ticketId, { type: 'note', text: 'Sent late.', happenedAt });
    test.setNow(null);
    const { items } = (await test.home.support.get(`/tickets/${ticketId}/timeline`)).body;
    const note = (text: string) => ({ code: 'log/noteWritten', values: { text } });
    expect(items.slice(-2)).toMatchObject([
      { text: note('Sent late.'), at: happenedAt, ref: { receivedAt: at(60).toISOString() } },
      { text: note('Sent at once.'), at: at(60).toISOString() },
    ]);
  });

  it('of which a log row is changed behind our back no longer pass the check', async () => {
    const { ticketId } = await openTestTicket(test);
    await accepted(test.home.technician, ticketId, { type: 'note', text: 'Said on the day.' });
    await test.services.database
      .inTenant({ orgId: test.home.orgId, memberId: null }, async (tx) => {
        await expect(
          tx.$executeRaw`update ticket_event set payload = '{"text": "Never said."}' where ticket_id = ${ticketId}::uuid`,
        ).rejects.toThrow();
        throw new Error('rolled back');
      })
      .catch(() => undefined);
    await test.tamper(
      `update ticket_event set payload = payload || '{"text": "Never said."}' where ticket_id = $1 and sequence = 2`,
      [ticketId],
    );
    const { body } = await test.home.support.get(`/tickets/${ticketId}/log/check`);
    expect(body).toMatchObject({
      isClean: false,
      hashes: { broken: [{ sequence: 2, because: 'content' }] },
      snapshot: {
        differences: [
          { pointer: '/context/notes/0/text', stored: 'Said on the day.', replayed: 'Never said.' },
        ],
      },
    });
  });

  it('offer the changes that apply to the side that was found', async () => {
    const { ticketId } = await openTestTicket(test);
    await bringToSubstitute(test.home.technician, ticketId);
    const { body } = await test.home.technician.get(`/tickets/${ticketId}/applicable-changes`);
    const places = body.items.map((one: { kind: string; target: { linkId?: string } }) => [
      one.kind,
      one.target.linkId,
    ]);
    expect(places).toContainEqual(['temporaryCable', 'L4']);
    expect(places).not.toContainEqual(['temporaryCable', 'L1']);
    const refused = await send(test.home.technician, ticketId, {
      ...temporaryCable,
      target: { kind: 'link', linkId: 'L1' },
    });
    expect(refused.body.type).toBe('/problems/change-not-applicable');
  });
});
