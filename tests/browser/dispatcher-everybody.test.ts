import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { wholeScreenFaults } from './checks.ts';
import { keepScreenshot, openStage, type Stage, sizes } from './stage.ts';

describe('the dispatcher’s screens, by everybody', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage.close());
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  it.each([
    ['light', 'desk'],
    ['dark', 'desk'],
    ['light', 'phone'],
    ['dark', 'phone'],
  ] as const)('has no accessibility faults in %s on a %s, nor at 320 px', async (look, size) => {
    const page = await stage.signedIn('oda', size, look);
    await page.goto('/app/find?q=corrowin');
    const ticket = await page.getByRole('link', { name: /^No\. 1 / }).getAttribute('href');
    const site = await page.getByRole('link', { name: /4 Thistle Rise/ }).getAttribute('href');
    await page.goto(site ?? '');
    const chain = await page
      .getByRole('main')
      .getByRole('link', { name: /Version/ })
      .getAttribute('href');
    const faults: string[] = [];
    const screens: [string, string][] = [
      ['call', '/app/call'],
      ['call-asking', '/app/call'],
      ['after-call', (ticket ?? '').replace('/tickets/', '/call/')],
      ['board', '/app/board'],
      ['waiting', '/app/waiting'],
      ['find', '/app/find?q=corrowin'],
      ['ticket', ticket ?? ''],
      ['new-site', '/app/sites/new'],
      ['site', site ?? ''],
      ['new-chain', `${site}/chains/new`],
      ['chain', chain ?? ''],
    ];
    for (const [name, address] of screens) {
      await page.goto(address);
      await page.getByRole('heading', { level: 1 }).waitFor();
      await page.getByText('Loading').first().waitFor({ state: 'detached' });
      if (name === 'call-asking') {
        await page.getByRole('combobox', { name: 'Who is on the line?' }).fill('corrowin');
        await page.getByRole('option').nth(1).waitFor();
        await page.keyboard.press('Enter');
        await page.getByRole('group', { name: /^Chain/ }).waitFor();
      }
      // Everything that is folded away is looked at too.
      await page.evaluate("document.querySelectorAll('main details').forEach((one) => { one.open = true; })");
      await keepScreenshot(page, `${name}-${look}`);
      const widths = [320, sizes[size].width, sizes[size].width / 2].filter((one) => one >= 320);
      faults.push(...(await wholeScreenFaults(page, name, widths)));
    }
    expect(faults).toEqual([]);
  });

  it('speaks German', async () => {
    const page = await stage.signedIn('oda', 'desk');
    await page.evaluate("localStorage.setItem('halfsplit-language', 'de')");
    await page.goto('/app/find?q=corrowin');
    await page.getByRole('link', { name: /^Nr\. 1 / }).click();
    await page.getByRole('link', { name: 'Kunde am Telefon: was er versuchen kann' }).click();
    await page.getByRole('heading', { name: 'Was einzupacken ist' }).waitFor();
    // A cable to pack, with its length as German writes numbers; and nothing stays English.
    await page
      .getByText(/Kabel.*\d,\d m\b/)
      .first()
      .waitFor();
    await page.locator('main [lang=en]').first().waitFor({ state: 'detached' });
    expect(await page.locator('.phone-step').count()).toBeGreaterThan(0);
    await keepScreenshot(page, 'call-opened-german');
  });
});
