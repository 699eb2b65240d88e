import type { Page } from 'playwright-core';

/** What has the focus is called: by itself, by its labels, by what it holds; nothing where the page itself has it. */
const nameOfFocus = `(() => {
  const on = document.activeElement;
  if (on === document.body) return '';
  const labels = [...(on?.labels ?? [])].map((label) => label.textContent);
  return [on?.getAttribute('aria-label'), ...labels, on?.textContent].join(' ').trim();
})()`;

/** Moves on by the tab key to what is called so, as somebody without a pointer would; fails where nothing is. */
export async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let presses = 0; presses < 80; presses += 1) {
    if (name.test((await page.evaluate(nameOfFocus)) as string)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`no Tab leads to ${name}, last on ${await page.evaluate(nameOfFocus)}`);
}
