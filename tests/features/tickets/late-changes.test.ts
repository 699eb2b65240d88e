import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlanReply } from '../../../shared/contract/plan.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import {
  accepted,
  bodyOf,
  bringToReproduce,
  bringToSubstitute,
  openTestTicket,
  send,
} from '../../support/tickets.ts';

const minutesAgo = (minutes: number): string => new Date(Date.now() - minutes * 60_000).toISOString();
const newCable = (madeAt: string) => ({
  type: 'enterLateChange',
  kind: 'replaceCable',
  target: { kind: 'link', linkId: 'L3' },
  madeAt,
  madeBy: 'The client',
  seen: 'came',
});

describe.each(databaseKinds())('changes that nobody declared, on the %s database', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  it('are entered at their true time, marked, and say in the plan that they count for less', async () => {
    const { technician } = test.home;
    const { ticketId } = await openTestTicket(test);
    await bringToReproduce(technician, ticketId);
    const madeAt = minutesAgo(120);
    const ticket = await accepted(technician, ticketId, newCable(madeAt));
    expect(ticket.triage.changes).toMatchObject([
      {
        status: 'kept',
        appliedAt: madeAt,
        judgement: null,
        enteredLate: { madeBy: 'The client', seen: 'came' },
      },
    ]);
    const suspects = bodyOf<PlanReply>(await technician.get(`/tickets/${ticketId}/plan`), 200).suspects;
    expect(JSON.stringify(suspects)).toContain('enteredLateCounts');
    const check = bodyOf<{ isClean: boolean }>(await technician.get(`/tickets/${ticketId}/log/check`), 200);
    expect(check.isClean).toBe(true);
  });

  it('are open where they are still in place and have to be put back, and then no second one is taken', async () => {
    const { technician } = test.home;
    const { ticketId } = await openTestTicket(test);
    await bringToSubstitute(technician, ticketId);
    const bypass = {
      ...newCable(minutesAgo(0)),
      kind: 'bypassDevice',
      target: { kind: 'device', deviceId: 'receiver' },
    };
    const ticket = await accepted(technician, ticketId, bypass);
    expect(ticket.state).toBe('substitute.applied');
    const refused = await send(technician, ticketId, newCable(minutesAgo(1)));
    expect(refused.status).toBe(409);
    expect((await accepted(technician, ticketId, { type: 'restoreChange' })).state).toBe('substitute.ready');
  });

  it('are refused for the future, with why', async () => {
    const { technician } = test.home;
    const { ticketId } = await openTestTicket(test);
    await bringToReproduce(technician, ticketId);
    const refused = await send(technician, ticketId, newCable(minutesAgo(-60)));
    expect(refused.body.said).toMatchObject({ code: 'lateChangeInFuture' });
  });
});
