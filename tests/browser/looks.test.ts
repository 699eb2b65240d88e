import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { wholeScreenFaults } from './checks.ts';
import { keepScreenshot, type MemberName, openStage, type Stage, waitMs } from './stage.ts';

describe('what everybody comes to first, in every look', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage.close());
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  const heading = (page: Page) => page.getByRole('heading', { level: 1 });

  it.each([
    ['light', 'phone'],
    ['dark', 'phone'],
    ['outdoor', 'phone'],
    ['light', 'desk'],
    ['dark', 'desk'],
  ] as const)('has no accessibility faults in %s on a %s', async (look, size) => {
    const screens: [MemberName, string, string][] = [
      ['brask', '/app/visits', 'visits'],
      ['brask', '/app/outbox', 'outbox'],
      ['brask', '/app/settings', 'settings'],
      ['oda', '/app/board', 'board'],
      ['pim', '/app/queue', 'queue'],
      ['runa', '/app/members', 'members'],
    ];
    const faults: string[] = [];
    const look_ = async (page: Page, name: string) => {
      await keepScreenshot(page, `${name}-${look}`);
      faults.push(...(await wholeScreenFaults(page, name, [])));
    };
    const signIn = await (await stage.openDevice(size, look)).newPage();
    await signIn.goto('/');
    await heading(signIn).waitFor();
    await look_(signIn, 'sign-in');
    for (const name of ['brask', 'oda', 'pim', 'runa'] as const) {
      const page = await stage.signedIn(name, size, look);
      for (const [, path, screen] of screens.filter(([who]) => who === name)) {
        await page.goto(path);
        await heading(page).waitFor();
        await expect.poll(() => page.getByText('Loading').count(), { timeout: waitMs }).toBe(0);
        await look_(page, screen);
      }
      if (name === 'brask') {
        await page.goto('/app/visits');
        await page.getByRole('main').getByRole('link').first().click();
        await page.getByRole('group', { name: /^Chain/ }).waitFor();
        await look_(page, 'visit');
      }
    }
    expect(faults).toEqual([]);
  });
});
