import type { BrowserContext, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { firm, firmZone } from '../../seed/firm.ts';
import { expectStatus, overHttp, signIn } from '../../seed/session.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { faultsInEveryLook } from './checks.ts';
import { keepScreenshot, openStage, type Stage, signInOn, waitForShell } from './stage.ts';

const minuteMs = 60_000;

describe('what was recorded wrongly, or decided otherwise', () => {
  let stage: Stage;
  let context: BrowserContext;
  let page: Page;
  beforeEach(async () => {
    stage = await openStage();
    context = await stage.openDevice('phone', 'light', 'kept');
    await context.clock.install({ time: new Date(Date.now() - 5 * 3_600_000) });
    page = await context.newPage();
    await signInOn(page, 'brask');
    await page
      .getByRole('main')
      .getByRole('link', { name: /Family Corrowin/ })
      .click();
    await page.getByRole('link', { name: 'Go on with the triage' }).click();
    await heading('Look through the audit').waitFor();
    await page.getByText('Receiver IN 3').first().waitFor();
  });
  afterEach(() => stage.close());

  const heading = (name: string | RegExp) => page.getByRole('heading', { level: 1, name });
  const press = (name: string | RegExp) => page.getByRole('button', { name }).first().click();
  const allSent = () => page.getByText('All sent').waitFor();
  async function pass(minutes: number): Promise<void> {
    await allSent();
    await context.clock.fastForward(minutes * minuteMs);
  }

  it('is put right on the phone: a time, and a watch that was none', async () => {
    await press('I have looked through it');
    await page.getByLabel('Building work').check();
    await press('That is what they say');
    await press('Yes: record it as found');
    await press('Start watching');
    await heading('Watching for the fault, nothing changed').waitFor();
    await pass(20);
    await press('It happened');
    await page.locator('.watch-count', { hasText: '1' }).waitFor();
    await pass(20);
    await press('End the watch');
    await page.getByRole('link', { name: 'Put right what was watched' }).click();
    await heading('What was watched').waitFor();
    await page.getByText('seen once').waitFor();

    await press(/^Other time/);
    const time = page.getByLabel('Time', { exact: true });
    await time.fill('00:00:01');
    await press('Put the time right');
    await page.getByRole('alert').waitFor();
    await keepScreenshot(page, 'watches-time');
    const moved = new Date((await page.evaluate<number>('Date.now()')) - 25 * minuteMs);
    await time.fill(moved.toLocaleTimeString('en-GB', { timeZone: firmZone }));
    await press('Put the time right');
    await page.getByText(/put right, was/).waitFor();

    await press('Let it not count');
    await keepScreenshot(page, 'watches-void');
    await page.getByRole('dialog').getByRole('button', { name: 'Let it not count' }).click();
    await page.getByText(/does not count/).waitFor();
    expect(await faultsInEveryLook(page, 'watches')).toEqual([]);
    await keepScreenshot(page, 'watches');
    await allSent();
    await page.getByRole('link', { name: 'Back to the question' }).click();
    await heading('Watch for the fault, and touch nothing').waitFor();
    expect(await page.getByRole('button', { name: /^Seen/ }).count()).toBe(0);
  });

  it('takes a page and a setting that the plan did not ask for, and a look that was wrong back', async () => {
    await press('I have looked through it');
    await page.getByLabel('Building work').check();
    await press('That is what they say');
    await press('Yes: record it as found');
    await heading('Watch for the fault, and touch nothing').waitFor();
    await page.getByRole('link', { name: 'What was looked at, and more' }).click();
    await heading('What was looked at').waitFor();
    await page.getByLabel('Device').selectOption({ label: 'Receiver' });
    await page.getByRole('group', { name: 'It receives' }).getByLabel('Resolution').selectOption('3840×2160');
    expect(await faultsInEveryLook(page, 'looks-page')).toEqual([]);
    await keepScreenshot(page, 'looks-page');
    await press('Keep this reading');
    await page.getByRole('button', { name: 'Let it not count' }).waitFor();

    await page.getByLabel('Device').selectOption({ label: 'Receiver' });
    await page.getByLabel('What to look at').selectOption('setting');
    await press('Keep this setting');
    await page.getByText('Say which setting').waitFor();
    await page.getByLabel('Setting, as its menu names it').fill('Video conversion');
    await page.getByLabel('It is set to').fill('on');
    await page.getByLabel(/^It should be/).fill('off');
    await page.reload();
    // Half-typed, and still there.
    await page.getByLabel('Device').selectOption({ label: 'Receiver' });
    await page.getByLabel('What to look at').selectOption('setting');
    await expect
      .poll(() => page.getByLabel('Setting, as its menu names it').inputValue())
      .toBe('Video conversion');
    await press('Keep this setting');
    await expect.poll(() => page.getByRole('button', { name: 'Let it not count' }).count()).toBe(2);
    await press('Let it not count');
    await page.getByRole('dialog').getByRole('button', { name: 'Let it not count' }).click();
    await page.getByText(/does not count/).waitFor();
    await keepScreenshot(page, 'looks-put-right');
    await allSent();
    const { looks } = await asSent();
    expect(
      looks.map(({ what: { kind, deviceId }, withdrawn }) => [kind, deviceId, withdrawn !== null]),
    ).toEqual([
      ['signal', 'receiver', false],
      ['setting', 'receiver', true],
    ]);
  });

  async function asSent(): Promise<Ticket['triage']> {
    const brask = await signIn(overHttp(stage.base), firm.handle, `brask@${firm.handle}.example`);
    const id = new URL(page.url()).pathname.split('/')[3];
    return expectStatus(await brask.get<Ticket>(`/tickets/${id}`), 200).triage;
  }

  it('stops in the outbox where the server finds another outcome, and goes on with the server’s', async () => {
    await waitForShell(page);
    await context.setOffline(true);
    await press('I have looked through it');
    await heading('What has changed since it last worked?').waitFor();
    await raiseFirmwareLevel();
    await context.setOffline(false);
    await page.getByRole('link', { name: /^Outbox/ }).click();
    await page.getByText('The outcome is another').waitFor();
    await keepScreenshot(page, 'outcome-differs');
    expect(await faultsInEveryLook(page, 'outcome-differs')).toEqual([]);
    await press('Take the server’s outcome');
    await allSent();
    await page.getByText('Everything you did has reached the server.').waitFor();
  });

  /** An admin asks more of a device than it has, so that the audit finds more than the phone was shown. */
  async function raiseFirmwareLevel(): Promise<void> {
    const admin = await signIn(overHttp(stage.base), firm.handle, `runa@${firm.handle}.example`);
    const level = { model: 'Brindmar P-24', minimum: '99.0' };
    expectStatus(await admin.post('/firmware-levels', level), 201);
  }
});
