import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { accessibilityFaults, sidewaysPx, watchShown } from './checks.ts';
import { commandEntry, putInOutbox } from './outbox-entries.ts';
import {
  keepScreenshot,
  type MemberName,
  openStage,
  type Stage,
  signInOn,
  waitForShell,
  waitMs,
} from './stage.ts';

/** Takes a ticket over as a member, by a request of their own. */
const takeOver = (name: MemberName, ticketId: string): string => `(async () => {
  const tokens = await (await fetch('/auth/sign-in', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ organisation: 'lanternrow', email: '${name}@lanternrow.example', password: 'demo-only-halfsplit' }),
  })).json();
  const answer = await fetch('/tickets/${ticketId}/take-over', {
    method: 'POST',
    headers: { authorization: 'Bearer ' + tokens.accessToken, 'idempotency-key': crypto.randomUUID() },
  });
  return answer.status;
})()`;

describe('the frame around every screen', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage.close());
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  const heading = (page: Page) => page.getByRole('heading', { level: 1 });

  it('says no to a wrong password, in words, and then lets in', async () => {
    const page = await (await stage.openDevice('phone')).newPage();
    await page.goto('/');
    await page.getByLabel('Organisation').fill('lanternrow');
    await page.getByLabel('Email').fill('brask@lanternrow.example');
    await page.getByLabel('Password').fill('not the password');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByRole('alert').waitFor();
    expect(await page.getByRole('alert').textContent()).toContain('Sign-in was refused');
    await keepScreenshot(page, 'sign-in-refused');
    await signInOn(page, 'brask');
    await page.getByRole('heading', { name: 'My visits' }).waitFor();
  });

  it('starts everybody on their own screen', async () => {
    const homes: [MemberName, string][] = [
      ['oda', '/app/call'],
      ['brask', '/app/visits'],
      ['pim', '/app/queue'],
      ['runa', '/app/members'],
    ];
    for (const [name, address] of homes) {
      const page = await stage.signedIn(name, 'desk');
      await page.waitForURL(`**${address}`);
      await heading(page).waitFor();
    }
  });

  it('keeps a visit and what is done on it without a connection, over a reload, and sends it once', async () => {
    const page = await stage.signedIn('brask', 'phone', 'light', 'kept');
    await page
      .getByRole('link', { name: /Gable|Corrowin|./ })
      .first()
      .waitFor();
    await waitForShell(page);
    await page.getByRole('main').getByRole('link').first().click();
    await page.getByRole('heading', { name: 'The chain' }).waitFor();
    await page.getByLabel('Note').waitFor();
    await page.context().setOffline(true);
    await page.getByLabel('Note').fill('The rack door sticks.');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('1 step is still to be sent').waitFor();
    await page.reload();
    await page.getByText('The rack door sticks.').waitFor();
    await page.getByText('1 to send').waitFor();
    await keepScreenshot(page, 'visit-offline');
    await page.getByRole('link', { name: /Outbox/ }).click();
    await page.getByText('Waiting to be sent').waitFor();
    await keepScreenshot(page, 'outbox-offline');
    await page.context().setOffline(false);
    await page.getByText('All sent').waitFor();
    await page.goBack();
    await page.getByText('The rack door sticks.').waitFor();
    expect(await page.getByText('The rack door sticks.').count()).toBe(1);
  });

  it('shows both sides of a conflict and asks, when somebody else took the ticket over in between', async () => {
    const brask = await stage.signedIn('brask', 'phone', 'light', 'kept');
    await waitForShell(brask);
    await brask.getByRole('main').getByRole('link').first().click();
    await brask.getByLabel('Note').waitFor();
    const ticketId = brask.url().split('/').at(-1) ?? '';
    await brask.context().setOffline(true);
    // Steps of the ticket, as the triage screens write them down.
    const audit = { type: 'reviewAudit', chainVersion: 1, note: '' };
    await putInOutbox(brask, commandEntry(ticketId, audit));
    await putInOutbox(brask, commandEntry(ticketId, { type: 'note', text: 'Written without signal.' }));
    const tuli = await stage.signedIn('tuli', 'phone');
    const status = await tuli.evaluate(takeOver('tuli', ticketId));
    expect(status).toBe(200);
    await brask.context().setOffline(false);
    await brask.getByText('1 needs you').waitFor();
    await brask.getByRole('link', { name: /Outbox/ }).click();
    const conflict = brask.getByRole('main');
    await conflict.getByText(/^Tuli Marrowen has had the ticket since /).waitFor();
    await conflict.getByText('Tuli Marrowen: Take the ticket over').waitFor();
    await keepScreenshot(brask, 'conflict');
    expect(await accessibilityFaults(brask)).toEqual([]);
    expect(await conflict.textContent()).toContain('1 more of this ticket');
    // The steps go on record as his, and the ticket stays with her.
    await conflict.getByRole('button', { name: /leave the ticket with Tuli Marrowen$/ }).click();
    await brask.getByText('All sent').waitFor();
    await brask.goto(`/app/visits/${ticketId}`);
    await brask.getByText('Written without signal.').waitFor();
    // Now it is hers: what he does next he keeps as a note, which is anybody's to write.
    await putInOutbox(brask, commandEntry(ticketId, { type: 'recordAsFound', chainVersion: 1 }));
    await brask.reload();
    await brask.getByText('1 needs you').waitFor();
    await brask.getByRole('link', { name: /Outbox/ }).click();
    await keepScreenshot(brask, 'conflict-reassigned');
    await conflict.getByRole('button', { name: 'Keep what I did as a note only' }).click();
    await brask.getByText('All sent').waitFor();
    await brask.goto(`/app/visits/${ticketId}`);
    await brask.getByText(/^Done on site and not on record as steps/).waitFor();
    // Back to whom the other tests look for it.
    expect(await tuli.evaluate(takeOver('brask', ticketId))).toBe(200);
  });

  it('loses nothing when the tab is killed while it sends, and sends nothing twice', async () => {
    const context = await stage.openDevice('phone', 'light', 'kept');
    const page = await context.newPage();
    await signInOn(page, 'tuli');
    await waitForShell(page);
    await page.getByRole('main').getByRole('link').first().click();
    await page.getByLabel('Note').waitFor();
    const address = page.url();
    const mostShown = await watchShown(page, '.notes span', 'Sent at once.');
    await page.getByLabel('Note').fill('Sent at once.');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('Sent at once.', { exact: true }).first().waitFor();
    await page.getByText('All sent').waitFor();
    expect(await mostShown()).toBe(1);
    // The server gets every step, and the phone never its answer.
    await page.route('**/commands', async (route) => {
      await route.fetch();
      await route.abort('connectionreset');
    });
    for (const text of ['First of three.', 'Second of three.', 'Third of three.']) {
      await page.getByLabel('Note').fill(text);
      await page.getByRole('button', { name: 'Write it down' }).click();
      await page.getByText(text, { exact: true }).waitFor();
    }
    await page.close();
    const again = await context.newPage();
    await again.goto(address);
    await again.getByText('All sent').waitFor();
    await again.reload();
    for (const text of ['First of three.', 'Second of three.', 'Third of three.']) {
      await again.getByText(text, { exact: true }).first().waitFor();
      expect([text, await again.getByText(text, { exact: true }).count()]).toEqual([text, 1]);
    }
  });

  it('stays signed in when the reply with its new tokens is lost', async () => {
    const page = await stage.signedIn('tuli', 'phone');
    await page.getByRole('main').getByRole('link').first().click();
    await page.getByLabel('Note').waitFor();
    let lost = 0;
    await page.route('**/auth/refresh', async (route) => {
      if (lost === 2) return route.fallback();
      lost += 1;
      await route.fetch();
      return route.abort('connectionreset');
    });
    // An access token is kept in memory only: whoever starts anew needs another.
    await page.reload();
    await page.getByLabel('Note').fill('After two lost replies.');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('After two lost replies.').first().waitFor();
    await page.getByText('All sent').waitFor();
    expect(lost).toBe(2);
  });

  it('shows what somebody else does, as it happens', async () => {
    const watching = await stage.signedIn('oda', 'desk');
    await watching.getByRole('heading', { name: 'Call in progress' }).waitFor();
    const visiting = await stage.signedIn('tuli', 'phone');
    await visiting.getByRole('main').getByRole('link').first().click();
    const both = await stage.signedIn('tuli', 'desk');
    await both.goto(visiting.url().replace(stage.base, ''));
    await both.getByLabel('Note').waitFor();
    await both.getByLabel('Note').fill('Seen from the other device.');
    await both.getByRole('button', { name: 'Write it down' }).click();
    await visiting.getByText('Seen from the other device.').waitFor();
  });

  it('reads again what the server was too busy to give', async () => {
    const visiting = await stage.signedIn('tuli', 'phone');
    await visiting.getByRole('main').getByRole('link').first().click();
    await visiting.getByLabel('Note').waitFor();
    const ticketPath = `/tickets/${visiting.url().split('/').at(-1)}`;
    let refusals = 0;
    await visiting.route(`**${ticketPath}`, (route) => {
      if (refusals === 2) return route.fallback();
      refusals += 1;
      return route.fulfill({ status: 503, headers: { 'retry-after': '1' } });
    });
    const other = await stage.signedIn('tuli', 'desk');
    await other.goto(visiting.url().replace(stage.base, ''));
    await other.getByLabel('Note').fill('Told while the server was busy.');
    await other.getByRole('button', { name: 'Write it down' }).click();
    await visiting.getByText('Told while the server was busy.').waitFor();
    expect(refusals).toBe(2);
  });

  it('is usable by keyboard alone', async () => {
    const page = await (await stage.openDevice('desk')).newPage();
    await page.goto('/');
    await heading(page).waitFor();
    await page.keyboard.press('Tab');
    await page.keyboard.type('lanternrow');
    await page.keyboard.press('Tab');
    await page.keyboard.type('brask@lanternrow.example');
    await page.keyboard.press('Tab');
    await page.keyboard.type('demo-only-halfsplit');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'My visits' }).waitFor();
    const focused = () => page.evaluate('document.activeElement?.textContent ?? ""');
    // After a change of screen reading begins at its heading.
    expect(await focused()).toBe('My visits');
    await page.getByRole('main').getByRole('link').first().waitFor();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'The chain' }).waitFor();
  });

  it('signs out, and leaves nothing of the member on the device', async () => {
    const page = await stage.signedIn('brask', 'phone');
    await page.getByRole('main').getByRole('link').first().waitFor();
    await page.getByRole('link', { name: 'Settings' }).click();
    await page.getByRole('button', { name: 'Sign out', exact: true }).click();
    await page.getByLabel('Password', { exact: true }).waitFor();
    const kept = () => page.evaluate('indexedDB.databases().then((all) => all.map(({ name }) => name))');
    await expect.poll(kept, { timeout: waitMs }).toEqual(['halfsplit-session']);
    expect(await page.evaluate('Object.keys(localStorage).join()')).not.toContain('typed');
    await page.reload();
    await page.getByLabel('Password', { exact: true }).waitFor();
  });

  it('does not scroll sideways at 320 px, nor at 200 % zoom', async () => {
    const page = await stage.signedIn('brask', 'phone');
    await page.setViewportSize({ width: 320, height: 640 });
    for (const path of ['/app/visits', '/app/outbox', '/app/settings']) {
      await page.goto(path);
      await heading(page).waitFor();
      expect([path, await sidewaysPx(page)]).toEqual([path, 0]);
    }
    const desk = await stage.signedIn('oda', 'desk');
    // 200 % zoom halves the window's CSS pixels.
    await desk.setViewportSize({ width: 720, height: 450 });
    await heading(desk).waitFor();
    expect(await sidewaysPx(desk)).toBe(0);
  });

  it('keeps API addresses for the API, and its own for itself', async () => {
    const page = await stage.signedIn('brask', 'phone', 'light', 'kept');
    await waitForShell(page);
    await page.goto('/app/no/such/page');
    await page.getByRole('heading', { name: 'There is no such page' }).waitFor();
    const answer = await page.goto('/no-such-address');
    expect(answer?.status()).toBe(404);
    expect(answer?.headers()['content-type']).toContain('application/problem+json');
  });

  it('breaks no rule of its Content-Security-Policy', async () => {
    const context = await stage.openDevice('phone');
    await context.addInitScript(
      "addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) => console.error('CSP', violatedDirective, blockedURI))",
    );
    const page = await context.newPage();
    const errors: string[] = [];
    page.on('console', (message) => {
      if (message.type() === 'error') errors.push(message.text());
    });
    page.on('pageerror', (error) => errors.push(String(error)));
    await signInOn(page, 'brask');
    await page.getByRole('main').getByRole('link').first().click();
    await page.getByRole('group', { name: /^Chain/ }).waitFor();
    expect(errors).toEqual([]);
    const policy = (await page.request.get('/')).headers()['content-security-policy'] ?? '';
    expect(policy).toContain("default-src 'self'");
    expect(policy).not.toContain('unsafe');
  });
});
