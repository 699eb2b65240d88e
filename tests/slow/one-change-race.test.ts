import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { openTestApp, type TestApp } from '../support/test-app.ts';
import { databaseKinds } from '../support/test-database.ts';
import { bringToSubstitute, openTestTicket, temporaryCable } from '../support/tickets.ts';

const clients = 50;

describe.each(databaseKinds())('fifty clients at once, over HTTP, on the %s database', (kind) => {
  let test: TestApp;
  let base: string;
  beforeAll(async () => {
    test = await openTestApp(kind);
    base = await test.app.listen({ host: '127.0.0.1', port: 0 });
  });
  afterAll(() => test.close());

  const post = async (ticketId: string, command: object, key: string) => {
    const answer = await fetch(`${base}/tickets/${ticketId}/commands`, {
      method: 'POST',
      headers: {
        authorization: `Bearer ${test.home.technician.accessToken}`,
        'content-type': 'application/json',
        'idempotency-key': key,
      },
      body: JSON.stringify(command),
    });
    return { status: answer.status, body: (await answer.json()) as { type: string } };
  };
  const sequenceOf = async (ticketId: string) =>
    ((await test.home.technician.get(`/tickets/${ticketId}`)).body as Ticket).sequence;

  it('open one change; the others get the typed refusal and the log has one event more', async () => {
    const { ticketId } = await openTestTicket(test);
    await bringToSubstitute(test.home.technician, ticketId);
    const before = await sequenceOf(ticketId);
    const answers = await Promise.all(
      Array.from({ length: clients }, () => post(ticketId, temporaryCable, randomUUID())),
    );
    const won = answers.filter((answer) => answer.status === 200);
    const refused = answers.filter(
      (answer) => answer.status === 409 && answer.body.type === '/problems/change-open',
    );
    expect([won.length, refused.length]).toEqual([1, clients - 1]);
    expect(await sequenceOf(ticketId)).toBe(before + 1);
    const check = await test.home.technician.get(`/tickets/${ticketId}/log/check`);
    expect(check.body).toMatchObject({ isClean: true });
  });

  it('with one key between them make one event', async () => {
    const { ticketId } = await openTestTicket(test);
    const before = await sequenceOf(ticketId);
    const key = randomUUID();
    const answers = await Promise.all(
      Array.from({ length: 20 }, () => post(ticketId, { type: 'note', text: 'Said once.' }, key)),
    );
    expect(answers.map((answer) => answer.status)).toEqual(Array(20).fill(200));
    expect(await sequenceOf(ticketId)).toBe(before + 1);
  });

  it('of two tickets at one chain open one change on that chain', async () => {
    const first = await openTestTicket(test);
    const { dispatcher, technician } = test.home;
    test.setNow(new Date(Date.now() - 11 * 3_600_000));
    const second = await dispatcher.post('/tickets', {
      body: {
        siteId: first.siteId,
        chainId: first.chainId,
        assigneeId: technician.id,
        intake: { symptom: { kind: 'sparkles' } },
        seenDuplicates: [first.ticketId],
      },
    });
    test.setNow(null);
    expect(second.status).toBe(201);
    const tickets = [first.ticketId, (second.body as Ticket).id];
    for (const ticketId of tickets) await bringToSubstitute(technician, ticketId);
    const answers = await Promise.all(
      tickets.map((ticketId) => post(ticketId, temporaryCable, randomUUID())),
    );
    expect(answers.map((answer) => answer.status).toSorted()).toEqual([200, 409]);
    expect(answers.find((answer) => answer.status === 409)?.body.type).toBe('/problems/chain-change-open');
  });
});
