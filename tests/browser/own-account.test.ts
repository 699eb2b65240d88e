import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoPassword, firm } from '../../seed/firm.ts';
import { screenFaults } from './checks.ts';
import { keepScreenshot, openStage, type Stage, waitMs } from './stage.ts';

describe("a member's own account", () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage.close());

  const toSettings = async (page: Page): Promise<void> => {
    await page.getByRole('link', { name: 'Settings' }).click();
    await page.getByRole('heading', { name: 'Where you are signed in' }).waitFor();
  };

  it('shows where they are signed in, and a phone that was left somewhere is signed out from here', async () => {
    const lost = await stage.signedIn('tuli', 'phone');
    const page = await stage.signedIn('tuli', 'desk');
    await toSettings(page);
    await page.getByText(/^\W*here$/).waitFor();
    await keepScreenshot(page, 'own-account');
    expect(await screenFaults(page, 'own account')).toEqual([]);
    const others = page.getByRole('button', { name: /^Sign out there/ });
    const before = await others.count();
    await others.first().click();
    await expect.poll(() => others.count(), { timeout: waitMs }).toBe(before - 1);
    await page.getByRole('button', { name: 'Sign out everywhere else' }).click();
    await expect.poll(() => others.count(), { timeout: waitMs }).toBe(0);

    await lost.getByRole('link', { name: 'Settings' }).click();
    await lost.reload();
    await lost.getByRole('link', { name: 'Sign in again' }).waitFor();
  });

  it('changes the password, says why one will not do, and keeps this device signed in', async () => {
    const page = await stage.signedIn('tuli', 'phone');
    await toSettings(page);
    const change = async (current: string, next: string): Promise<void> => {
      await page.getByLabel('The password until now').fill(current);
      await page.getByLabel('The new password').fill(next);
      await page.getByRole('button', { name: 'Change the password' }).click();
    };
    await change(demoPassword, 'Password123!');
    await page.getByRole('alert').waitFor();
    await change(demoPassword, 'slate and lantern light');
    await page.getByText(/^.*Changed\./).waitFor();
    await keepScreenshot(page, 'own-account');
    await page.reload();
    await page.getByRole('heading', { name: 'Where you are signed in' }).waitFor();

    const elsewhere = await (await stage.openDevice('phone')).newPage();
    await elsewhere.goto('/');
    await elsewhere.getByLabel('Organisation').fill(firm.handle);
    await elsewhere.getByLabel('Email').fill(`tuli@${firm.handle}.example`);
    await elsewhere.getByLabel('Password').fill('slate and lantern light');
    await elsewhere.getByRole('button', { name: 'Sign in' }).click();
    await elsewhere.getByRole('navigation').first().waitFor();
  });
});
