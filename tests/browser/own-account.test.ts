import { TOTP } from 'otpauth';
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

  /** The first step of signing in, on a device that knows nobody. */
  const passwordOn = async (page: Page, name: string, password: string): Promise<void> => {
    await page.goto('/');
    await page.getByLabel('Organisation').fill(firm.handle);
    await page.getByLabel('Email').fill(`${name}@${firm.handle}.example`);
    await page.getByLabel('Password').fill(password);
    await page.getByRole('button', { name: 'Sign in' }).click();
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
    await passwordOn(elsewhere, 'tuli', 'slate and lantern light');
    await elsewhere.getByRole('navigation').first().waitFor();
  });

  it('has a second step of signing in, by an app, and by a code for recovery where the app is lost', async () => {
    const page = await stage.signedIn('brask', 'phone');
    await toSettings(page);
    await page.getByRole('button', { name: 'Turn on an authenticator app' }).click();
    await page.getByRole('img', { name: /^QR code/ }).waitFor();
    await keepScreenshot(page, 'second-factor-new');
    expect(await screenFaults(page, 'second factor')).toEqual([]);
    const key = ((await page.locator('code').first().textContent()) ?? '').replaceAll(' ', '');
    const codeAt = (moment: number) => new TOTP({ secret: key }).generate({ timestamp: moment });
    const confirm = async (code: string): Promise<void> => {
      await page.getByLabel('The code that it shows now').fill(code);
      await page.getByLabel('Your password').fill(demoPassword);
      await page.getByRole('button', { name: 'Turn it on' }).click();
    };
    await confirm('000000');
    await page.getByRole('alert').waitFor();
    await confirm(codeAt(Date.now()));
    await page.getByRole('button', { name: 'I have them' }).waitFor();
    await keepScreenshot(page, 'second-factor-codes');
    const recovery = (await page.locator('ul code').first().textContent()) ?? '';
    await page.getByRole('button', { name: 'I have them' }).click();
    await page.getByText(/^On since .*8 codes/).waitFor();
    await keepScreenshot(page, 'second-factor-on');

    const elsewhere = await (await stage.openDevice('phone')).newPage();
    await passwordOn(elsewhere, 'brask', demoPassword);
    await elsewhere.getByLabel('Code').waitFor();
    await keepScreenshot(elsewhere, 'second-step');
    expect(await screenFaults(elsewhere, 'second step')).toEqual([]);
    await elsewhere.getByLabel('Code').fill('000000');
    await elsewhere.getByRole('button', { name: 'Sign in' }).click();
    await elsewhere.getByRole('alert').waitFor();
    // A code is good once: the next one, which a clock that runs ahead shows already.
    await elsewhere.getByLabel('Code').fill(codeAt(Date.now() + 30_000));
    await elsewhere.getByRole('button', { name: 'Sign in' }).click();
    await elsewhere.getByRole('navigation').first().waitFor();

    const third = await (await stage.openDevice('phone')).newPage();
    await passwordOn(third, 'brask', demoPassword);
    await third.getByLabel('Code').fill(recovery);
    await third.getByRole('button', { name: 'Sign in' }).click();
    await third.getByRole('navigation').first().waitFor();
  });
});
