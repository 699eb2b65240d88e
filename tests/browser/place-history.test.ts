import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { firm } from '../../seed/firm.ts';
import { expectStatus, overHttp, type Session, signIn } from '../../seed/session.ts';
import type { ChainDocument } from '../../shared/contract/site.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { bringToChanges, technicianOn } from './bring-to-changes.ts';
import { faultsInEveryLook } from './checks.ts';
import { keepScreenshot, openStage, type Stage } from './stage.ts';

const minutesAgo = (minutes: number): string => new Date(Date.now() - minutes * 60_000).toISOString();

describe('a thing on the desk’s drawing', () => {
  let stage: Stage;
  let oda: Session;
  let ticket: Ticket;
  let laterId: string;
  let cableId: string;
  beforeAll(async () => {
    stage = await openStage();
    oda = await signIn(overHttp(stage.base), firm.handle, `oda@${firm.handle}.example`);
    const { technician, ticketId } = await technicianOn(stage);
    await bringToChanges(technician, ticketId);
    ticket = expectStatus(await technician.get<Ticket>(`/tickets/${ticketId}`), 200);
    const links = ticket.triage.asFound?.chain.links ?? [];
    cableId = links.find(({ from }) => from.deviceId === 'processor')?.id ?? '';
    const at = (type: string, minutes: number, more: object = {}) =>
      technician.command(ticketId, { type, happenedAt: minutesAgo(minutes), ...more });
    const target = { kind: 'link', linkId: cableId };
    await at('declareChange', 470, { kind: 'reseat', target, expected: 'It stays away' });
    await at('applyChange', 465);
    await at('startWatch', 460);
    await at('recordOccurrence', 450);
    await at('endWatch', 440);
    await technician.command(ticketId, { type: 'judgeRetest' });
    const { chainId, siteId } = ticket;
    const body = {
      siteId,
      chainId,
      intake: { symptom: { kind: 'sparkles' } },
      seenDuplicates: [ticketId],
    };
    laterId = expectStatus(await oda.post<{ id: string }>('/tickets', body), 201).id;
    const path = `/chains/${chainId}`;
    const { body: now, etag } = await oda.get<ChainDocument>(path);
    const changed = now.chain.links.map((one) => (one.id === cableId ? { ...one, couplers: 2 } : one));
    expectStatus(await oda.put(path, { ...now.chain, links: changed }, etag), 200);
  });
  afterAll(() => stage.close());
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  it.each(['phone', 'desk'] as const)('opens with what was before, on a %s', async (size) => {
    const page = await stage.signedIn('oda', size);
    await page.goto(`/app/tickets/${laterId}`);
    const cable = page.getByRole('button', { name: new RegExp(`^Cable ${cableId},`) });
    await cable.waitFor();
    await (size === 'phone' ? cable.tap() : cable.press('Enter'));
    const past = page.locator('.place-history > li');
    await past.nth(1).waitFor();
    const texts = await past.allTextContents();
    expect(texts).toHaveLength(2);
    expect(texts[0]).toMatch(/Version 2 of the chain.*Couplers/s);
    expect(texts[1]).toMatch(new RegExp(`Ticket no\\. ${ticket.number}.*still there`, 's'));
    expect(await faultsInEveryLook(page, 'what was before at a cable')).toEqual([]);
    await keepScreenshot(page, 'place-history');
    await past.getByRole('link', { name: `Ticket no. ${ticket.number}` }).click();
    await page.waitForURL(`**/app/tickets/${ticket.id}`);
    // The ticket's own change is no history on its own screen: the version is.
    await page.getByRole('button', { name: new RegExp(`^Cable ${cableId},`) }).press('Enter');
    await past.first().waitFor();
    expect(await past.count()).toBe(1);
  });
});
