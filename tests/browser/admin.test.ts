import { execFile } from 'node:child_process';
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { wholeScreenFaults } from './checks.ts';
import { keepScreenshot, openStage, type Stage, sizes, waitMs } from './stage.ts';

const run = promisify(execFile);

describe('what an admin sets', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage.close());
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  const row = (page: Page, name: string) =>
    page.getByRole('row').filter({ has: page.getByRole('rowheader', { name }) });
  const saved = (page: Page) => page.getByText('Saved.').waitFor();

  it('adds a member, who can sign in; gives another role and password; and takes the sign-in away', async () => {
    const page = await stage.signedIn('runa', 'desk');
    await page.getByRole('button', { name: 'Add a member' }).click();
    await page.getByLabel('Name').fill('Nell Varrick');
    await page.getByLabel('Email').fill('nell@lanternrow.example');
    await page.getByLabel('Password').fill('a first password');
    await page.keyboard.press('Enter');
    await row(page, 'Nell Varrick').getByText('Technician').waitFor();

    const nell = await (await stage.openDevice('phone')).newPage();
    const signIn = async (password: string) => {
      await nell.goto('/');
      await nell.getByLabel('Organisation').fill('lanternrow');
      await nell.getByLabel('Email').fill('nell@lanternrow.example');
      await nell.getByLabel('Password').fill(password);
      await nell.getByRole('button', { name: 'Sign in' }).click();
    };
    await signIn('a first password');
    await nell.getByRole('navigation').waitFor();

    await page.getByRole('button', { name: 'Change Nell Varrick' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Password').fill('a second password');
    await dialog.getByRole('button', { name: 'Set the password' }).click();
    await dialog.getByText('The new password holds from now on.').waitFor();
    await dialog.getByRole('button', { name: 'Close' }).click();

    await page.getByRole('button', { name: 'Change Nell Varrick' }).click();
    await dialog.getByRole('radio', { name: 'Dispatcher' }).check();
    await dialog.getByRole('checkbox', { name: 'May sign in' }).uncheck();
    await dialog.getByText('Takes the sign-in away at once').waitFor();
    await keepScreenshot(page, 'member-change');
    await dialog.getByRole('button', { name: 'Save' }).click();
    await row(page, 'Nell Varrick').getByText('Dispatcher').waitFor();
    await row(page, 'Nell Varrick').locator('.badge', { hasText: 'no' }).waitFor();

    const again = await (await stage.openDevice('phone')).newPage();
    await again.goto('/');
    await again.getByLabel('Organisation').fill('lanternrow');
    await again.getByLabel('Email').fill('nell@lanternrow.example');
    await again.getByLabel('Password').fill('a second password');
    await again.getByRole('button', { name: 'Sign in' }).click();
    await again.getByRole('alert').waitFor();
  });

  it('is told why the last admin stays one', async () => {
    const page = await stage.signedIn('runa', 'desk');
    await page.getByRole('button', { name: 'Change Runa Stellick' }).click();
    await page.getByRole('dialog').getByRole('radio', { name: 'Technician' }).check();
    await page.getByRole('dialog').getByRole('button', { name: 'Save' }).click();
    await page.getByRole('alert').getByText('An organisation keeps one active admin').waitFor();
  });

  it('sets the firm’s numbers, which hold after a reload, and refuses a time zone nobody knows', async () => {
    const page = await stage.signedIn('runa', 'desk');
    await page.goto('/app/numbers');
    await page.getByLabel('Days in which a closed ticket may be reopened').fill('45');
    await page.getByLabel('Shorter than, m').fill('1.5');
    await page.getByLabel('Time zone of our sites').fill('Europe/Nowhere');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('Nobody knows a time zone of that name.').waitFor();
    await page.getByLabel('Time zone of our sites').fill('Europe/Dublin');
    await page.getByRole('button', { name: 'Save' }).click();
    await saved(page);
    await page.reload();
    await page.getByLabel('Shorter than, m').waitFor();
    expect(await page.getByLabel('Days in which a closed ticket may be reopened').inputValue()).toBe('45');
    expect(await page.getByLabel('Shorter than, m').inputValue()).toBe('1.5');
  });

  it('adds, changes and takes away a firmware level', async () => {
    const page = await stage.signedIn('runa', 'desk');
    await page.goto('/app/numbers/firmware');
    const added = page.locator('section.card', { has: page.getByRole('heading', { name: 'Add a level' }) });
    await added.getByLabel('Model').fill('Orrin OP-3');
    await added.getByLabel('Lowest level we accept').fill('2.0');
    await added.getByRole('button', { name: 'Add a level' }).click();
    const own = page.locator('section.card', { has: page.getByRole('heading', { name: 'Orrin OP-3' }) });
    await own.getByLabel('Lowest level we accept').fill('2.1');
    const changed = page.waitForResponse((reply) => reply.request().method() === 'PUT' && reply.ok());
    await own.getByRole('button', { name: 'Save' }).click();
    await changed;
    await page.reload();
    // What this device kept is shown first, and may be the level of before.
    await expect
      .poll(() => own.getByLabel('Lowest level we accept').inputValue(), { timeout: waitMs })
      .toBe('2.1');
    await own.getByRole('button', { name: 'Take away the level of Orrin OP-3' }).click();
    await own.waitFor({ state: 'detached' });
  });

  it('puts an own figure in the fault model, sees where the built-in one is from, and takes it back', async () => {
    const page = await stage.signedIn('runa', 'desk');
    await page.goto('/app/numbers/fault-model');
    // Nothing is changed yet, and every group is folded: what is looked for unfolds.
    await page.getByText('Every figure is the built-in one.').waitFor();
    await page.getByLabel('Search the figures').fill('margin passive');
    const field = page
      .getByLabel(/^Our own figure for Too little margin for the data rate: passive copper$/)
      .first();
    await field.waitFor();
    await page
      .getByRole('row', { name: /passive copper/i })
      .getByText('common practice')
      .waitFor();
    const example = page.getByRole('region', { name: 'What our figures do to an example' });
    const likeliest = example.getByRole('row').nth(1);
    const before = await likeliest.textContent();
    await field.fill('40');
    await expect.poll(() => likeliest.textContent()).not.toBe(before);
    await field.fill('-5');
    await page.getByRole('button', { name: 'Save' }).click();
    // The model's own refusal, at the figure it is about.
    await page.locator('td .field-error').first().waitFor();
    await keepScreenshot(page, 'fault-model-refused');
    await field.fill('4');
    await page.getByRole('button', { name: 'Save' }).click();
    await saved(page);
    await page.reload();
    const ours = page.locator('details', { hasText: 'Changed by us' });
    await ours.getByRole('row', { name: /How often cables fail/ }).waitFor();
    const own = ours.getByRole('spinbutton');
    expect(await own.inputValue()).toBe('4');
    await own.fill('');
    await page.getByRole('button', { name: 'Save' }).click();
    await saved(page);
    await page.reload();
    await page.getByText('Every figure is the built-in one.').waitFor();
  });

  it('adds a row for logs; one that misses its own example is refused with the reason', async () => {
    const page = await stage.signedIn('runa', 'desk');
    await page.goto('/app/numbers/logs');
    await page.getByRole('button', { name: 'Add a row' }).click();
    await page.getByLabel('What it means').fill('linkLost');
    await page.getByLabel(/^Phrases/).fill('carrier | signal\ngone');
    await page.getByLabel('A line of a log that it has to find').fill('all is well');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByRole('alert').waitFor();
    await page.getByLabel('A line of a log that it has to find').fill('video: carrier gone on input 2');
    await page.getByRole('button', { name: 'Save' }).click();
    await saved(page);
    await page.reload();
    await page.getByLabel(/^Phrases/).waitFor();
    expect(await page.getByLabel(/^Phrases/).inputValue()).toBe('carrier | signal\ngone');
  });

  it('reads who did what, of one member too', async () => {
    const page = await stage.signedIn('runa', 'desk');
    await page.goto('/app/members');
    await page.goto('/app/numbers/audit-log');
    const entries = page.locator('.audit-entry');
    await entries.first().waitFor();
    await page.getByText('Runa Stellick signed in with the password').first().waitFor();
    await page.getByLabel('Show').selectOption({ label: 'Runa Stellick' });
    await expect
      .poll(async () => (await entries.allTextContents()).every((text) => text.includes('Runa')))
      .toBe(true);
    await keepScreenshot(page, 'audit-log-desk');
    await page.setViewportSize({ width: 360, height: 740 });
    await keepScreenshot(page, 'audit-log-360');
  });

  it('takes away what the firm has of one client', async () => {
    const page = await stage.signedIn('runa', 'desk');
    await page.goto('/app/find?q=a');
    await page.locator('main a[href^="/app/sites/"]:not([href$="/new"])').first().click();
    await page.getByRole('link', { name: 'All we have of them' }).click();
    await page.getByRole('heading', { level: 1, name: /^What we have of / }).waitFor();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Make the zip and download it' }).click();
    expect((await download).suggestedFilename()).toMatch(/^halfsplit-client-.*\.zip$/);
    await page.getByText(/^Downloaded: /).waitFor();
    await keepScreenshot(page, 'client-data-desk');
    await page.setViewportSize({ width: 360, height: 740 });
    await keepScreenshot(page, 'client-data-360');
    await page.goto('/app/numbers/audit-log');
    await page.getByText('took what we have of a client as a zip').first().waitFor();
  });

  it('takes everything away as a zip that sha256sum accepts', async () => {
    const page = await stage.signedIn('runa', 'desk');
    await page.goto('/app/numbers/export');
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Make the zip and download it' }).click();
    const folder = await mkdtemp(join(tmpdir(), 'halfsplit-browser-export-'));
    try {
      const zip = join(folder, 'export.zip');
      await (await download).saveAs(zip);
      await page.getByText(/^Downloaded: /).waitFor();
      await run('unzip', ['-q', zip], { cwd: folder });
      const [inside = ''] = (await readdir(folder)).filter((name) => name !== 'export.zip');
      await run('sha256sum', ['-c', '--strict', 'manifest-sha256.txt'], { cwd: join(folder, inside) });
      expect((await readdir(join(folder, inside, 'tickets'))).length).toBeGreaterThanOrEqual(3);
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  });

  it.each([
    ['light', 'desk'],
    ['dark', 'desk'],
    ['light', 'phone'],
    ['dark', 'phone'],
  ] as const)('has no accessibility faults in %s on a %s, nor at 320 px', async (look, size) => {
    const page = await stage.signedIn('runa', size, look);
    const faults: string[] = [];
    const screens: [string, string][] = [
      ['members', '/app/members'],
      ['numbers', '/app/numbers'],
      ['firmware', '/app/numbers/firmware'],
      ['fault-model', '/app/numbers/fault-model'],
      ['logs', '/app/numbers/logs'],
      ['own-changes', '/app/numbers/changes'],
      ['usage', '/app/numbers/usage'],
      ['audit-log', '/app/numbers/audit-log'],
      ['export', '/app/numbers/export'],
    ];
    for (const [name, address] of screens) {
      await page.goto(address);
      await page.getByRole('heading', { level: 1 }).waitFor();
      await page.getByText('Loading').first().waitFor({ state: 'detached' });
      await keepScreenshot(page, `${name}-${look}`);
      const widths = [320, sizes[size].width, sizes[size].width / 2].filter((one) => one >= 320);
      faults.push(...(await wholeScreenFaults(page, name, widths)));
    }
    expect(faults).toEqual([]);
  });
});
