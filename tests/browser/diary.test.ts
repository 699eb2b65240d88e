import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { DiaryWithCode } from '../../shared/contract/diary.ts';
import { type CaseStage, openCaseStage } from './case-stage.ts';
import { accessibilityFaults, screenFaults, wholeScreenFaults } from './checks.ts';
import { keepScreenshot, sizes, waitMs } from './stage.ts';

describe("a client's diary in a browser", () => {
  let stage: CaseStage;
  let address: string;
  beforeAll(async () => {
    stage = await openCaseStage();
  });
  afterAll(() => stage.close());
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  /** A phone that nobody is signed in on, as the client's is; nothing runs on it. */
  const clientsPhone = async (locale: string): Promise<Page> => {
    const context = await stage.browser.newContext({
      baseURL: stage.base,
      viewport: sizes.phone,
      hasTouch: true,
      javaScriptEnabled: false,
      locale,
    });
    context.setDefaultTimeout(waitMs);
    return context.newPage();
  };

  it('is opened by a technician on a phone, and its link and code are there to be given', async () => {
    const page = await stage.signedIn('brask', 'phone');
    await page.goto(`/app/visits/${stage.bare.id}/diary`);
    await page.getByText('None is open.').waitFor();
    await page.getByLabel('For how long?').selectOption('7');
    const listed = page.waitForResponse(
      (answer) => answer.url().endsWith('/diaries') && answer.request().method() === 'GET',
    );
    await page.getByRole('button', { name: 'Open a diary' }).click();
    const { items } = (await (await listed).json()) as { items: DiaryWithCode[] };
    const code = items[0]?.code ?? '';
    address = `/d/${code}`;
    await page.getByText(code.match(/.{4}/g)?.join('-') ?? 'no code').waitFor();
    await page.getByRole('link', { name: new RegExp(`${address}$`) }).waitFor();
    await keepScreenshot(page, 'diary-links');
    expect(await wholeScreenFaults(page, 'diary', [320])).toEqual([]);
  });

  it('takes one tap on a phone on which nothing runs, asks two questions, and deletes what was sent', async () => {
    const page = await clientsPhone('en-GB');
    await page.goto(address);
    await page.getByRole('heading', { name: 'Did the fault come?' }).waitFor();
    await keepScreenshot(page, 'diary-page');
    await page.getByRole('button', { name: 'It happened just now' }).tap();
    await page.getByText(/^Thank you\. Sent: /).waitFor();
    await keepScreenshot(page, 'diary-page-sent');
    await page.getByLabel('Some seconds').check();
    await page.getByRole('button', { name: 'Send the answers' }).tap();
    await page.getByText('Thank you, your answers were sent too.').waitFor();

    const desk = await stage.signedIn('oda', 'desk');
    await desk.goto(`/app/tickets/${stage.bare.id}`);
    await desk.getByText('One occurrence reported.').waitFor();
    await desk.getByText(/lasted some seconds/).waitFor();
    await keepScreenshot(desk, 'ticket-with-diary');

    await page.getByText('Delete what I sent').tap();
    await page.getByRole('button', { name: 'Delete it now' }).tap();
    await page.getByText('What you sent is deleted.').waitFor();
    // Without a reload: the news of it comes by itself.
    await desk.getByText('Nothing reported so far.').waitFor();
    await desk.getByText(/^Deleted by the client/).waitFor();
  });

  it('can be read by everybody, in both languages, and says the same once it is closed', async () => {
    const german = await clientsPhone('de-DE');
    await german.goto(address);
    await german.getByRole('heading', { name: 'Kam der Fehler?' }).waitFor();
    await german.getByText('Es ist früher passiert').tap();
    await keepScreenshot(german, 'diary-page-german');

    const page = await stage.browser.newPage({ baseURL: stage.base, viewport: sizes.phone, locale: 'en-GB' });
    await page.goto(address);
    expect(await screenFaults(page, 'diary page')).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await accessibilityFaults(page)).toEqual([]);

    const desk = await stage.signedIn('oda', 'desk');
    await desk.goto(`/app/tickets/${stage.bare.id}`);
    await desk.getByRole('button', { name: 'Close this diary' }).click();
    await desk.getByText('None is open.').waitFor();
    expect((await page.goto(address))?.status()).toBe(404);
    await page.getByRole('heading', { name: 'This page is not open' }).waitFor();
    await keepScreenshot(page, 'diary-page-closed');
  });
});
