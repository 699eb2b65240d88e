import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Offer, PlanReply } from '../../../shared/contract/plan.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { filledIn } from '../../../state-machines/index.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import {
  accepted,
  bodyOf,
  bringToReproduce,
  openTestTicket,
  type TestTicket,
} from '../../support/tickets.ts';

const hdr = { kind: 'signal', hdr: 'static', encoding: 'ycbcr422', bitsPerComponent: 12 };
const standard = { kind: 'signal', hdr: 'none', encoding: 'ycbcr422', bitsPerComponent: 8 };
/** What the pages say in a house whose receiver loses HDR. */
const pages: Record<string, object> = {
  player: { kind: 'read', sends: hdr },
  streamer: { kind: 'read', sends: hdr },
  receiver: { kind: 'read', receives: hdr, sends: standard },
  processor: { kind: 'read', receives: standard, sends: standard },
  projector: { kind: 'read', receives: standard },
  television: { kind: 'read', receives: standard },
};

describe.each(databaseKinds())('a lost HDR, on the %s database', (kind) => {
  let test: TestApp;
  let ticket: TestTicket;
  beforeAll(async () => {
    test = await openTestApp(kind);
    ticket = await openTestTicket(test);
  });
  afterAll(() => test.close());

  const tell = (command: { type: string } & Record<string, unknown>): Promise<Ticket> =>
    accepted(test.home.technician, ticket.ticketId, command);
  const planOf = async (): Promise<PlanReply> =>
    bodyOf<PlanReply>(await test.home.technician.get(`/tickets/${ticket.ticketId}/plan`), 200);
  const deviceOf = (offer: Offer): string =>
    (offer.steps[0] as { what?: { deviceId?: string } } | undefined)?.what?.deviceId ?? '';

  it('is found by reading pages as the plan asks, three at most, and no menu is asked for', async () => {
    const symptom = { kind: 'noHdr', perHour: null, lastsS: null, pattern: { kind: 'always' } };
    await tell({ type: 'amendIntake', symptom });
    await bringToReproduce(test.home.technician, ticket.ticketId);
    await tell({ type: 'startWatch' });
    await tell({ type: 'recordOccurrence' });
    await tell({ type: 'endWatch' });
    await tell({ type: 'acceptReproduction' });
    let looks = 0;
    for (;;) {
      const [offer] = (await planOf()).offers;
      if (offer === undefined) throw new Error('the plan offers nothing');
      const [step] = offer.steps;
      if (step?.type !== 'recordLook') {
        expect(offer.steps.map(({ type }) => type)).not.toContain('startWatch');
        expect(step).toMatchObject({ type: 'concludeSide', from: 'trace' });
        for (const each of filledIn(offer, {})) await tell(each);
        break;
      }
      looks += 1;
      expect(looks).toBeLessThanOrEqual(3);
      const said = { 'what.said': pages[deviceOf(offer)], 'what.found': { kind: 'nothingToSet' } };
      for (const each of filledIn(offer, said)) await tell(each);
    }
    const { triage } = bodyOf<Ticket>(await test.home.technician.get(`/tickets/${ticket.ticketId}`), 200);
    expect(triage.sides).toMatchObject([
      { deviceId: 'receiver', side: 'output', proof: { kind: 'trace', sendsWrong: true } },
    ]);
    const { suspects, offers } = await planOf();
    expect(suspects[0]?.component).toBe('device:receiver');
    expect(offers.map(({ steps }) => steps[0]?.type)).toContain('beginSubstitution');
  });

  it('lets the technician take a reading back, and the side falls with it', async () => {
    const { triage } = bodyOf<Ticket>(await test.home.technician.get(`/tickets/${ticket.ticketId}`), 200);
    let after: Ticket | null = null;
    for (const { id } of triage.looks)
      after = await tell({ type: 'withdrawLook', lookId: id, reason: 'It was another title' });
    expect(after?.triage.sides).toMatchObject([{ superseded: { because: 'correction' } }]);
  });

  it('goes on without a side where nothing proves one, and says so', async () => {
    const after = await tell({ type: 'goOnWithoutSide', reason: 'No page can be read here' });
    expect(after.state).toBe('substitute.ready');
    expect(after.missing.filter(({ item }) => item === 'side')).toMatchObject([
      { text: { code: 'workedWithoutSide' } },
    ]);
  });
});
