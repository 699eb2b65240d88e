import type { BrowserContext, Page } from 'playwright-core';

/** Lines kept of each page; a screen's last minute fits. */
const mostLines = 80;
const diaries = new Map<Page, string[]>();

/** Writes down what the pages of a context ask for and say, so that a test that fails can tell what they were about. */
export function keepDiary(context: BrowserContext): void {
  context.on('page', (page) => {
    const lines: string[] = [];
    diaries.set(page, lines);
    const note = (text: string) => {
      // The client's own files say nothing of what went wrong.
      if (text.includes(' /assets/')) return;
      lines.push(`${new Date().toISOString().slice(11, 23)} ${text}`);
      if (lines.length > mostLines) lines.shift();
    };
    const pathOf = (url: string) => url.replace(/^https?:\/\/[^/]+/, '');
    page.on('framenavigated', (frame) => note(`at ${pathOf(frame.url())}`));
    page.on('response', (reply) =>
      note(`${reply.status()} ${reply.request().method()} ${pathOf(reply.url())}`),
    );
    page.on('requestfailed', (request) =>
      note(`${request.failure()?.errorText} ${request.method()} ${pathOf(request.url())}`),
    );
    page.on('console', (said) => note(`console ${said.type()}: ${said.text()}`));
    page.on('pageerror', (error) => note(`thrown ${error.stack ?? error.message}`));
  });
}

/** What each page of the test that runs was about, and on what screen it stands; begins anew. */
export async function takeDiaries(): Promise<string> {
  const told = await Promise.all(
    [...diaries].map(async ([page, lines], at) => {
      const screen = page.isClosed()
        ? 'closed'
        : await page
            .evaluate('[new Date().toISOString(), document.body.innerText].join("\\n")')
            .catch(String);
      return [`page ${at + 1}`, ...lines, 'its screen:', screen].join('\n');
    }),
  );
  diaries.clear();
  return told.join('\n\n');
}
