import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { firm } from '../../seed/firm.ts';
import { expectStatus, overHttp, signIn } from '../../seed/session.ts';
import type { ChainDocument, SiteSummary } from '../../shared/contract/site.ts';
import { faultsInEveryLook } from './checks.ts';
import { tabTo } from './keyboard.ts';
import { keepScreenshot, openStage, type Stage } from './stage.ts';

describe('the dispatcher’s desk', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage.close());
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
  /** Finds a client in the call, and has their questions up. */
  async function takeCallOf(page: Page, typed: string): Promise<void> {
    await page.getByRole('combobox', { name: 'Who is on the line?' }).fill(typed);
    await page.getByRole('option').nth(1).waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('group', { name: 'What do you see?' }).waitFor();
  }

  /** A client of whom no ticket is open, with the chain of another. */
  async function addQuietSite(): Promise<void> {
    const oda = await signIn(overHttp(stage.base), firm.handle, `oda@${firm.handle}.example`);
    const found = await oda.get<{ items: SiteSummary[] }>('/sites?q=amberwell');
    const chainId = expectStatus(found, 200).items[0]?.chains[0]?.id ?? '';
    const { chain } = expectStatus(await oda.get<ChainDocument>(`/chains/${chainId}`), 200);
    const site = { client: 'Quill Harbour', address: '2 Quay Steps, Ostermere' };
    const { id } = expectStatus(await oda.post<{ id: string }>('/sites', site), 201);
    expectStatus(await oda.post(`/sites/${id}/chains`, chain), 201);
  }

  it('takes a call from its first letter to an assigned ticket by keyboard alone', async () => {
    const page = await stage.signedIn('oda', 'desk');
    await heading(page, 'Call in progress').waitFor();
    await page.getByRole('combobox', { name: 'Who is on the line?' }).waitFor();
    // The field has the focus already: the phone rings, and she types.
    await page.keyboard.type('amber');
    await page.getByRole('option', { name: /Lisk Amberwell/ }).waitFor();
    await page.keyboard.press('ArrowDown');
    expect(await page.getByRole('option', { name: /Not known yet/ }).getAttribute('aria-selected')).toBe(
      'true',
    );
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    await page.getByRole('group', { name: 'What do you see?' }).waitFor();
    await page.getByText('19 Harrow Lane, Ostermere').waitFor();

    // Without the one answer that a ticket needs, nothing is opened, and the screen says why.
    await page.keyboard.press('Control+Enter');
    await page.getByRole('alert').getByText('Say what is seen').waitFor();

    await tabTo(page, /No picture/);
    await page.keyboard.press('Space');
    await page.keyboard.press('ArrowRight');
    expect(await page.getByRole('radio', { name: 'Drop-outs' }).isChecked()).toBe(true);
    await tabTo(page, /^More to ask/);
    await page.keyboard.press('Enter');
    await tabTo(page, /^ ?Number/);
    await page.keyboard.type('3');
    await tabTo(page, /Since when/);
    await page.keyboard.type('about a week');
    await tabTo(page, /It is the site’s contact/);
    await page.keyboard.press('Enter');
    await page.keyboard.press('Control+Enter');

    await heading(page, /^No\. \d+: Dr\. Lisk Amberwell$/).waitFor();
    await page.getByRole('heading', { name: 'What they can safely try now' }).waitFor();
    await page.getByText('that somebody has to drive').waitFor();
    await keepScreenshot(page, 'call-opened');
    await tabTo(page, /^ ?Technician/);
    await page.keyboard.type('Tuli');
    await tabTo(page, /Visit/);
    // Month, day, year, and on to the time, as the browser's own field takes them.
    await page.keyboard.type('11302026');
    await page.keyboard.press('Tab');
    await page.keyboard.type('0930AM');
    expect(await page.getByLabel('Visit').inputValue()).toBe('2026-11-30T09:30');
    await tabTo(page, /^ *Assign to Tuli Marrowen, Mon 30 Nov, 09:30$/);
    await page.keyboard.press('Enter');
    await page.getByText('Saved.').waitFor();

    await page.getByRole('link', { name: 'To the ticket' }).focus();
    await page.keyboard.press('Enter');
    await page.getByText('Tuli Marrowen').first().waitFor();
    await page.getByText('about a week').waitFor();
    await page
      .getByText(/30 Nov.*09:30/)
      .first()
      .waitFor();
    // How often it comes went through to what triage reckons with.
    await page.getByText('3 an hour').waitFor();
  });

  it('takes at most 40 keys from the call to the assigned ticket, beside what is typed', async () => {
    await addQuietSite();
    const page = await stage.signedIn('oda', 'desk');
    await page.getByRole('combobox', { name: 'Who is on the line?' }).waitFor();
    await page.evaluate(
      "globalThis.keys = 0; addEventListener('keydown', ({ key }) => { if (key.length > 1 || key === ' ') globalThis.keys += 1; }, true)",
    );
    await page.keyboard.type('quill', { delay: 20 });
    await page.getByRole('option', { name: /Quill Harbour/ }).waitFor();
    await page.keyboard.press('Enter');
    // The first question has the focus by itself.
    await page.getByRole('radio', { name: 'No picture' }).and(page.locator(':focus')).waitFor();
    await page.keyboard.press('Space');
    await page.keyboard.press('Control+Enter');
    await page.getByRole('heading', { name: 'What they can safely try now' }).waitFor();
    await page.getByText('that somebody has to drive').waitFor();
    await tabTo(page, /^ ?Technician/);
    await page.keyboard.type('Tuli');
    await tabTo(page, /^ *Assign to Tuli Marrowen$/);
    await page.keyboard.press('Enter');
    await page.getByText('Saved.').waitFor();
    const keys = await page.evaluate('globalThis.keys');
    expect(keys).toBeLessThanOrEqual(40);
  });

  it('says that a ticket is open at the chain already, before and when another is opened', async () => {
    const page = await stage.signedIn('oda', 'desk');
    await takeCallOf(page, '555 0142');
    const notice = page.getByRole('heading', { name: 'Already open at this chain' });
    await notice.waitFor();
    await keepScreenshot(page, 'call-duplicate');
    await page.getByRole('radio', { name: 'Sparkles' }).check();
    await page.getByRole('button', { name: 'Open the ticket' }).click();
    await page.getByRole('alert').getByText('There is an open ticket at this chain').waitFor();
    await page.getByRole('button', { name: 'It is another fault' }).click();
    await page.getByText('Another fault, you said.').waitFor();
    await page.getByRole('button', { name: 'Open the ticket' }).click();
    await heading(page, /^No\. \d+: Family Corrowin$/).waitFor();
  });

  it('keeps a half-taken call over a reload', async () => {
    const page = await stage.signedIn('oda', 'desk');
    await takeCallOf(page, 'BL40-2217');
    await page.getByRole('radio', { name: 'Sound only' }).check();
    await keepScreenshot(page, 'call-three-questions');
    expect(await page.getByLabel('Since when?').isVisible()).toBe(false);
    await page.getByText(/^More to ask/).click();
    await page.getByRole('checkbox', { name: 'Disc player' }).check();
    await page.getByLabel('Since when?').fill('since the storm');
    await page.getByRole('checkbox', { name: 'building work' }).check();
    await page.getByLabel('What exactly: building work').fill('New ceiling');
    await page.reload();
    await page.getByRole('group', { name: 'What do you see?' }).waitFor();
    expect(await page.getByRole('radio', { name: 'Sound only' }).isChecked()).toBe(true);
    expect(await page.getByRole('checkbox', { name: 'Disc player' }).isChecked()).toBe(true);
    expect(await page.getByLabel('Since when?').inputValue()).toBe('since the storm');
    expect(await page.getByLabel('What exactly: building work').inputValue()).toBe('New ceiling');
    // Another call in another tab is another form, and knows of this one.
    const other = await page.context().newPage();
    await other.goto('/app/call');
    await other.getByText(/: in another tab$/).waitFor();
    expect(await other.getByRole('combobox', { name: 'Who is on the line?' }).inputValue()).toBe('');
    await keepScreenshot(other, 'call-second-tab');
    expect(await faultsInEveryLook(other, 'call-second-tab')).toEqual([]);
    await other.close();
    await page.getByRole('button', { name: 'Start over' }).click();
    await page.getByRole('combobox', { name: 'Who is on the line?' }).waitFor();
    await page.getByRole('button', { name: 'Bring back what was there' }).click();
    await expect.poll(() => page.getByLabel('Since when?').inputValue()).toBe('since the storm');
    await page.getByRole('button', { name: 'Start over' }).click();
    await page.getByRole('combobox', { name: 'Who is on the line?' }).waitFor();
    await page.reload();
    await page.getByRole('combobox', { name: 'Who is on the line?' }).waitFor();
  });

  it('asks anew what the client can try when they reach more, and writes down what they say', async () => {
    const page = await stage.signedIn('oda', 'desk');
    await page.goto('/app/find?q=corrowin');
    await page.getByRole('link', { name: /^No\. 1 Family Corrowin/ }).click();
    await page.getByRole('link', { name: 'Client on the line: what they can try' }).click();
    const asked = page.waitForRequest((request) => request.url().includes('reachable=receiver'));
    await page.getByRole('checkbox', { name: 'Receiver' }).check();
    await asked;
    const step = page.locator('.phone-step').first();
    await step.getByRole('button', { name: /^The menu stays$|^It stays away$/ }).click();
    const kept = page.locator('.kept-lines');
    await kept.getByText(/The menu stays|It stays away/).waitFor();
    await page.reload();
    await kept.getByText(/The menu stays|It stays away/).waitFor();
    // What was told before is still there.
    await kept.getByText(/Receiver switched off and on/).waitFor();
    expect(await page.getByRole('checkbox', { name: 'Receiver' }).isChecked()).toBe(true);
  });

  it('takes a client in that nobody knows: site, chain, ticket, and a version of the chain', async () => {
    const page = await stage.signedIn('oda', 'desk');
    await page.getByRole('combobox', { name: 'Who is on the line?' }).fill('Wisteria Court');
    await page.getByRole('option', { name: /Not known yet/ }).waitFor();
    await page.getByText('Nobody like that.').waitFor();
    await page.keyboard.press('Enter');
    await heading(page, 'A site that is not known yet').waitFor();
    expect(await page.getByLabel('Client').inputValue()).toBe('Wisteria Court');
    await page.getByLabel('Address').fill('8 Sorrel Way, Ostermere');
    await page.getByLabel('When the contact is best reached').fill('after school');
    await page.getByRole('checkbox', { name: 'Ladder' }).check();
    await page.getByLabel('Ladder: what and where').fill('Projector at 3 m.');
    await page.getByRole('button', { name: 'Add the site' }).click();
    await heading(page, 'A new chain: Wisteria Court').waitFor();
    await keepScreenshot(page, 'new-chain');

    // What the API refuses is said at its place.
    await page.getByText('Everything as a list of forms').click();
    await page.locator('summary', { hasText: 'C1' }).click();
    await page.getByLabel('Length, m').first().fill('0');
    await page.getByRole('button', { name: 'Save the chain' }).click();
    await page.getByRole('alert').getByText('The chain cannot be as described').waitFor();
    const cable = page.locator('details', { has: page.locator('summary', { hasText: 'C1' }) });
    await cable.locator('.field-error').first().waitFor();
    await keepScreenshot(page, 'new-chain-refused');
    await page.getByLabel('Length, m').first().fill('1.5');
    await page.getByRole('button', { name: 'Save the chain' }).click();

    await heading(page, 'Call in progress').waitFor();
    await page.getByRole('radio', { name: 'No picture' }).check();
    await page.getByRole('button', { name: 'Open the ticket' }).click();
    await heading(page, /^No\. \d+: Wisteria Court$/).waitFor();

    await page.getByRole('link', { name: 'To the ticket' }).click();
    await page.getByRole('link', { name: 'The site' }).click();
    await page.getByText('after school').first().waitFor();
    await page
      .getByRole('main')
      .getByRole('link', { name: /Version 1/ })
      .click();
    await page.getByRole('button', { name: 'Change the chain' }).click();
    await page.getByText('Everything as a list of forms').click();
    await page.locator('summary', { hasText: 'DisplayDisplay' }).click();
    await page.getByLabel('Serial number').last().fill('WC-1');
    const device = page.locator('details.part-form', { has: page.getByText('DisplayDisplay') }).last();
    await device.locator('summary', { hasText: 'What comes with a picture' }).click();
    await device.getByRole('checkbox', { name: 'Its HDR was looked up' }).check();
    await device.getByRole('checkbox', { name: 'HDR10' }).check();
    await device.getByLabel('Most bits a component').selectOption('10');
    await page.locator('summary', { hasText: 'C1' }).click();
    await page.getByLabel('Couplers and wall plates in it').first().fill('1');
    await keepScreenshot(page, 'chain-facts');
    await page.getByRole('button', { name: 'Save as a new version' }).click();
    await page.getByText('Saved.').waitFor();
    await page.getByText('HDR10, up to 10 bits').first().waitFor();
    await page
      .getByText(/Couplers of .*: not known → 1/)
      .first()
      .waitFor();
    await page
      .getByText(/serial/i)
      .first()
      .waitFor();
    await page.getByRole('heading', { name: 'What differs between version 1 and version 2' }).waitFor();
    await keepScreenshot(page, 'chain-versions');
  });

  it('corrects the intake, writes a note, and tells what happened', async () => {
    const page = await stage.signedIn('oda', 'desk');
    await page.goto('/app/find?q=1');
    await page.getByRole('link', { name: /^No\. 1 / }).click();
    await page.getByText('Correct or add to it').click();
    await page.getByLabel('Anything else').fill('The dog is friendly.');
    await page.getByRole('button', { name: 'Save the answers' }).click();
    await page.getByText('The dog is friendly.').first().waitFor();
    await page.getByLabel('Note').fill('Called back: tomorrow suits better.');
    await page.getByRole('button', { name: 'Write the note' }).click();
    await page.getByText('Called back: tomorrow suits better.').first().waitFor();
    await page.locator('.timeline').getByText('Ticket opened.').waitFor();
  });

  it('lists its keys in a dialog, and no letter does anything by itself', async () => {
    const page = await stage.signedIn('oda', 'desk');
    await heading(page, 'Call in progress').waitFor();
    await page.getByRole('button', { name: 'Keys' }).click();
    await page.getByRole('dialog').getByText('Ctrl+Enter').waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    for (const letter of ['b', 'w', 'f', 'c', '/', '?']) await page.keyboard.press(letter);
    await heading(page, 'Call in progress').waitFor();
    await page.keyboard.press('F9');
    await heading(page, 'Find tickets and sites').waitFor();
    await page.keyboard.press('F2');
    await heading(page, 'Call in progress').waitFor();
  });
});
