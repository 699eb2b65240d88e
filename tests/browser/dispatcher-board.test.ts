import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { firmZone } from '../../seed/firm.ts';
import { faultsInEveryLook } from './checks.ts';
import { tabTo } from './keyboard.ts';
import { keepScreenshot, openStage, type Stage } from './stage.ts';

describe('the dispatcher’s day', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage.close());
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
  const today = () => new Intl.DateTimeFormat('en-CA', { timeZone: firmZone }).format(new Date());

  it('lists the day by person: town, time, length, way and what was promised, and the week likewise', async () => {
    const page = await stage.signedIn('oda', 'desk');
    await page.goto(`/app/board?day=${today()}`);
    const brask = page.getByRole('region', { name: 'Brask Ilvane' });
    const visit = brask.getByRole('row', { name: /Family Corrowin/ });
    await visit.getByText('Marlhaven').waitFor();
    await visit.getByText('25 min').waitFor();
    await visit.getByText('2 h').waitFor();
    await visit.getByText('Somebody comes today, and calls half an hour before.').waitFor();
    const tulis = page.getByRole('region', { name: 'Tuli Marrowen' });
    // Nobody said how long the other visit takes, nor promised anything of it.
    expect(await tulis.getByText('not said').count()).toBe(2);
    await tulis.getByRole('button', { name: /^Change technician and visit: .*Penhollow/ }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Planned length').selectOption('90');
    await dialog.getByLabel('Promised to the client').fill('Before the evening boat.');
    await dialog.getByRole('button', { name: /^Assign to/ }).click();
    await dialog.waitFor({ state: 'detached' });
    await tulis.getByText('Before the evening boat.').waitFor();
    await tulis.getByText('1 h 30 min planned').waitFor();
    expect(await faultsInEveryLook(page, 'board of the day')).toEqual([]);
    await keepScreenshot(page, 'board-day');

    await page.getByRole('link', { name: 'Show the week' }).focus();
    await page.keyboard.press('Enter');
    await heading(page, /^Board of the week from/).waitFor();
    const week = page.getByRole('table', { name: 'The week by person' });
    await week
      .getByRole('row', { name: /Brask Ilvane/ })
      .getByText('Marlhaven · 2 h · high')
      .waitFor();
    await week
      .getByRole('row', { name: /Tuli Marrowen/ })
      .getByText('Saltmere · 1 h 30 min')
      .waitFor();
    expect(await faultsInEveryLook(page, 'board of the week')).toEqual([]);
    await keepScreenshot(page, 'board-week');
    await page.setViewportSize({ width: 360, height: 740 });
    await keepScreenshot(page, 'board-week');
    await page.goBack();
    await keepScreenshot(page, 'board-day');
  });

  it('gives a visit to somebody else and to another time from the board, by keyboard', async () => {
    const page = await stage.signedIn('oda', 'desk');
    await heading(page, 'Call in progress').waitFor();
    await page.getByRole('combobox').waitFor();
    await page.keyboard.press('F4');
    await heading(page, /^Board of the day/).waitFor();
    const key = today();
    await page.goto(`/app/board?day=${key}`);
    const lane = (name: string) => page.getByRole('region', { name });
    await lane('Tuli Marrowen').getByText('Penhollow Boat House').waitFor();
    await page.getByRole('button', { name: /^Change technician and visit: .*Penhollow/ }).focus();
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Technician').waitFor();
    await dialog.getByLabel('Technician').focus();
    await page.keyboard.type('Brask');
    await dialog.getByLabel('Visit').fill(`${key}T23:15`);
    await page.keyboard.press('Control+Enter');
    await dialog.waitFor({ state: 'detached' });
    await lane('Brask Ilvane').getByText('Penhollow Boat House').waitFor();
    await lane('Brask Ilvane').getByText('23:15').waitFor();
    await lane('Brask Ilvane')
      .getByText(/the next one begins$/)
      .waitFor();
    expect(await lane('Tuli Marrowen').getByText('Penhollow').count()).toBe(0);
  });

  it('refuses to write over what somebody else changed meanwhile, and then shows theirs', async () => {
    const [one, other] = [await stage.signedIn('oda', 'desk'), await stage.signedIn('runa', 'desk')];
    await one.goto('/app/find?q=penhollow');
    await one
      .getByRole('link', { name: /Penhollow Boat House/ })
      .first()
      .click();
    await one.getByLabel('Technician').waitFor();
    await other.goto(one.url());
    await other.getByLabel('Technician').waitFor();
    // Without its live news, one's screen still has the older ticket.
    await one.route('**/events', (route) => route.abort());
    await one.context().setOffline(true);
    await other.getByRole('radio', { name: 'Urgent' }).check();
    await other.getByRole('button', { name: /^Save, with nobody|^Assign to/ }).click();
    await other.getByText('Saved.').waitFor();
    await one.getByRole('radio', { name: 'Low' }).check();
    await one.route('**/tickets/*', (route) =>
      route.request().method() === 'GET' ? route.abort() : route.continue(),
    );
    await one.context().setOffline(false);
    await one.getByRole('button', { name: /^Save, with nobody|^Assign to/ }).click();
    await one.getByRole('alert').getByText('It was changed in the meantime').waitFor();
  });

  it('shows what waits for whom', async () => {
    const page = await stage.signedIn('oda', 'desk');
    await heading(page, 'Call in progress').waitFor();
    await page.getByRole('combobox').waitFor();
    await page.keyboard.press('F8');
    await heading(page, 'What waits for whom').waitFor();
    await page.getByRole('region', { name: 'For us: no technician' }).waitFor();
    await page.getByRole('region', { name: 'Changes that must be put back' }).getByText('Nothing.').waitFor();
  });

  it('says on the ticket where and whom to call, who could go when, and assigns by one choice', async () => {
    const page = await stage.signedIn('oda', 'desk');
    await page.goto('/app/find?q=1');
    await page.getByRole('link', { name: /^No\. 1 / }).click();
    const link = (name: string) => page.getByRole('link', { name, exact: true });
    expect(await link('Call Edda Corrowin').getAttribute('href')).toBe('tel:+35315550142');
    expect(await link('Map').getAttribute('href')).toBe(
      `geo:0,0?q=${encodeURIComponent('4 Thistle Rise, Marlhaven')}`,
    );
    await page.getByText('after 16:00').waitFor();
    const week = page.getByRole('group', { name: 'Who could go when' });
    const morning = week.getByRole('radio', { name: /^Tuli Marrowen, .*09:00$/ }).last();
    const chosen = (await morning.getAttribute('aria-label')) ?? '';
    await keepScreenshot(page, 'ticket-who-could-go');
    expect(await faultsInEveryLook(page, 'ticket-who-could-go')).toEqual([]);
    await morning.focus();
    await page.keyboard.press('Space');
    await tabTo(page, new RegExp(`^ *Assign to ${chosen}$`));
    await page.keyboard.press('Enter');
    await page.getByText('Saved.').waitFor();
    // Of whoever is there already, the client says so, and nobody is sent twice.
    await page.goto('/app/find?q=penhollow');
    await page
      .getByRole('link', { name: /Penhollow Boat House/ })
      .first()
      .click();
    await week.getByText('Family Corrowin').waitFor();
    await week.getByRole('radio', { name: chosen }).waitFor({ state: 'detached' });
  });
});
