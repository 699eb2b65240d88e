import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Session } from '../../seed/session.ts';
import { expectStatus } from '../../seed/session.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { fromBaselineToChanges, recordBaseline, technicianOn } from './bring-to-changes.ts';
import { faultsInEveryLook } from './checks.ts';
import { keepScreenshot, openStage, type Stage, signInOn } from './stage.ts';

const minutesAgo = (minutes: number): string => new Date(Date.now() - minutes * 60_000).toISOString();

describe('on the phone', () => {
  let stage: Stage;
  let technician: Session;
  let ticketId: string;
  beforeAll(async () => {
    stage = await openStage();
    ({ technician, ticketId } = await technicianOn(stage));
  });
  afterAll(() => stage.close());

  const record = async (): Promise<Ticket['triage']> =>
    expectStatus(await technician.get<Ticket>(`/tickets/${ticketId}`), 200).triage;
  async function openPhone() {
    const page = await (await stage.openDevice('phone', 'light')).newPage();
    await signInOn(page, 'brask');
    return page;
  }

  it('a change that somebody made before is entered in words, at its time', async () => {
    await recordBaseline(technician, ticketId);
    const page = await openPhone();
    await page.goto(`${stage.base}/app/visits/${ticketId}/triage/late-change`);
    await page.getByLabel('What was changed?').selectOption({ label: 'Something else, in words' });
    await page.getByLabel('What was it changed at?').selectOption({ index: 1 });
    await page.getByLabel('Yes, it may stay').check();
    await page.getByLabel('In words', { exact: true }).fill('The cleaner turned the rack round');
    await page.getByLabel('Who made it?').fill('The cleaner');
    await page.getByLabel('When?', { exact: true }).fill('2026-01-05T09:30');
    expect(await faultsInEveryLook(page, 'late-change')).toEqual([]);
    await keepScreenshot(page, 'late-change');
    await page.getByRole('button', { name: 'Enter it' }).click();
    await expect.poll(async () => (await record()).changes.length).toBe(1);
    expect((await record()).changes[0]).toMatchObject({
      kind: 'otherChange',
      status: 'kept',
      enteredLate: { madeBy: 'The cleaner' },
    });
    await page.context().close();
  });

  it('one that made the fault rarer stays as one of perhaps two', async () => {
    const { asFound } = await record();
    const cable = asFound?.chain.links.find(({ from }) => from.deviceId === 'processor');
    await fromBaselineToChanges(technician, ticketId);
    const at = (type: string, minutes: number, more: object = {}) =>
      technician.command(ticketId, { type, happenedAt: minutesAgo(minutes), ...more });
    await at('declareChange', 470, {
      kind: 'reseat',
      target: { kind: 'link', linkId: cable?.id },
      expected: 'It stays away',
    });
    await at('applyChange', 465);
    await at('startWatch', 460);
    await at('recordOccurrence', 300);
    await at('endWatch', 200);
    await technician.command(ticketId, { type: 'judgeRetest' });
    const page = await openPhone();
    await page.goto(`${stage.base}/app/visits/${ticketId}/triage`);
    await page.getByRole('heading', { level: 1, name: 'It comes more rarely' }).waitFor();
    await page.getByText(/perhaps there were two faults/).waitFor();
    expect(await faultsInEveryLook(page, 'one-of-two')).toEqual([]);
    await keepScreenshot(page, 'one-of-two');
    await page.getByRole('button', { name: /one of perhaps two/ }).click();
    await page.getByText(/Perhaps two faults/).waitFor();
    await keepScreenshot(page, 'one-of-two-next-round');
    await expect.poll(async () => (await record()).round).toBe(2);
    await page.context().close();
  });
});
