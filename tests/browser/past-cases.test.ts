import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { faultsInEveryLook } from './checks.ts';
import { tabTo } from './keyboard.ts';
import { keepScreenshot, openStage, type Stage } from './stage.ts';

describe('past cases', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage.close());
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  it('are found by words and symptom by keyboard, and kept over a reload', async () => {
    const page = await stage.signedIn('pim', 'desk');
    await page.getByRole('link', { name: 'Past cases' }).focus();
    await page.keyboard.press('Enter');
    const one = page.getByRole('link', { name: /Dr\. Lisk Amberwell: No picture/ });
    await one.waitFor();
    await tabTo(page, /^ ?Find/);
    await page.keyboard.type('amberwell nothing');
    await expect.poll(() => page.url()).toContain('amberwell');
    await one.getByText('No fault found').waitFor();
    await page.reload();
    await one.waitFor();
    expect(await page.getByLabel('Find').inputValue()).toBe('amberwell nothing');
    await keepScreenshot(page, 'past-cases');
    expect(await faultsInEveryLook(page, 'past cases')).toEqual([]);
    await page.getByLabel('Symptom').selectOption('sparkles');
    await page.getByText('No closed case like that.').waitFor();
    await page.getByLabel('Symptom').selectOption('noPicture');
    await one.focus();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: /Amberwell/ }).waitFor();
  });

  it('that are like a case stand on it, with what they have in common', async () => {
    const page = await stage.signedIn('pim', 'phone');
    await page.goto('/app/past-cases');
    await page.getByRole('link', { name: /Dr\. Lisk Amberwell: No picture/ }).tap();
    await page.getByRole('heading', { name: 'Cases like this one' }).tap();
    await page.getByText('No closed case has its symptom or one of its devices.').waitFor();
    await page.getByRole('link', { name: 'All past cases' }).tap();
    await page.getByRole('heading', { level: 1, name: 'Past cases' }).waitFor();
  });
});
