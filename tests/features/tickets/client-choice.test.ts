import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { TicketSummary } from '../../../shared/contract/ticket.ts';
import { picturesToCheck } from '../../../state-machines/triage/rules/leaving.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { accepted, bodyOf, bringToSubstitute, openTestTicket, send } from '../../support/tickets.ts';

const day = 86_400_000;
const place = { kind: 'link', linkId: 'L4' };
const choice = {
  type: 'recordChoice',
  way: 'replace',
  offered: [
    { way: 'replace', minutes: 40, days: 14, sureness: 0.6, change: { kind: 'replaceCable', target: place } },
    { way: 'handOver', minutes: 60, days: 2, sureness: 0.5, change: null },
  ],
  chosenBy: 'Mrs Overwell',
};
const replace = { type: 'replaceOnSuspicion', place, what: 'A new optical cable' };
const pictures = picturesToCheck(homeCinema()).map((pair) => ({ ...pair, answer: 'notChecked' }));
const check = { type: 'checkBeforeLeaving', pictures, sound: 'works', usualStart: 'works' };

describe.each(databaseKinds())('the client’s choice, on the %s database', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  const inSubstitute = async (): Promise<string> => {
    const { ticketId } = await openTestTicket(test);
    await bringToSubstitute(test.home.technician, ticketId);
    return ticketId;
  };
  const due = async (): Promise<TicketSummary[]> => {
    const by = new Date(Date.now() + 15 * day).toISOString();
    return bodyOf<{ items: TicketSummary[] }>(await test.home.dispatcher.get(`/tickets?dueBy=${by}`), 200)
      .items;
  };

  it('comes before a replacement on suspicion, which is unproven, and asked after in fourteen days', async () => {
    const { technician, dispatcher, support } = test.home;
    const ticketId = await inSubstitute();
    const refused = await send(technician, ticketId, replace);
    expect([refused.status, refused.body.said]).toMatchObject([409, { code: 'clientChoosesFirst' }]);
    await accepted(technician, ticketId, choice);
    const replaced = await accepted(technician, ticketId, replace);
    expect(replaced.triage).toMatchObject({
      culprit: null,
      remedy: { kind: 'onSuspicion', chance: 0.6, acceptedBy: 'Mrs Overwell' },
    });
    await accepted(technician, ticketId, { type: 'finishRemedy', asLeftChainVersion: 1 });
    await accepted(technician, ticketId, check);
    expect((await accepted(technician, ticketId, { type: 'close' })).due).toMatchObject({ kind: 'followUp' });
    expect((await due()).map(({ id }) => id)).toContain(ticketId);
    const asked = await accepted(dispatcher, ticketId, { type: 'recordFollowUp', heard: 'held' });
    expect(asked.triage.choices).toMatchObject([{ outcome: { kind: 'held' } }]);
    expect((await due()).map(({ id }) => id)).not.toContain(ticketId);
    const log = bodyOf<{ isClean: boolean }>(await support.get(`/tickets/${ticketId}/log/check`), 200);
    expect(log.isClean).toBe(true);
  });

  it('before leaving, every source has an answer on every display', async () => {
    const { technician } = test.home;
    const ticketId = await inSubstitute();
    await accepted(technician, ticketId, choice);
    await accepted(technician, ticketId, replace);
    await accepted(technician, ticketId, { type: 'finishRemedy', asLeftChainVersion: 1 });
    const refused = await send(technician, ticketId, { ...check, pictures: pictures.slice(1) });
    expect(refused.body.said).toMatchObject({ code: 'picturesLeftOut', values: { count: 1 } });
    const checked = await accepted(technician, ticketId, check);
    expect(checked.triage.leavingCheck).toMatchObject({ sound: 'works', pictures });
  });
});
