import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type CaseStage, openCaseStage } from './case-stage.ts';
import { wholeScreenFaults } from './checks.ts';
import { keepScreenshot, sizes } from './stage.ts';

describe('a text that an admin erases', () => {
  let stage: CaseStage;
  beforeAll(async () => {
    stage = await openCaseStage();
  });
  afterAll(() => stage.close());
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  const question = 'The owner leaves tomorrow';

  it('goes after a question and a reason, and its place says who erased it, in both languages', async () => {
    const page = await stage.signedIn('runa', 'desk');
    await page.goto(`/app/tickets/${stage.bare.id}`);
    await page.getByRole('link', { name: 'Erase a text' }).click();
    await page.getByRole('listitem').filter({ hasText: question }).waitFor();
    await keepScreenshot(page, 'texts');
    expect(await wholeScreenFaults(page, 'texts', [320, sizes.desk.width / 2])).toEqual([]);

    await page.getByRole('button', { name: new RegExp(`^Erase: ${question}`) }).click();
    const dialog = page.getByRole('dialog', { name: 'Erase this text for good?' });
    await dialog.getByText(question).waitFor();
    await dialog.getByRole('button', { name: 'Erase for good' }).click();
    await dialog.getByText('Say why in a few words.').waitFor();
    await keepScreenshot(page, 'erase-text');
    await dialog.getByLabel('Why').fill('Says when nobody is at home.');
    await dialog.getByRole('button', { name: 'Erase for good' }).click();
    await page.getByText('The text is erased.').waitFor();
    await page
      .getByText(/^\[text erased .* by Runa Stellick\]$/)
      .first()
      .waitFor();
    expect(await page.getByText(question).count()).toBe(0);
    await page.getByRole('link', { name: 'Back to the ticket' }).click();
    await page.getByText('Something in it was erased from the log since.').waitFor();

    const second = await stage.signedIn('pim', 'desk');
    await second.goto(`/app/cases/${stage.bare.id}`);
    await second
      .getByText(/^\[text erased .* by Runa Stellick\]$/)
      .first()
      .waitFor();
    expect(await second.getByText(question).count()).toBe(0);
    expect(await second.content()).not.toContain('\uFFFC');
    await second.evaluate("localStorage.setItem('halfsplit-language', 'de')");
    await second.reload();
    await second
      .getByText(/^\[Text gelöscht .* von Runa Stellick\]$/)
      .first()
      .waitFor();
  });

  it('is nothing that a dispatcher is offered', async () => {
    const page = await stage.signedIn('oda', 'desk');
    await page.goto(`/app/tickets/${stage.bare.id}`);
    await page.getByRole('heading', { name: 'What happened' }).waitFor();
    expect(await page.getByRole('link', { name: 'Erase a text' }).count()).toBe(0);
  });
});
