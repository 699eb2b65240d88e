import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { firm } from '../../seed/firm.ts';
import { expectStatus, overHttp, type Session, signIn } from '../../seed/session.ts';
import type { EvidenceItem } from '../../shared/contract/evidence.ts';
import type { ChainDocument } from '../../shared/contract/site.ts';
import type { Ticket, TicketSummary } from '../../shared/contract/ticket.ts';
import { accessibilityFaults, wholeScreenFaults } from './checks.ts';
import { noisyPhoto } from './noisy-photo.ts';
import {
  type Files,
  keepScreenshot,
  type Look,
  openStage,
  type Stage,
  signInOn,
  waitForShell,
  waitMs,
} from './stage.ts';

describe('a visit on the phone', () => {
  let stage: Stage;
  let brask: Session;
  let ticket: Ticket;
  let folder: string;
  beforeAll(async () => {
    stage = await openStage();
    folder = await mkdtemp(join(tmpdir(), 'halfsplit-photos-'));
    brask = await signIn(overHttp(stage.base), firm.handle, `brask@${firm.handle}.example`);
    const { items } = expectStatus(
      await brask.get<{ items: TicketSummary[] }>('/tickets?assigneeId=me&state=open'),
      200,
    );
    ticket = expectStatus(await brask.get<Ticket>(`/tickets/${items[0]?.id}`), 200);
  });
  afterAll(async () => {
    await stage.close();
    await rm(folder, { recursive: true, force: true });
  });
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  const evidence = async (): Promise<EvidenceItem[]> =>
    expectStatus(await brask.get<{ items: EvidenceItem[] }>(`/tickets/${ticket.id}/evidence?limit=200`), 200)
      .items;
  const visit = async (look: Look = 'light', files: Files = 'fetched'): Promise<Page> => {
    const page = await stage.signedIn('brask', 'phone', look, files);
    if (files === 'kept') await waitForShell(page);
    await page.getByRole('main').getByRole('link').first().click();
    await page.getByText('works without signal').waitFor();
    return page;
  };
  const placeAt = (page: Page, key: string, part = '') =>
    page.goto(`/app/visits/${ticket.id}/place/${encodeURIComponent(key)}${part}`);

  it('lists today first, with hazards, the address for a map and the phone number to call', async () => {
    const page = await stage.signedIn('brask', 'phone');
    await page.getByRole('heading', { name: 'Today' }).waitFor();
    const card = page.getByRole('listitem').filter({ hasText: 'Family Corrowin' }).first();
    await card.getByText('Ladder · Laser light · Cable in a wall').waitFor();
    expect(await card.getByRole('link', { name: 'Call Edda Corrowin' }).getAttribute('href')).toBe(
      'tel:+35315550142',
    );
    expect(await card.getByRole('link', { name: 'Map' }).getAttribute('href')).toBe(
      `geo:0,0?q=${encodeURIComponent('4 Thistle Rise, Marlhaven')}`,
    );
  });

  it('opened once, works without signal: facts of a cable, a firmware reading kept over a reload and sent once', async () => {
    const page = await visit('light', 'kept');
    await page.context().setOffline(true);
    await page.reload();
    await page.getByRole('button', { name: /^Cable C5/ }).click();
    await page.getByRole('link', { name: 'All about it' }).click();
    await page.getByText('in a wall', { exact: true }).waitFor();
    // Its budget was computed by the server and read ahead.
    await page.getByText('What the signal can do here').click();
    await page
      .getByText(/of [\d.]+ Gbit\/s/)
      .first()
      .waitFor();
    await placeAt(page, 'device:projector');
    await page.getByText('nothing yet').waitFor();
    await page.getByLabel('Firmware as the device shows it').fill('1.33');
    await page.reload();
    // Half-typed, and still there.
    await expect.poll(() => page.getByLabel('Firmware as the device shows it').inputValue()).toBe('1.33');
    await page.getByRole('button', { name: 'Keep this firmware' }).click();
    await page.getByText('1 to send').waitFor();
    await page.reload();
    await page.getByText(/1\.33 \(read/).waitFor();
    expect((await evidence()).filter(({ kind }) => kind === 'firmware')).toEqual([]);
    await page.context().setOffline(false);
    await page.getByText('All sent').waitFor();
    const sent = (await evidence()).filter(({ kind }) => kind === 'firmware');
    expect(sent.map(({ reading, tie }) => [reading, tie.deviceId])).toEqual([
      [{ kind: 'firmware', level: '1.33' }, 'projector'],
    ]);
  });

  it('keeps what was typed in the moment in which the page goes, before the device has written it', async () => {
    const page = await visit();
    await placeAt(page, 'device:projector');
    const firmware = page.getByLabel('Firmware as the device shows it');
    await firmware.fill('');
    // No write gets through any more, as when the page goes while it is under way.
    await page.evaluate(`IDBObjectStore.prototype.put = function () {
      const request = this.get('nothing');
      this.transaction.abort();
      return request;
    }`);
    await firmware.fill('1.34');
    await page.reload();
    await expect.poll(() => firmware.inputValue()).toBe('1.34');
    await firmware.fill('');
    await expect.poll(() => page.evaluate('Object.keys(localStorage).join()')).not.toContain('firmware');
  });

  it('keeps settings beside the last known ones, and numbers and words as they were', async () => {
    const page = await visit();
    await placeAt(page, 'device:receiver', '#settings');
    await page.getByText('Last known: 18 Gbit/s (as described)').waitFor();
    await page.getByRole('button', { name: 'Video conversion is as it was' }).click();
    await page.getByRole('textbox', { name: 'HDMI 4K signal format' }).fill('9 Gbit/s');
    await page.getByLabel('Another setting').fill('Standby');
    await page.getByRole('button', { name: 'Add this setting' }).click();
    await page.getByRole('textbox', { name: 'Standby' }).fill('eco');
    await page.getByRole('button', { name: 'Keep 3 settings' }).click();
    await page.getByText('✓ Kept on this phone').waitFor();
    await page.getByText('All sent').waitFor();
    await page.getByText(/Last known: 9 Gbit\/s \(read/).waitFor();
    const [newest] = (await evidence()).filter(({ kind }) => kind === 'settings');
    expect(newest?.reading).toEqual({
      kind: 'settings',
      phase: 'apart',
      values: { 'HDMI 4K signal format': '9 Gbit/s', 'Video conversion': 'off', Standby: 'eco' },
    });
  });

  it('takes twenty photos to their place over a link that is cut five times: none lost, none doubled', async () => {
    const page = await visit();
    const photos = await Promise.all(Array.from({ length: 20 }, (_, at) => noisyPhoto(folder, at)));
    await placeAt(page, 'link:C5');
    await page.getByLabel(/^Photo of Source end/).waitFor();
    const before = stage.link.breaks();
    stage.link.breakNext(5, 300_000);
    await page.getByLabel(/^Photo of Source end/).setInputFiles(photos);
    await page.getByText('✓ 20 kept on this phone').waitFor({ timeout: 120_000 });
    await page.getByRole('progressbar').first().waitFor();
    await keepScreenshot(page, 'visit-uploads');
    await page.getByText('All sent').waitFor({ timeout: 240_000 });
    expect(stage.link.breaks() - before).toBe(5);
    const sent = (await evidence()).filter(({ tie }) => tie.linkId === 'C5' && tie.shows === 'sourceEnd');
    expect(sent.map(({ fileName }) => fileName).toSorted()).toEqual(
      photos.map((path) => basename(path)).toSorted(),
    );
    expect(new Set(sent.map(({ sha256 }) => sha256)).size).toBe(20);
    // Made smaller on the phone: 3600 px became 2560, a fraction of the bytes.
    const largest = Math.max(...sent.map(({ sizeBytes }) => sizeBytes ?? 0));
    const taken = await Promise.all(photos.map(async (path) => (await stat(path)).size));
    expect(largest).toBeLessThan(Math.min(...taken));
    await expect.poll(() => page.locator('.thumbnails img').count(), { timeout: waitMs }).toBe(20);
  });

  it('shows what is still missing, and leads straight to it', async () => {
    const page = await visit();
    const missing = page.locator('#missing');
    await missing.getByText('Firmware levels').waitFor();
    await missing.getByRole('link', { name: 'Attach a log' }).click();
    await page.getByLabel('What is it?').waitFor();
    await page.getByLabel('From which device?').selectOption('processor');
    await page.getByLabel('The device’s clock showed').fill('2026-01-01 00:00:10');
    await page.getByText('Both times are needed').waitFor();
    await page.getByLabel('When it really was').fill('2026-11-25T14:05:00');
    await page.getByLabel('Choose the log').setInputFiles({
      name: 'processor.txt',
      mimeType: 'text/plain',
      buffer: Buffer.from('2026-01-01 00:00:10 video: signal lost\n2026-01-01 00:00:12 video: signal ok\n'),
    });
    await page.getByText('✓ 1 file kept').waitFor();
    await page.getByText('All sent').waitFor();
    const log = (await evidence()).find(({ fileName }) => fileName === 'processor.txt');
    expect([log?.kind, log?.tie.deviceId]).toEqual(['log', 'processor']);
    // The clock was put right: the log's first line is from five past two on that day, in Dublin.
    expect(log?.span?.from).toBe('2026-11-25T14:05:00.000Z');
  });

  it('withdraws an item with its reason, and keeps it readable', async () => {
    const page = await visit();
    await page.getByRole('link', { name: 'See all, or attach a file' }).click();
    const item = page.getByRole('listitem').filter({ hasText: 'processor.txt' });
    await item.getByRole('button', { name: /^Withdraw/ }).click();
    await item.getByLabel(/Why does it not count/).fill('Taken from the wrong device.');
    await item.getByRole('button', { name: 'Withdraw', exact: true }).click();
    await item.getByText('Taken from the wrong device.').waitFor();
    const log = (await evidence()).find(({ fileName }) => fileName === 'processor.txt');
    expect(log?.withdrawn?.reason).toBe('Taken from the wrong device.');
  });

  it('keeps a correction while there is no signal, and shows both sides when the chain was changed meanwhile', async () => {
    const page = await visit('light', 'kept');
    await placeAt(page, 'link:C5');
    await page.getByRole('link', { name: 'Correct the description' }).click();
    await page.getByLabel('Length in metres').waitFor();
    await page.context().setOffline(true);
    await page.getByLabel('Length in metres').fill('13,5');
    await page.getByText('Correcting needs a connection').waitFor();
    expect(await page.getByRole('button', { name: 'Save the correction' }).isDisabled()).toBe(true);
    await page.reload();
    await expect.poll(() => page.getByLabel('Length in metres').inputValue()).toBe('13,5');
    // Somebody at a desk is faster.
    const path = `/chains/${ticket.chainId}`;
    const { body, etag } = await brask.get<ChainDocument>(path);
    const theirs = {
      ...body.chain,
      links: body.chain.links.map((link) => (link.id === 'C5' ? { ...link, lengthM: 14 } : link)),
    };
    expectStatus(await brask.put(path, theirs, etag), 200);
    await page.context().setOffline(false);
    await page.getByText('Somebody else described the chain meanwhile').waitFor();
    await page.getByText('Length in metres: 13,5 m').waitFor();
    await page.getByText('Length in metres: 14 m').waitFor();
    await keepScreenshot(page, 'visit-correction-conflict');
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Put mine on top of it' }).click();
    await page.getByRole('button', { name: 'Save the correction' }).click();
    await page.getByText('Saved.').waitFor();
    const after = expectStatus(await brask.get<ChainDocument>(path), 200);
    expect(after.chain.links.find(({ id }) => id === 'C5')?.lengthM).toBe(13.5);
  });

  it('corrects which HDR a device does', async () => {
    const page = await visit();
    await placeAt(page, 'device:receiver');
    await page.getByRole('link', { name: 'Correct the description' }).click();
    await page.getByLabel('HDR that it does').selectOption({ label: 'HDR10, HLG' });
    await keepScreenshot(page, 'visit-correction-hdr');
    await page.getByRole('button', { name: 'Save the correction' }).click();
    await page.getByText('Saved.').waitFor();
    const { body } = await brask.get<ChainDocument>(`/chains/${ticket.chainId}`);
    const receiver = body.chain.devices.find(({ id }) => id === 'receiver');
    expect(receiver?.passes).toEqual({ dynamicRanges: ['hdr10', 'hlg'] });
    await page.getByRole('link', { name: '← Back to it' }).click();
    await page.getByText('HDR10, HLG').waitFor();
  });

  it('ticks what is in the van, over a reload', async () => {
    const page = await visit();
    const kit = page.locator('#kit');
    const box = kit.getByRole('checkbox').first();
    await box.check();
    await kit.locator('[aria-busy=false]', { hasText: /^1 of \d+ in the van$/ }).waitFor();
    await page.reload();
    await expect.poll(() => kit.getByRole('checkbox').first().isChecked()).toBe(true);
  });

  it('scans a serial number where the browser reads barcodes, and hides that where it does not', async () => {
    const context = await stage.openDevice('phone');
    const page = await context.newPage();
    await signInOn(page, 'brask');
    const address = `/app/visits/${ticket.id}/describe/${encodeURIComponent('device:projector')}`;
    await page.addInitScript('delete globalThis.BarcodeDetector');
    await page.goto(address);
    await page.getByLabel('Serial number').waitFor();
    expect(await page.getByRole('button', { name: 'Scan a barcode' }).count()).toBe(0);
    // A stand-in for what this browser lacks: a camera, and a detector that finds one code in its picture.
    await page.addInitScript(`
      globalThis.BarcodeDetector = class { async detect(picture) {
        return picture instanceof HTMLVideoElement && picture.videoWidth > 0 ? [{ rawValue: 'BL40-9999 ' }] : [];
      } };
      navigator.mediaDevices.getUserMedia = async () => {
        const canvas = document.createElement('canvas');
        canvas.width = 64; canvas.height = 48;
        const context = canvas.getContext('2d');
        setInterval(() => context.fillRect(0, 0, 64, 48), 30);
        return canvas.captureStream(30);
      };
    `);
    await page.goto(address);
    await page.getByRole('button', { name: 'Scan a barcode' }).click();
    await page.getByRole('button', { name: 'Take BL40-9999', exact: true }).click();
    await expect.poll(() => page.getByLabel('Serial number').inputValue()).toBe('BL40-9999');
  });

  it.each(['light', 'dark', 'outdoor'] as const)('has no accessibility faults in %s', async (look) => {
    const page = await visit(look);
    const faults: string[] = [];
    const check = async (name: string) => {
      await page
        .getByText(/^(Loading|Drawing)/)
        .first()
        .waitFor({ state: 'detached' });
      await keepScreenshot(page, `visit-${name}-${look}`);
      faults.push(...(await wholeScreenFaults(page, name, [360, 320])));
    };
    await page.getByRole('button', { name: /^Cable C5/ }).click();
    await check('page');
    for (const [name, path] of [
      ['device', 'place/device%3Areceiver'],
      ['cable', 'place/link%3AC5'],
      ['describe-device', 'describe/device%3Aprojector'],
      ['describe-cable', 'describe/link%3AC5'],
      ['evidence', 'evidence'],
    ]) {
      await page.goto(`/app/visits/${ticket.id}/${path}`);
      await page.getByRole('link', { name: /^←/ }).waitFor();
      await page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })");
      await page.waitForTimeout(300);
      await check(name ?? '');
    }
    await page.goto('/app/visits');
    await page.getByText('Map').first().waitFor();
    await check('list');
    expect(faults).toEqual([]);
  });
});
