import type { BrowserContext, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { firm } from '../../seed/firm.ts';
import { expectStatus, overHttp, signIn } from '../../seed/session.ts';
import { faultsInEveryLook } from './checks.ts';
import { tabTo } from './keyboard.ts';
import { keepScreenshot, type Look, openStage, type Stage, signInOn, waitForShell, waitMs } from './stage.ts';
import { type Boundary, Technician } from './technician-play.ts';

/** The phone's clock starts this long ago, and the case's hours pass on it: the server takes nothing from the future. */
const storyStartsHoursAgo = 9;

/** The line comes back, takes one step to the server, and breaks before the answer is there. */
async function loseAReply(context: BrowserContext, page: Page): Promise<void> {
  let lost = 0;
  await context.route('**/commands', async (route) => {
    if (lost > 0) return route.abort();
    lost += 1;
    await route.fetch();
    await route.abort();
    await context.setOffline(true);
  });
  await context.setOffline(false);
  await expect.poll(() => lost, { timeout: waitMs }).toBe(1);
  await page.getByText('No connection').waitFor();
  await context.unroute('**/commands');
}

/** Counts taps, those into a field to type there as well. */
async function countTaps(context: BrowserContext, page: Page): Promise<void> {
  const counting = `{
    let lastAt = -1000;
    const count = () => {
      localStorage.setItem('taps', String(Number(localStorage.getItem('taps')) + 1));
    };
    addEventListener('pointerup', () => { lastAt = performance.now(); count(); }, true);
    addEventListener('focusin', ({ target }) => {
      if (target.matches('textarea, input:not([type=radio], [type=checkbox])') && performance.now() - lastAt > 200) count();
    }, true);
  }`;
  await context.addInitScript(counting);
  await page.evaluate(counting);
}
const tapsOn = (page: Page): Promise<number> => page.evaluate("Number(localStorage.getItem('taps'))");

describe('the technician’s triage', () => {
  let stage: Stage;
  beforeEach(async () => {
    stage = await openStage();
  });
  afterEach(() => stage.close());

  async function openVisit(look: Look = 'light'): Promise<{ context: BrowserContext; page: Page }> {
    const context = await stage.openDevice('phone', look, 'kept');
    await context.clock.install({ time: new Date(Date.now() - storyStartsHoursAgo * 3_600_000) });
    const page = await context.newPage();
    await signInOn(page, 'brask');
    await page
      .getByRole('main')
      .getByRole('link', { name: /Family Corrowin/ })
      .click();
    await page.getByRole('link', { name: 'Go on with the triage' }).waitFor();
    return { context, page };
  }

  /** What the server holds of the ticket, in order; without what happened before the visit. */
  async function logOf(ticketId: string): Promise<{ type: string; payload: Record<string, unknown> }[]> {
    const brask = await signIn(overHttp(stage.base), firm.handle, `brask@${firm.handle}.example`);
    type Logged = { type: string; payload: Record<string, unknown> };
    const { items } = expectStatus(await brask.get<{ items: Logged[] }>(`/tickets/${ticketId}/log`), 200);
    return items.slice(1);
  }

  const ticketIn = (page: Page): string => /visits\/([0-9a-f-]{36})/.exec(page.url())?.[1] ?? '';

  it('leads from the visit to second line, one question a screen', async () => {
    const { context, page } = await openVisit();
    const faults: string[] = [];
    const look = async (shown: Page, name: string) => {
      await keepScreenshot(shown, `triage-${name}`);
      faults.push(...(await faultsInEveryLook(shown, name)));
    };
    const technician = new Technician(page, {
      context,
      boundary: async (same) => same,
      look,
      ownChoice: /^Limit the output bandwidth.*Cinema processor/,
      apart: true,
    });
    await technician.playToEscalation();
    await page.getByText('All sent').waitFor();
    const log = await logOf(ticketIn(page));
    expect(log.map(({ type }) => type)).toEqual(technician.steps);
    expect(faults).toEqual([]);
  });

  it('loses and doubles nothing when the line is cut at every step, the page reloaded and the tab killed', async () => {
    const { context, page } = await openVisit();
    await waitForShell(page);
    await page.getByRole('link', { name: 'Go on with the triage' }).click();
    await page.getByRole('heading', { name: 'Look through the audit' }).waitFor();
    await page.getByText('Receiver IN 3').first().waitFor();
    await page.goBack();
    await context.setOffline(true);
    let steps = 0;
    const boundary: Boundary = async (before) => {
      steps += 1;
      const address = before.url();
      if (steps % 4 === 1) await before.reload();
      if (steps % 4 === 2) {
        await before.close();
        const after = await context.newPage();
        await after.goto(address);
        await after.getByRole('heading', { level: 1 }).waitFor();
        return after;
      }
      if (steps % 4 === 3) await loseAReply(context, before);
      if (steps % 4 === 0) {
        await context.setOffline(false);
        await before.getByText('All sent').waitFor();
        await context.setOffline(true);
      }
      await before.getByRole('heading', { level: 1 }).waitFor();
      return before;
    };
    const technician = new Technician(page, {
      context,
      boundary,
      look: async () => undefined,
      ownChoice: null,
    });
    await technician.playToEscalation();
    await context.setOffline(false);
    const last = technician.screen;
    await last.getByText('All sent').waitFor({ timeout: 120_000 });
    await last.getByRole('heading', { name: 'Second line has the case' }).waitFor();
    const log = await logOf(ticketIn(last));
    expect(log.map(({ type }) => type)).toEqual(technician.steps);
    const ids = log.flatMap(({ payload }) =>
      ['watchId', 'occurrenceId', 'changeId'].flatMap((name) =>
        payload[name] === undefined ? [] : [`${name} ${payload[name]}`],
      ),
    );
    expect(ids.length).toBeGreaterThan(8);
  });

  it('takes at most 30 taps from the list to the closed ticket, with every step of the way on the log', async () => {
    const { context, page } = await openVisit();
    await countTaps(context, page);
    const technician = new Technician(page, {
      context,
      boundary: async (same) => same,
      look: async () => undefined,
      ownChoice: null,
    });
    await technician.playToClose();
    // The one on the list came before the count.
    const taps = 1 + (await tapsOn(page));
    await page.getByText('All sent').waitFor();
    const log = await logOf(ticketIn(page));
    expect(log.map(({ type }) => type)).toEqual(technician.steps);
    expect(taps).toBeLessThanOrEqual(30);
  });

  it('can be worked by keyboard alone, from the list to the first occurrence', async () => {
    const page = await stage.signedIn('brask', 'phone');
    const press = async (text: RegExp, key = 'Enter') => {
      await tabTo(page, text);
      await page.keyboard.press(key);
    };
    const heading = (name: string) => page.getByRole('heading', { level: 1, name }).waitFor();
    await page.getByRole('link', { name: /Family Corrowin/ }).waitFor();
    await press(/Family Corrowin/);
    await page.getByRole('link', { name: 'Go on with the triage' }).waitFor();
    await press(/^Go on with the triage/);
    await heading('Look through the audit');
    await press(/^I have looked through it/);
    await heading('What has changed since it last worked?');
    await press(/^Building work/, 'Space');
    await press(/^That is what they say/);
    await heading('Is the chain as it is drawn?');
    await press(/^Yes: record it as found/);
    await heading('Watch for the fault, and touch nothing');
    await press(/^Start watching/);
    await heading('Watching for the fault, nothing changed');
    await press(/^It happened/);
    await page.locator('.watch-count', { hasText: '1' }).waitFor();
    await press(/^End/);
    await page.getByText('All sent').waitFor();
    const log = await logOf(ticketIn(page));
    expect(log.map(({ type }) => type)).toEqual([
      'reviewAudit',
      'answerWhatChanged',
      'recordAsFound',
      'startWatch',
      'recordOccurrence',
      'endWatch',
    ]);
  });
});
