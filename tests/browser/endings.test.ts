import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { firm } from '../../seed/firm.ts';
import { expectStatus, overHttp, signIn } from '../../seed/session.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { type CaseStage, openCaseStage } from './case-stage.ts';
import { faultsInEveryLook } from './checks.ts';
import { keepScreenshot } from './stage.ts';

/** How much of a picture is drawn on, in its own pixels. */
const darkPixels = (picture: Element): number => {
  const image = picture as HTMLImageElement;
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [image.naturalWidth, image.naturalHeight];
  const context = canvas.getContext('2d');
  context?.drawImage(image, 0, 0);
  const { data } = context?.getImageData(0, 0, canvas.width, canvas.height) ?? { data: [] };
  return data.filter((value, at) => at % 4 === 0 && value < 128).length;
};

describe('how a ticket ends', () => {
  let stage: CaseStage;
  beforeAll(async () => {
    stage = await openCaseStage();
  });
  afterAll(() => stage.close());
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  /** A technician's phone whose clock, and the server's with it, goes on at a word. */
  async function phoneOf(name: 'brask' | 'tuli', ticketId: string) {
    let now = new Date();
    const page = await stage.signedIn(name, 'phone');
    await page.context().clock.install({ time: now });
    stage.clock.to(now);
    await page.goto(`/app/visits/${ticketId}/triage`);
    const faults: string[] = [];
    return {
      page,
      faults,
      heading: (text: string | RegExp) => page.getByRole('heading', { level: 1, name: text }).waitFor(),
      press: (text: string | RegExp) =>
        page
          .getByRole('button', { name: text })
          .or(page.getByRole('link', { name: text }))
          .first()
          .click(),
      pass: async (minutes: number) => {
        await page.getByText('All sent').waitFor();
        now = new Date(now.getTime() + minutes * 60_000);
        stage.clock.to(now);
        await page.context().clock.fastForward(minutes * 60_000);
      },
      look: async (name: string) => {
        await keepScreenshot(page, name);
        faults.push(...(await faultsInEveryLook(page, name)));
      },
    };
  }

  it('goes from a directed step to a culprit, a remedy that holds, a closed ticket, and opens again', async () => {
    const desk = await stage.signedIn('pim', 'desk');
    await desk.goto(`/app/cases/${stage.play.ticketId}`);
    await desk.getByRole('button', { name: 'Take the case' }).click();
    // A step is picked where it is to be made, on the drawing.
    await desk.getByRole('button', { name: /^Cable C5/ }).click();
    const steps = desk.locator('.case-place').locator('xpath=.//h5/..');
    const step = (await steps.getByRole('button').first().textContent()) ?? '';
    await steps.getByRole('button').first().click();
    const inWords = desk.getByLabel('The step in words');
    await expect.poll(() => inWords.inputValue()).toMatch(/: Cable C5 /);
    expect(await inWords.inputValue()).toContain(step.replace(/ \(tried before\)$/, ''));
    await desk.getByLabel('The step in words').fill('Read the output level of A once more, and leave it.');
    await keepScreenshot(desk, 'case-directing');
    await desk.getByRole('button', { name: 'Give the case back for this step' }).click();
    await desk.getByText('The case is back with the technician for that step.').waitFor();

    const { page, heading, press, pass, look, faults } = await phoneOf('brask', stage.play.ticketId);
    await page.getByText('Read the output level of A once more, and leave it.').first().waitFor();
    await look('ending-directed');
    await page.getByLabel('Your answer').fill('Still standard.');
    await press('Answer it');
    await page.getByText('Your answer').waitFor({ state: 'detached' });
    await look('ending-answered');
    await press('Name the culprit');
    await heading('Name the culprit');
    await look('ending-culprit');
    await press('Name it');
    await heading(/C5.*: how does this end\?$/);
    await page.getByText('A way around it, which the client accepts').click();
    await press('Settle on this');
    await page.getByText('Fill in every line, with three letters at least.').waitFor();
    await look('ending-workaround');
    await page.getByText('Repaired for good').click();
    await page.getByLabel('What is done?').fill('An optical cable in the conduit, beside the old one.');
    await look('ending-remedy');
    await press('Settle on this');
    await heading('Do it, then record the chain as you leave it');
    await look('ending-finish');
    // three taps, and a length: the culprit is another cable, an optical one, from today on
    await page.getByRole('group', { name: 'Is something another part now?' }).getByRole('checkbox').check();
    await page.getByText('active optical').click();
    await page.getByLabel('Length in metres').fill('12');
    await page.reload();
    await expect.poll(() => page.getByLabel('Length in metres').inputValue()).toBe('12');
    await look('ending-installed');
    await press('It is done: this is the chain as I leave it');
    await heading('Watch whether the remedy holds');
    await page.getByText('As left: version 2').waitFor();
    await look('ending-as-left');
    await earlierVersion(page);
    await press('Close the ticket');
    await page.getByRole('dialog').getByRole('alert').waitFor();
    await look('ending-too-early');
    await page.keyboard.press('Escape');
    await press('Start watching');
    await heading('Watching whether the remedy holds');
    await pass(60);
    await look('ending-verify');
    await pass(120);
    await page.getByText('Quiet long enough: end the watch').waitFor();
    await press('End the watch');
    await signReport(page);
    await press('Close the ticket');
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel(/^A word for the record/).fill('The old cable stays in the wall, capped.');
    await page.reload();
    await press('Close the ticket');
    await expect.poll(() => dialog.getByLabel(/^A word for the record/).inputValue()).toContain('capped');
    await dialog.getByRole('button', { name: 'Not yet' }).click();
    await press('Close the ticket');
    await look('ending-close');
    await dialog.getByRole('button', { name: 'Close', exact: true }).click();
    await heading('The ticket is closed');
    await page.getByText('The old cable stays in the wall, capped.').waitFor();
    await look('ending-closed');
    await signOnceClosed(page);
    await deskHasIt();
    await pass(60 * 24);
    await press('Open it again');
    await page.getByRole('dialog').getByRole('button', { name: 'Open it again' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await heading('Watch for the fault, and touch nothing');
    expect(faults).toEqual([]);
  });

  /** The client reads the visit on one page, and signs with a finger, without signal. */
  async function signReport(page: Page): Promise<void> {
    await page.getByText('All sent').waitFor();
    await page.getByRole('link', { name: 'Report for the client, to sign' }).click();
    await page.getByRole('heading', { level: 1, name: 'Visit report' }).waitFor();
    await page.getByText('An optical cable in the conduit, beside the old one.').first().waitFor();
    await page.getByText(/^Cable C5 .*: active optical, 12 m$/).waitFor();
    await page.context().setOffline(true);
    await page.getByRole('button', { name: 'Sign', exact: true }).click();
    await page.getByText('Write your name, and sign', { exact: false }).waitFor();
    await page.getByLabel('Your name').fill('Edda Corrowin');
    const field = page.getByRole('img', { name: 'Sign here with your finger' });
    await field.scrollIntoViewIfNeeded();
    const box = (await field.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
    await page.mouse.move(box.x + 30, box.y + 60);
    await page.mouse.down();
    for (const [x, y] of [
      [60, 20],
      [90, 70],
      [120, 25],
      [180, 60],
    ] as const)
      await page.mouse.move(box.x + x, box.y + y);
    await page.mouse.up();
    await page.getByRole('img', { name: 'A signature is drawn.' }).waitFor();
    await keepScreenshot(page, 'report-signing');
    await page.getByRole('button', { name: 'Sign', exact: true }).click();
    const picture = page.getByRole('img', { name: 'Signature of Edda Corrowin' });
    await picture.waitFor();
    await page.getByText('Kept on this phone, still to be sent').waitFor();
    await page.context().setOffline(false);
    await page.getByText('All sent').waitFor();
    await picture.waitFor();
    await keepScreenshot(page, 'report-signed');
    expect(await faultsInEveryLook(page, 'report-signed')).toEqual([]);
    await page.goto(`/app/visits/${stage.play.ticketId}/triage`);
  }

  /** Whoever comes home later signs, too, what is closed by then. */
  async function signOnceClosed(page: Page): Promise<void> {
    await page.getByText('All sent').waitFor();
    expect(await page.getByText('Take a photo').count()).toBe(0);
    await page.getByRole('link', { name: 'Report for the client', exact: true }).click();
    await page.getByRole('button', { name: 'Sign once more' }).click();
    await page.getByLabel('Your name').fill('Nils Corrowin');
    await page.getByLabel(/^Sign by name only/).check();
    await page.getByRole('button', { name: 'Sign', exact: true }).click();
    await page.getByRole('img', { name: 'Signature of Nils Corrowin' }).waitFor();
    await page.getByText('All sent').waitFor();
    await page.reload();
    await page.getByText(/^Signed by Nils Corrowin, /).waitFor();
    await keepScreenshot(page, 'report-signed-once-closed');
    await page.goto(`/app/visits/${stage.play.ticketId}/triage`);
  }

  /** A closed ticket says at the desk first how it ended, and has the report with its signature. */
  async function deskHasIt(): Promise<void> {
    const desk = await stage.signedIn('oda', 'desk');
    await desk.goto(`/app/tickets/${stage.play.ticketId}`);
    await desk.getByRole('heading', { name: 'How it ended' }).waitFor();
    await desk.getByText('Repaired for good: An optical cable', { exact: false }).first().waitFor();
    await keepScreenshot(desk, 'ticket-closed');
    expect(await faultsInEveryLook(desk, 'ticket-closed')).toEqual([]);
    await desk.getByRole('link', { name: 'Visit report' }).click();
    await desk.getByRole('img', { name: 'Signature of Edda Corrowin' }).waitFor();
    const drawn = await desk.getByRole('img', { name: 'Signature of Edda Corrowin' }).evaluate(darkPixels);
    expect(drawn).toBeGreaterThan(100);
    await keepScreenshot(desk, 'report');
    await desk.close();
  }

  /** The chain as it was described before the repair, with its time, from the visit's own page. */
  async function earlierVersion(page: Page): Promise<void> {
    await page.getByText('All sent').waitFor();
    await page.goto(`/app/visits/${stage.play.ticketId}`);
    await page.getByText('All versions and their times').click();
    await page.getByRole('button', { name: 'Show version 1' }).click();
    await page.getByRole('region', { name: /^The chain as described from .* on, version 1$/ }).waitFor();
    await keepScreenshot(page, 'earlier-version');
    expect(await faultsInEveryLook(page, 'earlier-version')).toEqual([]);
    await page.goto(`/app/visits/${stage.play.ticketId}/triage`);
  }

  it('takes a case back, counts tries, proves a side with them, and hears what contradicts, and what a log shows', async () => {
    const { page, heading, press, pass, look, faults } = await phoneOf('tuli', stage.bare.id);
    await heading('Second line has the case');
    await press('Take it back');
    await page.getByRole('dialog').getByRole('button', { name: 'Take it back' }).click();
    await heading('Try until the fault comes');
    await press('Start watching');
    // It runs before the minutes pass: else it begins after them, and is no watch.
    await page.getByRole('button', { name: 'End the watch' }).waitFor();
    await pass(10);
    await press('End the watch');
    await press('Start trying');
    await heading('What makes it come?');
    await look('tries-trigger');
    await page.getByLabel(/^The switching, in words/).fill('Change from the disc player to the laptop lead');
    await press('Start trying');
    for (const way of ['It failed', 'It went well', 'It failed', 'It failed']) {
      await pass(1);
      await press(way);
    }
    await look('tries-watch');
    await press('End the watch');
    await look('tries-reproduced');
    await press(/^Seen 3 times/);
    await look('tries-side');
    const seeMenu = async (device: string, answer: string) => {
      await press('Do something else');
      await press(`Put up the menu of ${device}`);
      await heading(`Watching with the menu of ${device} up`);
      await pass(5);
      await press(answer);
      await press('End the watch');
    };
    await seeMenu('Receiver', 'It happened: the menu stayed');
    await press('Conclude this side');
    await page.getByText('Sides concluded').waitFor();
    await seeMenu('Projector', 'It happened: the menu vanished too');
    await page.getByText('All sent').waitFor();
    await page.getByRole('alert').waitFor();
    await page.getByText('The answers contradict each other').waitFor();
    await look('side-contradicted');

    // what nobody saw, a log shows: once in the watch before the tries
    const tuli = await signIn(overHttp(stage.base), firm.handle, 'tuli@lanternrow.example');
    const { triage } = expectStatus(await tuli.get<Ticket>(`/tickets/${stage.bare.id}`), 200);
    const watch = triage.watches.find(({ mode }) => mode === 'time');
    const begun = Date.parse(watch?.startedAt ?? '');
    const line = (afterS: number, words: string) =>
      `${new Date(begun + afterS * 1000).toISOString()} receiver video: ${words}\n`;
    const form = new FormData();
    form.set('about', JSON.stringify({ kind: 'log', tie: { deviceId: 'receiver' } }));
    form.set(
      'file',
      new Blob([line(1, 'started'), line(60, 'signal lost'), line(63, 'signal ok'), line(590, 'still here')]),
      'receiver.log',
    );
    expectStatus(await tuli.upload(`/tickets/${stage.bare.id}/evidence`, form), 201);
    // Whoever comes back to the ticket finds it there.
    await page.reload();
    await press(/^1 .*log/);
    await heading('What logs show, and nobody recorded');
    await look('log-proposals');
    await press(/^No, that was not/);
    await page.getByText('Not the fault:').waitFor();
    await look('log-answered');
    await press('Take that back');
    await press(/^Yes/);
    await page.getByText('The fault:').waitFor();
    await page.getByText('No log shows anything that is not on record.').waitFor();
    await page.getByText('All sent').waitFor();
    const after = expectStatus(await tuli.get<Ticket>(`/tickets/${stage.bare.id}`), 200);
    const seen = after.triage.watches.find(({ id }) => id === watch?.id)?.occurrences ?? [];
    expect(seen).toHaveLength(1);
    expect(faults).toEqual([]);
  });
});
