import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { plantOrganisations, plantSites } from '../../seed/plant-demo.ts';
import { overHttp } from '../../seed/session.ts';
import { readConfig } from '../../src/config.ts';
import { type RunningServer, startServer } from '../../src/start.ts';
import { deviceIn, keepScreenshot, type MemberName, openBrowser, type Size, signInOn } from './stage.ts';
import { Technician } from './technician-play.ts';

/** The day's hours pass on a clock that server and screens share; it begins this long ago. */
const beginsHoursAgo = 10;

describe('the demo case through screens, three people signed in at once', () => {
  let server: RunningServer;
  let browser: Browser;
  let dataFolder: string;
  let leaptMs = 0;
  const contexts: BrowserContext[] = [];
  const storyNow = () => new Date(Date.now() - beginsHoursAgo * 3_600_000 + leaptMs);

  beforeAll(async () => {
    dataFolder = await mkdtemp(join(tmpdir(), 'halfsplit-three-'));
    const env = { LOG_LEVEL: 'error', PORT: '0', HALFSPLIT_DATA: dataFolder, HALFSPLIT_HEARTBEAT_S: '2' };
    const config = readConfig({ ...process.env, ...env, DATABASE_URL: undefined });
    server = await startServer(config, { now: storyNow });
    await plantOrganisations(server.services);
    await plantSites(overHttp(server.address));
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await server?.stop();
    await rm(dataFolder, { recursive: true, force: true });
  });

  async function arrive(name: MemberName, size: Size): Promise<{ context: BrowserContext; page: Page }> {
    const context = await deviceIn(browser, server.address, size);
    await context.clock.install({ time: storyNow() });
    contexts.push(context);
    const page = await context.newPage();
    await signInOn(page, name);
    return { context, page };
  }

  /** Hours pass for everybody: on the server, and on each screen. */
  async function leap(ms: number): Promise<void> {
    leaptMs += ms;
    for (const context of contexts) await context.clock.fastForward(ms);
  }

  async function takeCall(page: Page): Promise<void> {
    await page.getByRole('combobox', { name: 'Who is on the line?' }).fill('corrow');
    await page.getByRole('option', { name: /Corrowin/ }).waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('radio', { name: 'Drop-outs' }).check();
    await page.getByText(/^More to ask/).click();
    await page.getByRole('group', { name: 'How often?' }).getByLabel('Number').fill('3');
    const sources = page.getByRole('group', { name: 'Which sources show it?' });
    await sources.getByRole('checkbox', { name: 'Disc player' }).check();
    await sources.getByRole('checkbox', { name: 'Streaming box' }).check();
    await page.getByRole('group', { name: 'On which display?' }).getByLabel('Projector').check();
    await page.getByRole('radio', { name: 'high rate or resolution only' }).check();
    await page.getByRole('radio', { name: 'now and then, nobody knows when' }).check();
    await page.getByRole('button', { name: 'Open the ticket' }).click();
    await page.getByRole('heading', { name: 'What they can safely try now' }).waitFor();
    await keepScreenshot(page, 'three-call');
    await page.getByLabel('Technician').selectOption({ label: 'Brask Ilvane' });
    await page.getByRole('button', { name: 'Assign to Brask Ilvane' }).click();
  }

  it('goes from the call to an accepted packet', async () => {
    const oda = await arrive('oda', 'desk');
    const brask = await arrive('brask', 'phone');
    const pim = await arrive('pim', 'desk');
    await pim.page.getByText('No case is waiting').waitFor();

    await takeCall(oda.page);
    // It comes to his phone by itself.
    await brask.page
      .getByRole('main')
      .getByRole('link', { name: /Family Corrowin/ })
      .click();
    const clock = { fastForward: leap };
    const technician = new Technician(brask.page, {
      context: { clock } as unknown as BrowserContext,
      boundary: async (page) => page,
      look: async () => undefined,
      ownChoice: null,
    });
    await technician.playToEscalation();

    // And it comes to second line's queue by itself.
    await pim.page
      .getByRole('link', { name: /Family Corrowin/ })
      .first()
      .click();
    await pim.page.getByRole('button', { name: 'Take the case' }).click();
    await pim.page.getByText('The case is yours.').waitFor();
    await pim.page.getByRole('button', { name: 'Ask for more' }).click();
    await pim.page.getByLabel('Question of your own, no. 1').fill('Which output level is set for output A?');
    await pim.page.getByRole('button', { name: 'Ask for 1 thing' }).click();
    await pim.page.getByText('Asked. The technician sees it now.').waitFor();

    const phone = technician.screen;
    await phone.getByText('Which output level is set for output A?').waitFor();
    await phone.getByLabel('Your answer').fill('Standard, as it was delivered.');
    await keepScreenshot(phone, 'three-asked');
    await phone.getByRole('button', { name: 'Answer it' }).click();
    await phone.getByRole('button', { name: 'Send it again' }).click();

    await pim.page.locator('summary', { hasText: 'Case packets' }).click();
    await pim.page.getByRole('heading', { name: 'Version 2' }).waitFor();
    await pim.page.getByRole('button', { name: 'Accept the case' }).click();
    await pim.page
      .getByLabel('Where the fault is')
      .selectOption({ label: 'Cable C5 (Cinema processor → Projector)' });
    await pim.page
      .getByLabel('Finding', { exact: true })
      .fill('C5: 12 m of uncertified copper. Replace it by an optical one.');
    await pim.page.getByRole('button', { name: 'Accept with this finding' }).click();
    await pim.page.getByText('Accepted. The finding is on the ticket.').waitFor();
    const packet = pim.page.getByRole('article', { name: 'Version 2' });
    await packet.getByRole('button', { name: 'Check its hashes here' }).click();
    await packet.getByText(/^All \d+ files are unchanged$/).waitFor();

    // The technician is told, and can go on to the repair; the dispatcher sees how it stands.
    await phone
      .getByText(/uncertified copper/)
      .first()
      .waitFor();
    await keepScreenshot(phone, 'three-accepted');
    await oda.page.getByRole('link', { name: 'To the ticket' }).click();
    await oda.page
      .getByText(/uncertified copper/)
      .first()
      .waitFor();
    await keepScreenshot(oda.page, 'three-ticket');
    expect(technician.steps.at(-1)).toBe('escalate');
  });
});
