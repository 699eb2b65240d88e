import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { firm } from '../../seed/firm.ts';
import { overHttp, type Session, signIn } from '../../seed/session.ts';
import type { EvidenceItem } from '../../shared/contract/evidence.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { fromBaselineToChanges, recordBaseline, technicianOn } from './bring-to-changes.ts';
import { faultsInEveryLook } from './checks.ts';
import { keepScreenshot, openStage, type Stage, waitMs } from './stage.ts';

const pixel = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);

describe('the camera, and what the case still lacks', () => {
  let stage: Stage;
  let technician: Session;
  let ticketId: string;
  beforeAll(async () => {
    stage = await openStage();
    ({ technician, ticketId } = await technicianOn(stage));
  });
  afterAll(() => stage.close());
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  /** Whether a part begins within the window, clear of what sticks to its edges. */
  const isLedTo = (page: Page, part: string) =>
    page.evaluate(`(() => {
      const { top } = document.getElementById('${part}').getBoundingClientRect();
      return top >= 0 && top < innerHeight * 0.75;
    })()`);
  const camera = (page: Page) => page.locator('.question-photo input[type=file]');
  const photos = async (by: Session, of: string) => {
    const { body } = await by.get<{ items: EvidenceItem[] }>(`/tickets/${of}/evidence`);
    return body.items.filter(({ kind }) => kind === 'photo');
  };
  /** Every way that the list has, each gone. */
  const goEachWay = async (least: number) => {
    const page = await stage.signedIn('brask', 'phone');
    const open = async () => {
      await page.goto(`/app/visits/${ticketId}`);
      await page.locator('#missing .missing').first().waitFor();
    };
    await open();
    await keepScreenshot(page, 'still-missing');
    const hrefs = (await page.evaluate(
      "[...new Set([...document.querySelectorAll('#missing a[href]')].map((link) => link.getAttribute('href')))]",
    )) as string[];
    expect(hrefs.length).toBeGreaterThanOrEqual(least);
    for (const href of hrefs) {
      await open();
      await page.locator(`#missing a[href="${href}"]`).last().tap();
      const [path = '', part] = href.split('#');
      if (path !== '') await page.waitForURL(`**${path}*`);
      await page.getByRole('heading', { level: 1 }).waitFor();
      if (part === undefined) continue;
      const place = page.locator(`#${part}`);
      await place.waitFor();
      await expect.poll(() => isLedTo(page, part), { timeout: waitMs, message: href }).toBe(true);
      const isFolded = (await page.locator(`details#${part}:not([open])`).count()) > 0;
      expect(isFolded, href).toBe(false);
    }
    return page;
  };
  it('leads from each line to the place where it is got, before anything is known', async () => {
    await goEachWay(3);
  });

  it('leads from the question to the list', async () => {
    const page = await stage.signedIn('brask', 'phone');
    await page.goto(`/app/visits/${ticketId}/triage`);
    await page.locator('.more a[href$="#missing"]').tap();
    const list = page.locator('#missing');
    await list.waitFor();
    await expect.poll(() => isLedTo(page, 'missing'), { timeout: waitMs }).toBe(true);
  });

  it('has the camera beside every question, for several in a row', async () => {
    const page = await stage.signedIn('brask', 'phone');
    const takes = async (name: string) => {
      await camera(page).waitFor({ state: 'attached' });
      expect(await camera(page).getAttribute('capture'), name).toBe('environment');
      expect(await page.locator('.question-photo').count(), name).toBe(1);
    };
    const at = async (path: string) => {
      await page.goto(`/app/visits/${ticketId}/triage${path}`);
      await page.getByRole('heading', { level: 1 }).waitFor();
      await takes(path);
    };
    await at('');
    for (const count of [1, 2]) {
      await camera(page).setInputFiles({ name: `${count}.png`, mimeType: 'image/png', buffer: pixel });
      await page
        .locator('.question-photo')
        .getByText(new RegExp(`${count} .*kept`))
        .waitFor();
    }
    await page.getByText('All sent').waitFor();
    await expect.poll(async () => (await photos(technician, ticketId)).length, { timeout: waitMs }).toBe(2);
    await recordBaseline(technician, ticketId);
    for (const path of ['', '/looks', '/wait', '/escalate']) await at(path);
  });

  it('has it while a watch runs, too, and what is seen then belongs to the watch', async () => {
    const tuli = await signIn(overHttp(stage.base), firm.handle, `tuli@${firm.handle}.example`);
    const { items } = (await tuli.get<{ items: Ticket[] }>('/tickets?assigneeId=me&state=open')).body;
    const watched = items[0]?.id ?? '';
    const page = await stage.signedIn('tuli', 'phone');
    await page.goto(`/app/visits/${watched}/triage`);
    await page.locator('.presses').waitFor();
    await keepScreenshot(page, 'watch-with-camera');
    expect(await faultsInEveryLook(page, 'watch with the camera')).toEqual([]);
    await camera(page).setInputFiles({ name: 'seen.png', mimeType: 'image/png', buffer: pixel });
    await page.getByText('All sent').waitFor();
    const ofWatch = async () => (await photos(tuli, watched)).filter(({ tie }) => tie.watchId !== null);
    await expect.poll(async () => (await ofWatch()).length, { timeout: waitMs }).toBe(1);
  });

  it('leads from each line once the side is known, and to the camera for each view of a cable', async () => {
    await fromBaselineToChanges(technician, ticketId);
    const page = await goEachWay(3);
    await page.goto(`/app/visits/${ticketId}`);
    const views = page.locator('#missing input[type=file]');
    await views.first().waitFor({ state: 'attached' });
    for (const input of await views.all()) expect(await input.getAttribute('capture')).toBe('environment');
  });
});
