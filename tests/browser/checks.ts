import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { sizes } from './stage.ts';

const axeSource = readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

type Violation = { id: string; help: string; nodes: { target: string[]; failureSummary?: string }[] };

/**
 * What axe-core finds against WCAG 2.2 A and AA on the screen as it is, one line each. It runs through the debugger,
 * so that the page's Content-Security-Policy stays as it is.
 */
export async function accessibilityFaults(page: Page): Promise<string[]> {
  await page.evaluate(await axeSource);
  const found = (await page.evaluate(`axe.run(document, {
    runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] },
  }).then(({ violations, passes }) => ({ violations, passes: passes.length }))`)) as {
    violations: Violation[];
    passes: number;
  };
  if (found.passes === 0) throw new Error('axe-core found nothing to check on this screen');
  return found.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id} at ${target.join(' ')}: ${failureSummary ?? ''}`),
  );
}

/** How many CSS pixels the page is wider than its window; more than 0 means scrolling sideways. */
export const sidewaysPx = (page: Page): Promise<number> =>
  page.evaluate(
    'document.documentElement.scrollWidth - document.documentElement.clientWidth',
  ) as Promise<number>;

/** What can be tapped and is smaller than 44 CSS pixels one way or the other; links within a sentence may be. */
export const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(`[...document.querySelectorAll('a[href], button, input, select, textarea, summary, [role=button]')]
    .filter((element) => {
      const shown = element.closest('label') ?? element;
      const { width, height } = shown.getBoundingClientRect();
      const hidden = width <= 1 || height <= 1 || getComputedStyle(element).visibility === 'hidden'
        || element.closest('.frame-skip') !== null || element.closest('p, svg') !== null;
      return !hidden && (width < 43.5 || height < 43.5);
    })
    .map((element) => element.outerHTML.slice(0, 120))`) as Promise<string[]>;

/** What is wrong with a screen as it is, for whoever can't see, tap or scroll well; each with the screen's name. */
export async function screenFaults(page: Page, name: string): Promise<string[]> {
  const faults = [
    ...(await accessibilityFaults(page)),
    ...(await smallTargets(page)).map((target) => `small: ${target}`),
    ...((await sidewaysPx(page)) > 0 ? ['scrolls sideways'] : []),
  ];
  return faults.map((fault) => `${name}: ${fault}`);
}

/**
 * The same for all of a screen at once, since what lies under a sticky menu while scrolled there is not covered; and
 * in windows of these widths (CSS pixels) nothing may scroll sideways. Leaves the window as it was.
 */
export async function wholeScreenFaults(
  page: Page,
  name: string,
  widths: readonly number[],
): Promise<string[]> {
  const before = page.viewportSize() ?? { width: 1440, height: 900 };
  const height = (await page.evaluate('document.documentElement.scrollHeight')) as number;
  await page.setViewportSize({ width: before.width, height: height + 200 });
  const faults = await screenFaults(page, name);
  for (const width of widths) {
    await page.setViewportSize({ width, height: 640 });
    if ((await sidewaysPx(page)) > 0) faults.push(`${name}: scrolls sideways at ${width}`);
  }
  await page.setViewportSize(before);
  return faults;
}

/** The same in light and dark, as a phone and a desk show it; at 320 px nothing may scroll sideways. */
export async function faultsInEveryLook(page: Page, name: string): Promise<string[]> {
  const before = page.viewportSize() ?? sizes.phone;
  const faults: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    for (const [size, viewport] of Object.entries(sizes)) {
      await page.setViewportSize(viewport);
      const widths = size === 'phone' && colorScheme === 'light' ? [320] : [];
      faults.push(...(await wholeScreenFaults(page, `${name}, ${colorScheme}, ${size}`, widths)));
    }
  }
  await page.emulateMedia({ colorScheme: 'light' });
  await page.setViewportSize(before);
  return faults;
}

/**
 * Watches how often elements with exactly this text stand on the screen, also for a moment only.
 * @returns asks for the most at the same time so far
 */
export async function watchShown(page: Page, selector: string, text: string): Promise<() => Promise<number>> {
  await page.evaluate(`
    window.mostShown = 0;
    new MutationObserver(() => {
      const shown = [...document.querySelectorAll(${JSON.stringify(selector)})]
        .filter(({ textContent }) => textContent === ${JSON.stringify(text)});
      window.mostShown = Math.max(window.mostShown, shown.length);
    }).observe(document.body, { childList: true, subtree: true, characterData: true })`);
  return () => page.evaluate('window.mostShown');
}
