import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { erasedText, erasureOf } from '../../../shared/contract/erased-text.ts';
import type { LogCheck } from '../../../shared/contract/log-check.ts';
import type { Packet } from '../../../shared/contract/packet.ts';
import type { Ticket, TicketEvent, TimelineEntry } from '../../../shared/contract/ticket.ts';
import { english } from '../../../shared/message/en/index.ts';
import { message, messageText } from '../../../shared/message/index.ts';
import { rebuildTickets } from '../../../src/features/ticket-record/index.ts';
import { waiveAll } from '../../state-machines/triage/triage-events.ts';
import { hashInFormat1 } from '../../support/format-1.ts';
import { openTestApp, type TestApp, type TestReply } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { accepted, bodyOf, openTestTicket, send } from '../../support/tickets.ts';

/** What must not be left anywhere. */
const said = {
  note: 'Mia Overgrove next door ran the sander again.',
  intake: 'The housekeeper, Mia Overgrove, has the key on Mondays.',
  reading: 'Mia Overgrove heard it hum through the wall.',
  withdrawn: 'Mia Overgrove did not agree to be quoted.',
  question: 'Could the sander of Mia Overgrove do this?',
};

describe.each(databaseKinds())('a text that is erased on the %s database', (kind) => {
  let test: TestApp;
  let ticketId: string;
  beforeAll(async () => {
    test = await openTestApp(kind);
    ({ ticketId } = await openTestTicket(test));
    const { technician, dispatcher } = test.home;
    await accepted(technician, ticketId, { type: 'note', text: said.note });
    for (const notes of [said.intake, said.intake]) {
      const { headers, body } = await dispatcher.get(`/tickets/${ticketId}`);
      const { priority, assigneeId, visitAt, intake } = body as Ticket;
      const update = { priority, assigneeId, visitAt, intake: { ...intake, notes, since: 'Monday' } };
      bodyOf(
        await dispatcher.put(`/tickets/${ticketId}`, { body: update, ifMatch: String(headers.etag) }),
        200,
      );
    }
    const reading = { kind: 'note', text: said.reading };
    const added = await technician.post(`/tickets/${ticketId}/readings`, { body: { reading } });
    const { id } = bodyOf<{ id: string }>(added, 201);
    const withdraw = { body: { reason: said.withdrawn } };
    bodyOf(await technician.post(`/evidence/${id}/withdraw`, withdraw), 200);
  });
  afterAll(() => test.close());

  const ticketNow = async (): Promise<Ticket> =>
    bodyOf<Ticket>(await test.home.admin.get(`/tickets/${ticketId}`), 200);
  const log = async (): Promise<TicketEvent[]> =>
    bodyOf<{ items: TicketEvent[] }>(await test.home.admin.get(`/tickets/${ticketId}/log`), 200).items;
  const check = async (): Promise<LogCheck> =>
    bodyOf<LogCheck>(await test.home.admin.get(`/tickets/${ticketId}/log/check`), 200);
  const erase = (event: number, pointer: string): Promise<TestReply> =>
    test.home.admin.post(`/tickets/${ticketId}/erasures`, {
      body: { event, pointer, reason: 'Asked for by whom it names.' },
    });
  /** The tables of the organisation that hold a text. */
  const tablesWith = (text: string): Promise<string[]> =>
    test.services.database.inTenant({ orgId: test.home.orgId, memberId: null }, async (tx) => {
      const tables = await tx.$queryRaw<{ name: string }[]>`
        select relname::text as name from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r'
          and has_table_privilege(oid, 'select') order by relname`;
      const found = [];
      for (const { name } of tables) {
        const sql = `select 1 from "${name}" t where position($1 in to_jsonb(t)::text) > 0 limit 1`;
        if ((await tx.$queryRawUnsafe<unknown[]>(sql, text)).length > 0) found.push(name);
      }
      return found;
    });
  const byAdmin = () => ({ at: expect.any(String), by: test.home.admin.id });

  it('was never in what is hashed', async () => {
    for (const text of Object.values(said)) expect(await tablesWith(text)).not.toContain('ticket_event');
    const [event] = (await log()).filter(({ payload }) => payload.text === said.note);
    expect(event).toMatchObject({ format: 2, texts: [{ pointer: '/text', erased: null }] });
    expect(await check()).toMatchObject({ isClean: true, texts: { erased: 0, wrong: [] } });
  });

  it('is nowhere any more, and its place says when and by whom it was erased', async () => {
    expect(await tablesWith(said.note)).toEqual(['ticket', 'ticket_text']);
    const before = await ticketNow();
    const after = bodyOf<Ticket>(await erase(2, '/text'), 200);
    expect(await tablesWith(said.note)).toEqual([]);
    expect(erasureOf(after.triage.notes[0]?.text ?? '')).toEqual(byAdmin());
    expect({ ...after.triage, notes: [] }).toEqual({ ...before.triage, notes: [] });
    expect(after.sequence).toBe(before.sequence + 1);
  });

  it('leaves a log that verifies, and says what was erased and why', async () => {
    expect(await check()).toMatchObject({
      isClean: true,
      hashes: { broken: [] },
      texts: { erased: 1, wrong: [] },
    });
    const events = await log();
    expect(events[1]?.texts).toEqual([
      { pointer: '/text', sha256: expect.any(String), salt: null, erased: byAdmin() },
    ]);
    expect(events.at(-1)).toMatchObject({
      type: 'textErased',
      actorId: test.home.admin.id,
      payload: { texts: [{ event: 2, pointer: '/text' }], reason: 'Asked for by whom it names.' },
    });
    const timeline = await test.home.support.get(`/tickets/${ticketId}/timeline`);
    const { items } = bodyOf<{ items: TimelineEntry[] }>(timeline, 200);
    const line = items.find(({ ref }) => ref.sequence === 2);
    expect(line?.text.code).toBe('log/noteWritten');
    const erasure = erasureOf(String(line?.text.values.text));
    expect(erasure).toEqual(byAdmin());
    const told = messageText(message('erased', { at: erasure?.at ?? '' }), english, 'UTC');
    expect(line?.text.text).toContain(told);
    expect(items.at(-1)).toMatchObject({
      actorName: 'admin of home-firm',
      text: { code: 'log/textErased', values: { texts: 1, reason: 'Asked for by whom it names.' } },
    });
  });

  it('that reads like a code is erased from what a step sent again is answered with, and the code is left in it', async () => {
    const { technician } = test.home;
    const key = randomUUID();
    const sent = { body: { type: 'note', text: 'normal' }, key };
    const path = `/tickets/${ticketId}/commands`;
    const first = bodyOf<Ticket>(await technician.post(path, sent), 200);
    bodyOf(await erase(first.sequence, '/text'), 200);
    const again = await technician.post(path, sent);
    expect(again.headers['idempotency-replayed']).toBe('true');
    const { priority, triage } = again.body as Ticket;
    expect(priority).toBe('normal');
    expect(erasureOf(triage.notes.at(-1)?.text ?? '')).toEqual(byAdmin());
    expect(again.body).toEqual((await technician.get(`/tickets/${ticketId}`)).body);
  });

  it('is erased in every event that repeats it, and in the intake', async () => {
    const repeating = (await log()).filter(({ type }) => type === 'update');
    expect(repeating).toHaveLength(2);
    const { intake } = bodyOf<Ticket>(await erase(repeating[0]?.sequence ?? 0, '/intake/notes'), 200);
    expect(erasureOf(intake.notes)).toEqual(byAdmin());
    expect(intake.since).toBe('Monday');
    expect(await tablesWith(said.intake)).toEqual([]);
    expect(await check()).toMatchObject({ isClean: true, texts: { erased: 4 } });
  });

  it('comes back in an update as what it is now, and nobody else writes that something was erased', async () => {
    const { dispatcher, technician } = test.home;
    const { headers, body } = await dispatcher.get(`/tickets/${ticketId}`);
    const { assigneeId, visitAt, intake } = body as Ticket;
    const update = { priority: 'high', assigneeId, visitAt, intake };
    const sent = { body: update, ifMatch: String(headers.etag) };
    expect(bodyOf<Ticket>(await dispatcher.put(`/tickets/${ticketId}`, sent), 200).intake).toEqual(intake);
    const forged = erasedText({ at: '2026-01-01T00:00:00.000Z', by: test.home.admin.id });
    const refused = await send(technician, ticketId, { type: 'note', text: forged });
    expect([refused.status, refused.body.type]).toEqual([400, '/problems/invalid-input']);
  });

  it('is erased in the evidence that repeats it', async () => {
    const events = await log();
    const numberOf = (wanted: string) => events.find(({ type }) => type === wanted)?.sequence ?? 0;
    bodyOf(await erase(numberOf('evidenceAdded'), '/evidence/reading/text'), 200);
    bodyOf(await erase(numberOf('evidenceWithdrawn'), '/reason'), 200);
    expect([await tablesWith(said.reading), await tablesWith(said.withdrawn)]).toEqual([[], []]);
    const { items } = (await test.home.support.get(`/tickets/${ticketId}/evidence`)).body;
    expect(erasureOf(items[0].reading.text)).toEqual(byAdmin());
    expect(erasureOf(items[0].withdrawn.reason)).toEqual(byAdmin());
  });

  it('stays in packets that were made, and is named as erased in the next', async () => {
    const { technician, support } = test.home;
    const escalated = await accepted(technician, ticketId, {
      type: 'escalate',
      question: said.question,
      waivers: waiveAll,
    });
    const packetsNow = async (): Promise<Packet[]> => {
      const { items } = (await support.get(`/tickets/${ticketId}/packets`)).body;
      const ids = items.map(({ id }: { id: string }) => id).toSorted();
      return Promise.all(ids.map(async (id: string) => (await support.get(`/packets/${id}`)).body));
    };
    const [made] = await packetsNow();
    bodyOf(await erase(escalated.sequence, '/question'), 200);
    const erasedSince = ['/outcome/question', '/question'].map((pointer) => ({
      event: escalated.sequence,
      pointer,
      ...byAdmin(),
    }));
    expect((await packetsNow())[0]).toEqual({ ...made, erasedSince });
    const listed = (await support.get(`/tickets/${ticketId}/packets`)).body.items;
    expect(listed).toMatchObject([{ version: 1, erasedSince }]);
    expect(JSON.stringify(made?.caseFile.packet)).toContain('Mia Overgrove');
    await accepted(technician, ticketId, { type: 'recall', reason: 'Another question.' });
    await accepted(technician, ticketId, {
      type: 'escalate',
      question: 'Is it the amplifier?',
      waivers: waiveAll,
    });
    expect((await packetsNow()).map(({ version, erasedSince }) => [version, erasedSince?.length])).toEqual(
      expect.arrayContaining([
        [1, 2],
        [2, 0],
      ]),
    );
    const next = (await packetsNow()).find(({ version }) => version === 2);
    expect(JSON.stringify(next?.caseFile)).not.toContain('Mia Overgrove');
    expect(next?.caseFile.erased).toContainEqual({
      event: escalated.sequence,
      pointer: '/question',
      ...byAdmin(),
    });
    expect(next?.files.map(({ path }) => path)).toContain('data/log/texts.txt');
    const summary = (await support.get(`/packets/${next?.id}/summary`)).text;
    expect(summary).not.toContain('Mia Overgrove');
    expect(summary).not.toContain('\uFFFC');
    expect(await check()).toMatchObject({ isClean: true });
  });

  it('is erased for good: a log that is replayed leads to the record as it is', async () => {
    const outcomes = [];
    for await (const { tickets } of rebuildTickets(test.services.database, 'all')) outcomes.push(...tickets);
    expect(outcomes).toEqual([{ kind: 'kept', number: 1 }]);
    const again = await erase(2, '/text');
    expect([again.status, (await log()).filter(({ type }) => type === 'textErased').length]).toEqual([
      200, 6,
    ]);
  });

  it.each<[string, number, string]>([
    ['an event that there is not', 999, '/text'],
    ['a place without a text', 2, '/happenedAt'],
    ['a place that there is not', 2, '/no/such/place'],
  ])('is not sought at %s', async (_what, event, pointer) => {
    const { status, body } = await erase(event, pointer);
    expect([status, body.type]).toEqual([409, '/problems/unknown-reference']);
  });

  it('can not be erased from a log of format 1, which still verifies', async () => {
    const older = await openTestTicket(test);
    const { technician, admin } = test.home;
    await accepted(technician, older.ticketId, { type: 'note', text: 'Hums.' });
    // As a log of format 1 was written: the text stands in what is hashed.
    await hashInFormat1(test, older.ticketId);
    const path = `/tickets/${older.ticketId}`;
    expect((await admin.get(`${path}/log/check`)).body).toMatchObject({ isClean: true });
    const body = { event: 2, pointer: '/text', reason: 'Asked for.' };
    const answer = await admin.post(`${path}/erasures`, { body });
    expect([answer.status, answer.body.type]).toEqual([409, '/problems/text-not-erasable']);
    await accepted(technician, older.ticketId, { type: 'note', text: 'Still hums.' });
    bodyOf(await admin.post(`${path}/erasures`, { body: { ...body, event: 3 } }), 200);
    expect((await admin.get(`${path}/log/check`)).body).toMatchObject({
      isClean: true,
      texts: { erased: 1 },
    });
  });
});
