import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LogCheck } from '../../../shared/contract/log-check.ts';
import type { Ticket, TicketEvent } from '../../../shared/contract/ticket.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { bodyOf, bringToSubstitute, openTestTicket, send, temporaryCable } from '../../support/tickets.ts';

const minutesAgo = (minutes: number): string => new Date(Date.now() - minutes * 60_000).toISOString();

describe.each(databaseKinds())('what was decided on a ticket (%s)', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  /** A ticket with a cable in place that was watched quietly for six hours. */
  async function retested(): Promise<string> {
    const { technician } = test.home;
    const { ticketId } = await openTestTicket(test);
    await bringToSubstitute(technician, ticketId);
    await send(technician, ticketId, { ...temporaryCable, happenedAt: minutesAgo(470) });
    await send(technician, ticketId, { type: 'applyChange', happenedAt: minutesAgo(460) });
    await send(technician, ticketId, { type: 'startWatch', happenedAt: minutesAgo(450) });
    await send(technician, ticketId, { type: 'endWatch', happenedAt: minutesAgo(90) });
    return ticketId;
  }
  const eventsOf = async (ticketId: string): Promise<TicketEvent[]> =>
    bodyOf<{ items: TicketEvent[] }>(await test.home.technician.get(`/tickets/${ticketId}/log`), 200).items;
  const isClean = async (ticketId: string): Promise<boolean> =>
    bodyOf<LogCheck>(await test.home.support.get(`/tickets/${ticketId}/log/check`), 200).isClean;

  it('is decided anew with a correction, in one transaction; the log stays clean', async () => {
    const { technician } = test.home;
    const ticketId = await retested();
    const judged = bodyOf<Ticket>(await send(technician, ticketId, { type: 'judgeRetest' }), 200);
    expect(judged.triage.changes.at(-1)?.judgement?.verdict).toBe('cleared');
    const watchId = judged.triage.watches.at(-1)?.id ?? '';
    const key = randomUUID();
    const command = { type: 'voidWatch', watchId, reason: 'The player was paused' };
    const sendOnce = () => technician.post(`/tickets/${ticketId}/commands`, { body: command, key });
    const corrected = bodyOf<Ticket>(await sendOnce(), 200);
    expect(corrected.state).toBe('substitute.applied');
    expect(corrected.triage.changes.at(-1)).toMatchObject({
      judgement: null,
      earlierJudgements: [{ verdict: 'cleared', superseded: { because: 'correction' } }],
    });
    expect(corrected.sequence).toBe(judged.sequence + 2);
    expect((await sendOnce()).body.sequence).toBe(corrected.sequence);
    expect((await eventsOf(ticketId)).slice(-2).map(({ type }) => type)).toEqual([
      'voidWatch',
      'judgementRevised',
    ]);
    expect(await isClean(ticketId)).toBe(true);
    const timeline = await technician.get(`/tickets/${ticketId}/timeline`);
    expect(bodyOf<{ items: object[] }>(timeline, 200).items.length).toBeGreaterThan(0);
  });

  it('is not overruled unseen: a step on another outcome is refused with both, and changes nothing', async () => {
    const { technician } = test.home;
    const ticketId = await retested();
    const before = (await eventsOf(ticketId)).length;
    const shown = { verdict: 'persists' };
    const refused = await send(technician, ticketId, { type: 'judgeRetest', shown });
    expect([refused.status, refused.body.type]).toEqual([409, '/problems/outcome-differs']);
    expect(refused.body.outcomes).toEqual({ of: 'judgeRetest', shown, decided: { verdict: 'cleared' } });
    expect(await eventsOf(ticketId)).toHaveLength(before);
    const { decided } = refused.body.outcomes;
    const taken = bodyOf<Ticket>(
      await send(technician, ticketId, { type: 'judgeRetest', shown: decided }),
      200,
    );
    expect(taken.triage.changes.at(-1)?.judgement?.verdict).toBe('cleared');
    expect((await eventsOf(ticketId)).at(-1)).not.toHaveProperty('payload.shown');
  });
});
