import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { firm } from '../../seed/firm.ts';
import { overHttp, signIn } from '../../seed/session.ts';
import { type CaseStage, openCaseStage } from './case-stage.ts';
import { accessibilityFaults, sidewaysPx } from './checks.ts';
import { tabTo } from './keyboard.ts';
import { keepScreenshot, type Look, type Size } from './stage.ts';

describe("second line's screens", () => {
  let stage: CaseStage;
  beforeAll(async () => {
    stage = await openCaseStage();
  });
  afterAll(() => stage.close());
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  const openCase = async (page: Page): Promise<void> => {
    await page.goto(`/app/cases/${stage.play.ticketId}`);
    await caseIsThere(page);
  };
  /** All that is computed and fetched for the page is on it, and unfolded. */
  const caseIsThere = async (page: Page): Promise<void> => {
    await page.getByRole('img', { name: /^Plot: the chance/ }).waitFor();
    await page.getByRole('img', { name: /^Time line/ }).waitFor();
    const unfold = page.getByRole('button', { name: 'Unfold everything' });
    if (!(await unfold.isVisible())) await page.getByText('On this page', { exact: true }).click();
    await unfold.click();
    await page.getByRole('table', { name: 'Link budget' }).waitFor();
    await page.getByRole('img', { name: 'C5, label' }).first().waitFor();
  };
  const screensHigh = (page: Page): Promise<number> =>
    page.evaluate('document.documentElement.scrollHeight / innerHeight') as Promise<number>;
  const openAll = async (page: Page): Promise<void> => {
    const shut = page.locator('details:not([open]) > summary');
    while ((await shut.count()) > 0) await shut.first().click();
  };
  const clean = async (page: Page): Promise<void> => {
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(await sidewaysPx(page)).toBe(0);
  };

  it.each([
    ['light', 'desk'],
    ['dark', 'desk'],
    ['light', 'phone'],
    ['dark', 'phone'],
  ] as [Look, Size][])('can be read by everybody: %s, %s', async (look, size) => {
    const page = await stage.signedIn('pim', size, look);
    await page.getByText('The owner leaves tomorrow').waitFor();
    await keepScreenshot(page, `queue-${look}`);
    await clean(page);
    await page.goto(`/app/cases/${stage.play.ticketId}`);
    await page.getByRole('img', { name: /^Plot: the chance/ }).waitFor();
    // What is folded says beside its heading what of it differs from usual.
    await page
      .getByRole('heading', { name: 'Audit findings' })
      .locator('xpath=..')
      .getByText(/\d+ must be fixed/)
      .waitFor();
    await keepScreenshot(page, `case-${look}`);
    if (size === 'desk') expect(await screensHigh(page)).toBeLessThanOrEqual(5);
    await caseIsThere(page);
    await openAll(page);
    await clean(page);
    await page.goto('/app/packets');
    await page.getByText('Nobody shows you a packet.').waitFor();
    await keepScreenshot(page, `packets-${look}`);
    await clean(page);
  });

  it('needs no sideways scrolling at 320 px, nor at 200 % zoom, and prints without its controls', async () => {
    const page = await stage.signedIn('pim', 'desk');
    await openCase(page);
    // A desk of 1440 px at 200 % has 720 of them.
    for (const width of [320, 720]) {
      await page.setViewportSize({ width, height: 640 });
      await page.getByRole('heading', { name: 'The side' }).waitFor();
      expect(await sidewaysPx(page)).toBe(0);
    }
    await keepScreenshot(page, 'case-zoomed');
    await page.setViewportSize({ width: 800, height: 1100 });
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('heading', { name: 'What you can do' }).isVisible()).toBe(false);
    expect(await page.getByRole('heading', { name: 'Suspects', exact: true }).isVisible()).toBe(true);
    await keepScreenshot(page, 'case-printed');
  });

  it('speaks German throughout', async () => {
    const page = await stage.signedIn('pim', 'desk');
    await page.evaluate("localStorage.setItem('halfsplit-language', 'de')");
    await page.goto(`/app/cases/${stage.play.ticketId}`);
    await page.getByRole('heading', { name: 'Verdächtige', exact: true }).waitFor();
    await page.getByRole('img', { name: /^Zeitverlauf/ }).waitFor();
    await keepScreenshot(page, 'case-german');
    await clean(page);
  });

  it('shows of a device what is known of it, and of the time line one watch', async () => {
    const page = await stage.signedIn('pim', 'desk');
    await openCase(page);
    await page.getByRole('button', { name: /^Cable C5/ }).click();
    const panel = page.locator('.case-place');
    await panel.getByText('12 m').first().waitFor();
    await panel.getByRole('img', { name: 'C5, label' }).waitFor();
    expect(await panel.textContent()).toContain('As a suspect: 99');
    await panel.getByRole('button', { name: 'C5, label' }).click();
    await page.getByRole('dialog').getByRole('img', { name: 'C5, label' }).waitFor();
    await clean(page);
    await page.keyboard.press('Escape');
    const marks = page.locator('.plot-moment-seen:not(.case-legend *)');
    const all = await marks.count();
    expect(all).toBe(stage.play.cameAt.length);
    await page.getByLabel('Show', { exact: true }).selectOption({ index: 1 });
    expect(await marks.count()).toBe(3);
    await keepScreenshot(page, 'case-one-watch');
  });

  it('can be worked by keyboard alone', async () => {
    const page = await stage.signedIn('pim', 'desk');
    await page.getByText('The owner leaves tomorrow').waitFor();
    await tabTo(page, /Penhollow/);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: /^Case no\./ }).waitFor();
    await page.getByRole('button', { name: 'Take the case' }).waitFor();
    await tabTo(page, /^Take the case$/);
    await page.keyboard.press('Enter');
    await page.getByText('You have taken this case.').waitFor();
    await tabTo(page, /^Ask for more$/);
    await page.keyboard.press('Enter');
    await tabTo(page, /Firmware levels/);
    await page.keyboard.press('Space');
    await tabTo(page, /^Ask for 1 thing$/);
    await page.keyboard.press('Enter');
    await page.getByText('Asked. The technician sees it now.').waitFor();
    await page.getByRole('heading', { name: 'Asked so far' }).waitFor();
  });

  it('says what is possible instead when the case was handed back meanwhile', async () => {
    const otherDevice = await signIn(overHttp(stage.base), firm.handle, 'pim@lanternrow.example');
    const { body } = await otherDevice.get<{ state: string }>(`/tickets/${stage.bare.id}`);
    if (body.state === 'escalated.waiting') await otherDevice.command(stage.bare.id, { type: 'takeCase' });
    const page = await stage.signedIn('pim', 'desk');
    // Nothing new reaches this screen.
    await page.route('**/events*', (route) => route.abort());
    await page.goto(`/app/cases/${stage.bare.id}`);
    await page.getByRole('button', { name: 'Hand the case back' }).first().click();
    await page.getByLabel('Why it goes back').fill('Watch the fault first.');
    await otherDevice.command(stage.bare.id, { type: 'handBack', reason: 'Nobody has seen the fault yet.' });
    await page.getByRole('button', { name: 'Hand the case back' }).last().click();
    const alert = page.getByRole('alert');
    await alert.waitFor();
    expect(await alert.textContent()).toContain('What is possible now:');
    await keepScreenshot(page, 'case-refused');
    await clean(page);
  });

  it('goes from the queue to an accepted case, with more asked for and answered on the way', async () => {
    const { technician, ticketId, read } = stage.play;
    const page = await stage.signedIn('pim', 'desk');
    await page.getByLabel('Most complete first').check();
    await page
      .getByRole('link', { name: /Family Corrowin/ })
      .first()
      .click();
    await caseIsThere(page);
    await page.getByRole('button', { name: 'Take the case' }).click();
    await page.getByText('The case is yours.').waitFor();

    await page.getByRole('button', { name: 'Ask for more' }).click();
    await page.getByRole('checkbox', { name: /^Settings/ }).check();
    await page.getByLabel('Question of your own, no. 1').fill('Which output level is set for output A?');
    // What is half written is there again after a reload.
    await page.reload();
    await caseIsThere(page);
    await page.getByRole('button', { name: 'Ask for more' }).click();
    await keepScreenshot(page, 'case-asking');
    await clean(page);
    await page.getByRole('button', { name: 'Ask for 2 things' }).click();
    await page.getByText('Asked. The technician sees it now.').waitFor();
    expect(await page.getByText('not answered yet').count()).toBe(2);

    await read({ deviceId: 'processor' }, { kind: 'settings', values: { 'Output A level': 'standard' } });
    const { body } = await technician.get<{ triage: { requests: { id: string }[] } }>(`/tickets/${ticketId}`);
    for (const { id } of body.triage.requests) {
      await technician.command(ticketId, {
        type: 'answerRequest',
        requestId: id,
        text: 'Standard, as it was delivered.',
      });
    }
    await technician.command(ticketId, { type: 'resubmit' });
    // All of it comes by itself.
    await page.getByRole('heading', { name: 'Version 2' }).waitFor();
    expect(await page.getByText('Standard, as it was delivered.').count()).toBeGreaterThanOrEqual(2);
    expect(await page.getByText('not answered yet').count()).toBe(0);

    const take = page.getByRole('button', { name: 'Take the case' });
    if (await take.isVisible()) await take.click();
    await page.getByRole('button', { name: 'Accept the case' }).click();
    await page
      .getByLabel('Where the fault is')
      .selectOption({ label: 'Cable C5 (Cinema processor → Projector)' });
    await page
      .getByLabel('Finding', { exact: true })
      .fill('C5: 12 m of uncertified copper. Replace it by an optical one.');
    await keepScreenshot(page, 'case-accepting');
    await clean(page);
    await page.getByRole('button', { name: 'Accept with this finding' }).click();
    await page.getByText('Accepted. The finding is on the ticket.').waitFor();
    await page.getByRole('button', { name: /Cable C5.*the cause/ }).waitFor();
    await keepScreenshot(page, 'case-accepted');
    await page.goto('/app/queue');
    await page.getByText(/^No case is waiting|^1 case$/).waitFor();
    await expect.poll(() => page.getByRole('link', { name: /Corrowin/ }).count()).toBe(0);
  });

  it('downloads a packet, finds it unchanged, and finds the one byte that was changed', async () => {
    const page = await stage.signedIn('pim', 'desk');
    await openCase(page);
    const packet = page.getByRole('article', { name: 'Version 1' });
    await packet.getByRole('button', { name: 'Check its hashes here' }).click();
    const verdict = packet.getByText(/^All \d+ files are unchanged$/);
    await verdict.waitFor();
    const count = /\d+/.exec((await verdict.textContent()) ?? '')?.[0];
    const files = packet.getByRole('table', { name: 'File by file' });
    expect(await files.getByText('data/case.json').count()).toBe(1);
    expect(await files.getByText('manifest-sha256.txt', { exact: true }).count()).toBe(1);
    await keepScreenshot(page, 'packet-checked');
    await clean(page);

    const downloading = page.waitForEvent('download');
    await packet.getByRole('button', { name: 'Download the packet' }).click();
    const download = await downloading;
    expect(download.suggestedFilename()).toMatch(/^case-\d+-version-1\.zip$/);
    const zip = await readFile(await download.path());

    await page.goto('/app/packets');
    const choose = (buffer: Buffer) =>
      page
        .getByLabel('Packet (zip)')
        .setInputFiles({ name: 'packet.zip', mimeType: 'application/zip', buffer });
    await choose(zip);
    await page.getByText(`All ${count} files are unchanged`).waitFor();
    const { changed, name } = withOneByteChanged(zip);
    await choose(changed);
    await page.getByText(`1 of ${count} files is not as listed`).waitFor();
    const [, first] = await page.getByRole('table', { name: 'File by file' }).getByRole('row').all();
    expect(await first?.textContent()).toBe(`${name}✕changed`);
    await keepScreenshot(page, 'packet-changed');
    await clean(page);
    await choose(Buffer.from('no zip at all'));
    await page.getByText('This file is no zip').waitFor();
  });

  it('shows a packet to second line elsewhere, and ends that', async () => {
    const elsewhere = await stage.signedInElsewhere('desk');
    await elsewhere.goto('/app/packets');
    const address = elsewhere.getByText(/^[0-9a-f]{8}-[0-9a-f-]{27}$/);
    await address.waitFor();
    const page = await stage.signedIn('pim', 'desk');
    await openCase(page);
    const packet = page.getByRole('article', { name: 'Version 1' });
    const whose = packet.getByLabel('Address of a second-line member elsewhere');
    // It is unfolded with everything else, or by itself.
    if (!(await whose.isVisible())) await packet.getByText('Shown to 0 members elsewhere').click();
    await whose.fill((await address.textContent()) ?? '');
    await packet.getByRole('button', { name: 'Show them this packet' }).click();
    await packet.getByText('They can read it now.').waitFor();
    await keepScreenshot(page, 'packet-granted');
    await clean(page);

    await elsewhere.getByRole('link', { name: /Lanternrow Cinema Care, case no\./ }).click();
    await elsewhere.getByRole('img', { name: /^Time line/ }).waitFor();
    await elsewhere.getByText('With less to carry the fault stays away').first().waitFor();
    await elsewhere.getByRole('button', { name: 'Check its hashes here' }).click();
    await elsewhere.getByText(/^All \d+ files are unchanged$/).waitFor();
    await keepScreenshot(elsewhere, 'packet-elsewhere');
    await clean(elsewhere);

    await packet.getByRole('button', { name: 'End it' }).click();
    await packet.getByText('Ended. They can no longer read it.').waitFor();
    await elsewhere.goto('/app/packets');
    await elsewhere.getByText('Nobody shows you a packet.').waitFor();
  });
});

/** Changes one byte in the content of the first photo of a zip, which lies in it as it is. */
function withOneByteChanged(zip: Buffer): { changed: Buffer; name: string } {
  for (let at = zip.indexOf('PK\x03\x04'); at >= 0; at = zip.indexOf('PK\x03\x04', at + 4)) {
    const [nameLength, extraLength] = [zip.readUInt16LE(at + 26), zip.readUInt16LE(at + 28)];
    const name = zip.toString('utf8', at + 30, at + 30 + nameLength);
    if (!name.endsWith('.jpg')) continue;
    const changed = Buffer.from(zip);
    const place = at + 30 + nameLength + extraLength + 200;
    changed.writeUInt8(changed.readUInt8(place) ^ 1, place);
    return { changed, name: name.slice(name.indexOf('/') + 1) };
  }
  throw new Error('There is no photo in the packet.');
}
