import { existsSync } from 'node:fs';
import { cp, mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { demoPassword, firm } from '../../seed/firm.ts';
import { freePort, startProgram, stopProgram } from '../support/server-process.ts';
import { type Link, openLink } from './link.ts';
import { keepDiary } from './page-diary.ts';

/** Screens are looked at and kept in these two sizes, CSS pixels. */
export const sizes = { phone: { width: 360, height: 740 }, desk: { width: 1440, height: 900 } } as const;
export type Size = keyof typeof sizes;
export type Look = 'light' | 'dark' | 'outdoor';
/** Whether a device keeps the client's own files, as every device does: that takes 2 s each, and few tests go without. */
export type Files = 'fetched' | 'kept';
export type MemberName = 'oda' | 'brask' | 'tuli' | 'pim' | 'runa';

const screenshots = fileURLToPath(new URL('../../screenshots', import.meta.url));

/** Names the folder with the demo in it that plant-once.ts made; without it, each stage plants and translates its own. */
export const plantedFolderName = 'HALFSPLIT_TEST_PLANTED';

/** The demo, bundled by plant-once.ts; below this package, whose files it looks for from where it lies. */
export const demoProgram = 'dist/tests/run-demo.js';

export const demoEnvironment = (dataFolder: string, port: number): NodeJS.ProcessEnv => {
  const { DATABASE_URL: _, ...env } = process.env;
  return {
    ...env,
    HALFSPLIT_DATA: dataFolder,
    PORT: String(port),
    LOG_LEVEL: 'error',
    HALFSPLIT_HEARTBEAT_S: '2',
  };
};

/** The real server as a process of its own, on the embedded database with the demo in it, and a real browser. */
export type Stage = {
  readonly base: string;
  readonly browser: Browser;
  /** Between the browsers and the server. */
  readonly link: Link;
  /** A device of its own: nothing is shared with others but the server. */
  openDevice(size: Size, look?: Look, files?: Files): Promise<BrowserContext>;
  /** A device on which that member of the demo's firm is signed in, through the screen. */
  signedIn(name: MemberName, size: Size, look?: Look, files?: Files): Promise<Page>;
  close(): Promise<void>;
};

export async function openStage(): Promise<Stage> {
  const dataFolder = await mkdtemp(join(tmpdir(), 'halfsplit-browser-'));
  const planted = process.env[plantedFolderName];
  if (planted !== undefined) await cp(planted, dataFolder, { recursive: true });
  const program = planted === undefined ? 'seed/run-demo.ts' : demoProgram;
  const port = await freePort();
  const link = await openLink(port);
  const base = `http://127.0.0.1:${link.port}`;
  const server = await startProgram(program, demoEnvironment(dataFolder, port), base);
  const browser = await openBrowser();
  const openDevice = (size: Size, look?: Look, files?: Files) => deviceIn(browser, base, size, look, files);
  return {
    base,
    browser,
    link,
    openDevice,
    signedIn: async (name, size, look, files) => {
      const page = await (await openDevice(size, look, files)).newPage();
      await signInOn(page, name);
      return page;
    },
    close: async () => {
      await browser.close();
      link.close();
      await stopProgram(server);
      await rm(dataFolder, { recursive: true, force: true });
    },
  };
}

/** Assumed: what a screen on a busy machine may take to show what it is waited for; what comes sooner costs nothing. */
export const waitMs = 60_000;

/**
 * What CHROMIUM names; or Debian's chromium, without a window's parts where that is installed, which takes two thirds of
 * the time.
 */
export const chromiumPath =
  process.env.CHROMIUM ??
  ['/usr/bin/chromium-headless-shell', '/usr/bin/chromium'].find((path) => existsSync(path)) ??
  '/usr/bin/chromium';
export const openBrowser = (): Promise<Browser> =>
  chromium.launch({ executablePath: chromiumPath, args: ['--no-sandbox'] });

/** A device of its own in a browser, of that size and look, that comes to a server. */
export async function deviceIn(
  browser: Browser,
  base: string,
  size: Size,
  look: Look = 'light',
  files: Files = 'fetched',
): Promise<BrowserContext> {
  const context = await browser.newContext({
    baseURL: base,
    viewport: sizes[size],
    hasTouch: size === 'phone',
    colorScheme: look === 'dark' ? 'dark' : 'light',
    locale: 'en-GB',
    reducedMotion: 'reduce',
    serviceWorkers: files === 'kept' ? 'allow' : 'block',
  });
  if (look === 'outdoor') await context.addInitScript("localStorage.setItem('halfsplit-look', 'outdoor')");
  context.setDefaultTimeout(waitMs);
  keepDiary(context);
  return context;
}

/** Signs a member of the demo's firm in, as they would: by typing; or of another organisation. */
export async function signInOn(
  page: Page,
  name: MemberName | 'vesper',
  organisation: string = firm.handle,
): Promise<void> {
  await page.goto('/');
  await page.getByLabel('Organisation').fill(organisation);
  await page.getByLabel('Email').fill(`${name}@${organisation}.example`);
  await page.getByLabel('Password').fill(demoPassword);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.getByRole('navigation').first().waitFor();
}

/** Keeps what is on the screen as `screenshots/<name>-<size>.png`, to be looked at. */
export async function keepScreenshot(page: Page, name: string): Promise<void> {
  await mkdir(screenshots, { recursive: true });
  const before = page.viewportSize() ?? sizes.phone;
  const { width } = before;
  const size = width === sizes.phone.width ? 'phone' : width === sizes.desk.width ? 'desk' : String(width);
  // A window as high as the page, so that what sticks to its lower edge lies over nothing.
  const height = (await page.evaluate('document.documentElement.scrollHeight')) as number;
  await page.setViewportSize({ width, height: Math.max(before.height, height) });
  await page.screenshot({ path: join(screenshots, `${name}-${size}.png`) });
  await page.setViewportSize(before);
}

/** Waits until the client's own files are kept, so that it starts without a connection; on a device that keeps them. */
export async function waitForShell(page: Page): Promise<void> {
  await page.evaluate('navigator.serviceWorker.ready.then(() => undefined)');
  await page.waitForFunction(
    'navigator.serviceWorker.controller !== null || caches.keys().then((keys) => keys.length > 0)',
  );
}
