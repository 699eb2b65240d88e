import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import lighthouse from 'lighthouse';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { firm } from '../../seed/firm.ts';
import { expectStatus, overHttp, signIn } from '../../seed/session.ts';
import type { TicketSummary } from '../../shared/contract/ticket.ts';
import { openCaseStage } from '../browser/case-stage.ts';
import { chromiumPath, type MemberName, openStage, signInOn, sizes } from '../browser/stage.ts';
import { freePort } from '../support/server-process.ts';
import type { BenchRow } from './bench-row.ts';

/**
 * Lighthouse's scores of a phone (simulated slow 4G and a processor four times slower) for the screens that people
 * wait for, and what a change of screen takes at the same slow-down, each beside its goal.
 */
export async function benchScreens(): Promise<BenchRow[]> {
  const stage = await openStage();
  const rows: BenchRow[] = [];
  try {
    const brask = await signIn(overHttp(stage.base), firm.handle, `brask@${firm.handle}.example`);
    const { items } = expectStatus(
      await brask.get<{ items: TicketSummary[] }>('/tickets?assigneeId=me&state=open'),
      200,
    );
    const visit = `/app/visits/${items[0]?.id}`;
    rows.push(...(await onAPhone(stage.base, null, ({ score }) => score('sign-in', '/'))));
    rows.push(
      ...(await onAPhone(stage.base, 'brask', async ({ score, page }) => [
        ...(await score('visit', visit)),
        ...(await score('triage step', `${visit}/triage`)),
        ...(await routeRows(page, [
          ['visits to a visit', '/app/visits', `a[href="${visit}"]`],
          ['visit to the triage', visit, `a[href="${visit}/triage"]`],
          ['visit to its evidence', visit, `a[href="${visit}/evidence"]`],
        ])),
      ])),
    );
  } finally {
    await stage.close();
  }
  return [...rows, ...(await secondLineRows())];
}

async function secondLineRows(): Promise<BenchRow[]> {
  const stage = await openCaseStage();
  try {
    const page = `/app/cases/${stage.play.ticketId}`;
    return await onAPhone(stage.base, 'pim', async (device) => [
      ...(await device.score('case', page)),
      ...(await routeRows(device.page, [['queue to a case', '/app/queue', `main a[href="${page}"]`]])),
    ]);
  } finally {
    await stage.close();
  }
}

type Device = { page: Page; score(name: string, path: string): Promise<BenchRow[]> };

/** A browser of its own, which Lighthouse can reach, with somebody signed in on it or nobody. */
async function onAPhone(
  base: string,
  name: MemberName | null,
  measure: (device: Device) => Promise<BenchRow[]>,
): Promise<BenchRow[]> {
  const profile = await mkdtemp(join(tmpdir(), 'halfsplit-profile-'));
  const port = await freePort();
  const context: BrowserContext = await chromium.launchPersistentContext(profile, {
    executablePath: chromiumPath,
    args: ['--no-sandbox', `--remote-debugging-port=${port}`],
    baseURL: base,
    viewport: sizes.phone,
    hasTouch: true,
    locale: 'en-GB',
  });
  try {
    const page = await context.newPage();
    if (name !== null) await signInOn(page, name);
    return await measure({ page, score: (screen, path) => lighthouseRows(screen, base + path, port) });
  } finally {
    await context.close();
    await rm(profile, { recursive: true, force: true });
  }
}

/** The goals that a screen has to reach, 0..100. */
const goals = { performance: 95, accessibility: 100, 'best-practices': 95 } as const;

async function lighthouseRows(screen: string, url: string, port: number): Promise<BenchRow[]> {
  const result = await lighthouse(url, {
    port,
    logLevel: 'error',
    onlyCategories: Object.keys(goals),
    // who is signed in is kept there
    disableStorageReset: true,
  });
  if (result === undefined || result.lhr.runtimeError !== undefined)
    throw new Error(`Lighthouse could not measure ${screen}: ${result?.lhr.runtimeError?.message}`);
  const { categories, audits } = result.lhr;
  return Object.entries(goals).map(([category, goal]) => {
    const score = 100 * (categories[category]?.score ?? 0);
    const lost = (categories[category]?.auditRefs ?? [])
      .filter(({ id, weight }) => weight > 0 && (audits[id]?.score ?? 1) < 0.9)
      .map(({ id }) => `${id} ${audits[id]?.displayValue ?? ''}`.trim());
    return {
      name: `${screen}: ${category}${lost.length === 0 ? '' : ` (lost: ${lost.join(', ')})`}`,
      value: score.toFixed(0),
      baseline: `goal ${goal}`,
      ratio: (score / goal).toFixed(2),
    };
  });
}

const slowDown = 4;
const rounds = 5;
const goalMs = 100;

/** Median from the tap on a link to the frame in which the next screen's heading and content stand. */
async function routeRows(
  page: Page,
  routes: readonly (readonly [name: string, from: string, link: string])[],
): Promise<BenchRow[]> {
  // Lighthouse opens a tab of its own; one that can't be seen paints nothing
  await page.bringToFront();
  const control = await page.context().newCDPSession(page);
  const rows: BenchRow[] = [];
  for (const [name, from, link] of routes) {
    const took: number[] = [];
    for (let round = 0; round < rounds; round += 1) {
      await page.goto(from);
      await page.locator(link).first().waitFor();
      // what is fetched and read ahead once a screen stands is no part of the change
      await page.waitForTimeout(2000);
      await control.send('Emulation.setCPUThrottlingRate', { rate: slowDown });
      took.push((await page.evaluate(`(${tapAndWait})(${JSON.stringify(link)})`)) as number);
      await control.send('Emulation.setCPUThrottlingRate', { rate: 1 });
    }
    const median = took.toSorted((a, b) => a - b)[Math.floor(rounds / 2)] ?? Number.NaN;
    rows.push({
      name: `${name}, processor ${slowDown} times slower (${took.map((ms) => ms.toFixed(0)).join(', ')})`,
      value: `${median.toFixed(0)} ms`,
      baseline: `goal ${goalMs} ms`,
      ratio: (median / goalMs).toFixed(2),
    });
  }
  return rows;
}

/** Runs in the page. Taps a link and waits until the next screen stands there, loaded, and was painted. */
const tapAndWait = `(selector) => new Promise((resolve) => {
  const before = document.querySelector('main h1');
  const start = performance.now();
  const isThere = () => {
    const heading = document.querySelector('main h1');
    if (heading === null || heading === before) return false;
    return ![...document.querySelectorAll('main [role=status]')].some((each) => each.textContent.startsWith('Loading'));
  };
  const look = () => {
    // a task after the next frame: it was painted
    if (isThere()) requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - start)));
    else requestAnimationFrame(look);
  };
  document.querySelector(selector).click();
  requestAnimationFrame(look);
})`;
