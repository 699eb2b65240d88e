import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ChainAudit, ChainDocument } from '../../../shared/contract/site.ts';
import type { TicketEvent } from '../../../shared/contract/ticket.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { accepted, bodyOf, bringToSubstitute, openTestTicket, send } from '../../support/tickets.ts';

const place = { kind: 'link', linkId: 'L4' };
const cable = {
  kind: 'cable',
  linkId: 'L4',
  construction: 'activeOptical',
  lengthM: 12,
  installedOn: '2026-11-30',
  fittedRight: true,
};

describe.each(databaseKinds())('the chain as a repair leaves it, on the %s database', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  /** A cable is about to be replaced. */
  async function inRemedy() {
    const { ticketId, chainId } = await openTestTicket(test);
    const { technician } = test.home;
    await bringToSubstitute(technician, ticketId);
    const offered = [{ way: 'replace', minutes: 40, days: 14, sureness: 0.6, change: null }];
    await accepted(technician, ticketId, {
      type: 'recordChoice',
      way: 'replace',
      offered,
      chosenBy: 'N. N.',
    });
    await accepted(technician, ticketId, { type: 'replaceOnSuspicion', place, what: 'An optical cable' });
    return { ticketId, chainId };
  }
  /** Somebody describes a cable otherwise. */
  async function redescribe(chainId: string, linkId: string, values: object): Promise<void> {
    const { dispatcher } = test.home;
    const reply = await dispatcher.get(`/chains/${chainId}`);
    const { chain } = bodyOf<ChainDocument>(reply, 200);
    const links = chain.links.map((one) => (one.id === linkId ? { ...one, ...values } : one));
    const body = { ...chain, links };
    bodyOf(await dispatcher.put(`/chains/${chainId}`, { body, ifMatch: reply.headers.etag ?? '' }), 200);
  }
  const chainNow = async (chainId: string): Promise<ChainDocument> =>
    bodyOf<ChainDocument>(await test.home.technician.get(`/chains/${chainId}`), 200);

  it('is a version of its own with the part that was put in, which the next audit goes by', async () => {
    const { technician } = test.home;
    const { ticketId, chainId } = await inRemedy();
    const rulesAt = async (): Promise<string[]> =>
      bodyOf<ChainAudit>(await technician.get(`/chains/${chainId}/audit?duringTriage=true`), 200)
        .findings.filter((finding) => finding.place.kind === 'link' && finding.place.linkId === 'L4')
        .map(({ rule }) => rule);
    await redescribe(chainId, 'L4', { sinkEnd: { needsPower: false, powered: 'unknown', seated: 'no' } });
    const before = await rulesAt();
    const done = await accepted(technician, ticketId, {
      type: 'finishRemedy',
      asLeftChainVersion: 1,
      installed: [cable],
    });
    expect(done.triage.asLeft).toMatchObject({ chainVersion: 3 });
    const { version, chain, changes } = await chainNow(chainId);
    expect([version, changes.map(({ code }) => code)]).toEqual([
      3,
      expect.arrayContaining(['lengthChanged']),
    ]);
    const link = chain.links.find(({ id }) => id === 'L4');
    expect(link).toMatchObject({
      construction: 'activeOptical',
      lengthM: 12,
      installedOn: '2026-11-30',
      direction: 'asMarked',
      sinkEnd: { seated: 'yes' },
    });
    expect(done.triage.asLeft?.chain).toEqual(chain);
    expect(before.length).toBeGreaterThan(0);
    expect(await rulesAt()).not.toEqual(expect.arrayContaining(before));
    const log = bodyOf<{ items: TicketEvent[] }>(await technician.get(`/tickets/${ticketId}/log`), 200);
    expect(log.items.at(-1)?.type).toBe('finishRemedy');
    const check = await test.home.support.get(`/tickets/${ticketId}/log/check`);
    expect(bodyOf<{ isClean: boolean }>(check, 200).isClean).toBe(true);
    // and a reopened ticket begins with what is there now
    await accepted(technician, ticketId, { type: 'close' });
    const again = await accepted(technician, ticketId, { type: 'reopen', reason: 'Seen again' });
    expect(again.triage.asFound).toMatchObject({ chainVersion: 3, chain });
  });

  it('goes on top of what somebody else described meanwhile', async () => {
    const { technician } = test.home;
    const { ticketId, chainId } = await inRemedy();
    await redescribe(chainId, 'L3', { lengthM: 7 });
    const done = await accepted(technician, ticketId, {
      type: 'finishRemedy',
      asLeftChainVersion: 1,
      installed: [cable],
    });
    expect(done.triage.asLeft).toMatchObject({ chainVersion: 3 });
    const lengths = (await chainNow(chainId)).chain.links.map(({ id, lengthM }) => [id, lengthM]);
    expect(lengths).toEqual(
      expect.arrayContaining([
        ['L3', 7],
        ['L4', 12],
      ]),
    );
  });

  it('refuses a part at a place that there is not, and leaves the chain as it was', async () => {
    const { ticketId, chainId } = await inRemedy();
    const refused = await send(test.home.technician, ticketId, {
      type: 'finishRemedy',
      asLeftChainVersion: 1,
      installed: [{ ...cable, linkId: 'L99' }],
    });
    expect(refused.body.said).toMatchObject({ code: 'placeNotInChain' });
    expect((await chainNow(chainId)).version).toBe(1);
  });
});
