import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlanReply } from '../../shared/contract/plan.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { filledIn } from '../../state-machines/triage/plan/fill-in.ts';
import type { TestApp } from '../support/test-app.ts';
import { databaseKinds } from '../support/test-database.ts';
import { accepted, bodyOf, type Command, openTestTicket } from '../support/tickets.ts';
import { link } from './cases.ts';
import { openCasesApp } from './play.ts';

// The cables behind the processor and before it are both bad: the first takes ten occurrences of twelve with it.
describe.each(databaseKinds())('two faults, over HTTP and the %s database', (kind) => {
  let test: TestApp;
  let ticketId: string;
  let nowMs = Date.parse('2026-11-02T08:00:00.000Z');
  beforeAll(async () => {
    test = await openCasesApp(kind);
    ({ ticketId } = await openTestTicket(test));
    nowMs = Date.now();
    test.setNow(new Date(nowMs));
  });
  afterAll(() => test.close());

  function pass(minutes: number): void {
    nowMs += minutes * 60_000;
    test.setNow(new Date(nowMs));
  }
  const send = (command: Command): Promise<Ticket> => accepted(test.home.technician, ticketId, command);
  const plan = async (): Promise<PlanReply> =>
    bodyOf<PlanReply>(await test.home.technician.get(`/tickets/${ticketId}/plan`), 200);
  /** Takes the plan's first offer, which has to be of that type. */
  async function takeFirst(type: string): Promise<Ticket> {
    const offer = (await plan()).offers[0];
    if (offer === undefined) throw new Error('nothing is offered');
    expect(offer.steps.map((step) => step.type)).toContain(type);
    let ticket: Ticket | null = null;
    const said = Object.fromEntries(offer.toSay.map((path) => [path, 'As seen']));
    for (const command of filledIn(offer, said)) ticket = await send(command);
    if (ticket === null) throw new Error('an offer without a step');
    return ticket;
  }
  async function watch(minutes: number, occurrences: number, more: object = {}): Promise<void> {
    await send({ type: 'startWatch', ...more });
    for (let at = 1; at <= occurrences; at += 1) {
      pass(minutes / (occurrences + 1));
      await send({ type: 'recordOccurrence', ...('menuDeviceId' in more ? { menu: 'vanished' } : {}) });
    }
    pass(minutes / (occurrences + 1));
    await send({ type: 'endWatch' });
  }
  async function replaceCable(linkId: string, minutes: number, occurrences: number): Promise<void> {
    await send({
      type: 'declareChange',
      kind: 'replaceCable',
      target: link(linkId),
      expected: 'It stays away',
    });
    await send({ type: 'applyChange' });
    await watch(minutes, occurrences);
    await send({ type: 'judgeRetest' });
  }

  it('end at both truths: one stays as one of perhaps two, the other is named', async () => {
    await send({ type: 'reviewAudit', chainVersion: 1 });
    await send({ type: 'answerWhatChanged', answers: [{ kind: 'nothing' }] });
    await send({ type: 'recordAsFound', chainVersion: 1 });
    await watch(120, 12);
    await send({ type: 'acceptReproduction' });
    await watch(15, 1, { menuDeviceId: 'processor' });
    await send({ type: 'concludeSide', deviceId: 'processor' });
    await send({ type: 'beginSubstitution' });

    await replaceCable('L4', 120, 2);
    expect((await plan()).sentence.code).toBe('changeMadeItRarer');
    const kept = await takeFirst('keepChange');
    expect(kept).toMatchObject({ state: 'reproduce', triage: { round: 2 } });
    expect(kept.triage.changes[0]).toMatchObject({ status: 'kept', target: link('L4') });

    const { twoFaults, suspects } = await plan();
    expect(twoFaults?.chance).toBe(kept.triage.changes[0]?.oneOfTwo?.chance);
    // What stays was there while the fault came, and is suspected less than it was.
    expect(suspects[0]?.component).not.toBe('link:L4');

    await send({ type: 'acceptReproduction' });
    await send({ type: 'goOnWithoutSide', reason: 'The other one comes too rarely for a menu' });
    await replaceCable('L5', 600, 0);
    const cleared = await takeFirst('keepChange');
    const [, second] = cleared.triage.changes;
    expect(second).toMatchObject({ status: 'kept', oneOfTwo: null, judgement: { verdict: 'cleared' } });
    const named = await takeFirst('nameCulprit');
    expect(named.triage.culprit?.place).toEqual(link('L5'));

    expect(named.triage.changes.map(({ target, status }) => [target, status])).toEqual([
      [link('L4'), 'kept'],
      [link('L5'), 'kept'],
    ]);
  });
});
