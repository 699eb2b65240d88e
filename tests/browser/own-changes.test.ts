import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectStatus, type Session } from '../../seed/session.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { bringToChanges, technicianOn } from './bring-to-changes.ts';
import { faultsInEveryLook } from './checks.ts';
import { keepScreenshot, openStage, type Stage } from './stage.ts';

describe('a change that is not in the built-in list', () => {
  let stage: Stage;
  let technician: Session;
  let ticketId = '';
  beforeAll(async () => {
    stage = await openStage();
    ({ technician, ticketId } = await technicianOn(stage));
    await bringToChanges(technician, ticketId);
  });
  afterAll(() => stage.close());

  const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
  const faults: string[] = [];
  const look = async (page: Page, name: string) => {
    await keepScreenshot(page, `own-changes-${name}`);
    faults.push(...(await faultsInEveryLook(page, name)));
  };
  const openList = async (page: Page) => {
    await page.goto(`/app/visits/${ticketId}/triage/changes`);
    await page.getByRole('link', { name: 'Something else, in your own words' }).waitFor();
  };

  it('is added and changed by an admin, who is told what does not fit', async () => {
    const page = await stage.signedIn('runa', 'desk');
    await page.goto('/app/numbers/changes');
    await page.getByText('No kind of our own yet.').waitFor();
    await page.getByRole('button', { name: 'Add a kind of change' }).click();
    await page.getByLabel('What is it called?').fill('Clip ferrites on');
    await page.getByLabel('What is it made to?').selectOption('link');
    await page.getByLabel('Minutes to make it').fill('4');
    await page.getByLabel('What to take care of').fill('Open no housing, and clip nothing on a mains lead.');
    await page.getByLabel('What to have at hand').fill('Two ferrites');
    await page.getByRole('button', { name: 'Add a kind of change' }).click();
    await page.getByLabel('What is it called?').nth(1).fill('Clip ferrites on');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.locator('.field-error').waitFor();
    await look(page, 'refused');
    await page.getByRole('button', { name: 'Withdraw Clip ferrites on' }).nth(1).click();
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('Saved.').waitFor();
    await page.reload();
    await page.getByLabel('What to have at hand').waitFor();
    expect(await page.getByLabel('What to have at hand').inputValue()).toBe('Two ferrites');
    expect(await page.getByLabel('Chance that a fault there stays away with it').inputValue()).toBe('');
    await page.getByLabel('Chance that a fault there stays away with it').fill('0.4');
    await page.getByLabel('It may stay once the fault is gone with it').check();
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('Saved.').waitFor();
    await look(page, 'added');
    expect(faults).toEqual([]);
  });

  it('stands in the technician’s list with its caution, as does what is done to the chain as a whole', async () => {
    const page = await stage.signedIn('brask', 'phone');
    await openList(page);
    await look(page, 'list');
    await page.getByText('All others that make sense here').click();
    await look(page, 'list-unfolded');
    await page.getByRole('link', { name: /^Mains off for all, and on in order/ }).click();
    await page.getByText('never at the fuse board').waitFor();
    await page.getByRole('button', { name: 'Declare this one change' }).waitFor();
    await look(page, 'whole-chain');
    await openList(page);
    const own = page.getByRole('link', { name: /^Clip ferrites on/ }).first();
    if (!(await own.isVisible())) await page.getByText('All others that make sense here').click();
    await own.click();
    await heading(page, /^Clip ferrites on: /).waitFor();
    await page.getByText('Open no housing, and clip nothing on a mains lead.').waitFor();
    await page.getByText('Two ferrites').waitFor();
    await look(page, 'declare');
    await page.getByRole('button', { name: 'Declare this one change' }).click();
    await heading(page, /^Clip ferrites on: .*, and nothing else$/).waitFor();
    await page.getByText('Open no housing, and clip nothing on a mains lead.').waitFor();
    await look(page, 'make');
    await page.getByRole('button', { name: 'I did not make it' }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'I did not make it' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.getByText('All sent').waitFor();
    const { triage } = expectStatus(await technician.get<Ticket>(`/tickets/${ticketId}`), 200);
    expect(triage.changes.at(-1)).toMatchObject({
      kind: 'ownKind',
      status: 'withdrawn',
      own: { name: 'Clip ferrites on', setupMin: 4, keepsAway: 0.4 },
    });
    expect(faults).toEqual([]);
  });

  it('is described in words by a technician: what, where, whether it may stay, and what is expected', async () => {
    const page = await stage.signedIn('brask', 'phone', 'dark');
    await openList(page);
    await page.getByRole('link', { name: 'Something else, in your own words' }).click();
    await heading(page, 'Something else, in your own words').waitFor();
    await page.getByRole('button', { name: 'Declare this one change' }).click();
    await page.getByText('Say it in at least three letters.').waitFor();
    await look(page, 'other-empty');
    await page.getByLabel('What do you change?').fill('Turned the plug of the lamp round');
    await page.getByLabel('What do you change it at?').selectOption('device:processor');
    await page.getByText('Yes, it may stay').click();
    await look(page, 'other');
    await page.getByRole('button', { name: 'Declare this one change' }).click();
    await heading(page, /, and nothing else$/).waitFor();
    await page.getByText('Turned the plug of the lamp round').waitFor();
    await look(page, 'other-make');
    await page.getByRole('button', { name: 'It is made', exact: true }).click();
    await page.locator('.in-place').waitFor();
    await page.getByText('Turned the plug of the lamp round').waitFor();
    await look(page, 'other-in-place');
    await page.getByText('All sent').waitFor();
    const { triage } = expectStatus(await technician.get<Ticket>(`/tickets/${ticketId}`), 200);
    expect(triage.changes.at(-1)).toMatchObject({
      kind: 'otherChange',
      target: { kind: 'device', deviceId: 'processor' },
      detail: 'Turned the plug of the lamp round',
      diagnostic: false,
      status: 'applied',
    });
    expect(faults).toEqual([]);
  });

  it('is offered no longer once an admin has withdrawn it', async () => {
    const page = await stage.signedIn('runa', 'desk');
    await page.goto('/app/numbers/changes');
    await page.getByRole('button', { name: 'Withdraw Clip ferrites on' }).click();
    await page.getByText('What is withdrawn is offered no longer once you save.').waitFor();
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('Saved.').waitFor();
    const reply = await technician.get<{ items: { own: object | null }[] }>(
      `/tickets/${ticketId}/applicable-changes`,
    );
    expect(expectStatus(reply, 200).items.filter(({ own }) => own !== null)).toEqual([]);
  });
});
