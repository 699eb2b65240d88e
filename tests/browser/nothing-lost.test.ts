import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { demoPassword, firm } from '../../seed/firm.ts';
import { expectStatus, overHttp, signIn } from '../../seed/session.ts';
import type { DiaryWithCode } from '../../shared/contract/diary.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { recordBaseline } from './bring-to-changes.ts';
import { type CaseStage, openCaseStage } from './case-stage.ts';
import { type CaseIds, type KeptForm, keptForms } from './kept-forms.ts';
import { waitMs } from './stage.ts';

const email = (name: string) => `${name}@${firm.handle}.example`;

/** What becomes of what is typed; each gives the page on which the form is looked for again. */
const happenings: Record<string, (page: Page, form: KeptForm, base: string) => Promise<Page>> = {
  'a reload': async (page) => {
    await page.reload();
    return page;
  },
  'a second tab': async (page) => {
    const other = await page.context().newPage();
    await other.goto(page.url());
    return other;
  },
  'a killed tab': async (page) => {
    const address = page.url();
    const context = page.context();
    await page.close();
    const other = await context.newPage();
    await other.goto(address);
    return other;
  },
  'an expired session': async (page, { who }, base) => {
    const address = page.url();
    const elsewhere = await signIn(overHttp(base), firm.handle, email(who));
    expectStatus(await elsewhere.post('/me/sessions/end-others', {}), 200);
    await page.reload();
    await page.getByRole('link', { name: 'Sign in again' }).first().click();
    await page.getByLabel('Organisation').fill(firm.handle);
    await page.getByLabel('Email').fill(email(who));
    await page.getByLabel('Password').fill(demoPassword);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByLabel('Password').waitFor({ state: 'detached' });
    await page.goto(address);
    return page;
  },
};

describe('what is typed and not sent yet', () => {
  let stage: CaseStage;
  let ids: CaseIds;
  beforeAll(async () => {
    stage = await openCaseStage();
    const transport = overHttp(stage.base);
    const [oda, brask] = [
      await signIn(transport, firm.handle, email('oda')),
      await signIn(transport, firm.handle, email('brask')),
    ];
    const { siteId, chainId, id } = stage.bare;
    const { memberAddress } = expectStatus(await brask.get<{ memberAddress: string }>('/me'), 200);
    const intake = { symptom: { kind: 'dropOuts' }, affectedSources: ['disc'] };
    const seenDuplicates = [id];
    const watched = expectStatus(
      await oda.post<Ticket>('/tickets', {
        siteId,
        chainId,
        assigneeId: memberAddress,
        intake,
        seenDuplicates,
      }),
      201,
    );
    await recordBaseline(brask, watched.id);
    await brask.command(watched.id, { type: 'startWatch' });
    await brask.command(watched.id, { type: 'recordOccurrence' });
    expectStatus(await oda.post(`/tickets/${id}/diaries`, { days: 7 }), 201);
    const path = `/tickets/${id}/diaries`;
    const { items } = expectStatus(await oda.get<{ items: DiaryWithCode[] }>(path), 200);
    const reported = await fetch(`${stage.base}/d/${items[0]?.code}`, {
      method: 'POST',
      body: new URLSearchParams({ what: 'now', report: randomUUID() }),
    });
    expect(reported.status).toBeLessThan(400);
    ids = { ticketId: stage.play.ticketId, boatId: id, watchedId: watched.id };
  });
  afterAll(() => stage.close());
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  for (const form of keptForms)
    it(`is there after ${Object.keys(happenings).join(', ')}: ${form.form}`, async () => {
      let page = await stage.signedIn(form.who, form.size);
      await page.goto(form.path(ids));
      await form.open(page);
      await form.field(page).fill(form.text);
      for (const [name, happen] of Object.entries(happenings)) {
        page = await happen(page, form, stage.base);
        await form.open(page);
        await expect
          .poll(() => form.field(page).inputValue(), { timeout: waitMs, message: name })
          .toBe(form.text);
      }
    });
});
