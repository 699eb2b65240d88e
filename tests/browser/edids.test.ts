import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { decodeEdid, encodeEdid, limitEdid, sinkCapabilities } from '../../shared/signal/edid/index.ts';
import { plainDisplay, wallDisplay } from '../signal/edid/build-edid.ts';
import { type CaseStage, openCaseStage } from './case-stage.ts';
import { accessibilityFaults, screenFaults, sidewaysPx } from './checks.ts';
import { keepScreenshot, openStage, type Stage } from './stage.ts';

const wall = encodeEdid(wallDisplay);
const plain = encodeEdid(plainDisplay);

describe('EDIDs that somebody looks into', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage.close());
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  const openBench = async (page: Page): Promise<void> => {
    await page.getByRole('main').getByRole('link').first().tap();
    await page.getByLabel('Note').waitFor();
    await page.goto(`${page.url()}/evidence`);
    await page.getByRole('button', { name: 'Look into an EDID' }).tap();
  };

  it('are read, compared, limited and saved on a phone, by touch, and kept over a reload', async () => {
    const page = await stage.signedIn('brask', 'phone');
    await openBench(page);
    const source = page.getByRole('group', { name: 'EDID', exact: true });
    await source.getByLabel('Pasted as hexadecimal or base64').fill(Buffer.from(wall).toString('base64'));
    await page.getByText('LUMEN WALL 9').first().waitFor();
    await page.getByText('40 Gbit/s (4 lanes of 10)').waitFor();
    await page
      .getByRole('group', { name: 'Second EDID, to compare with' })
      .locator('input[type=file]')
      .setInputFiles({
        name: 'second.bin',
        mimeType: 'application/octet-stream',
        buffer: Buffer.from(plain),
      });
    await page.getByRole('region', { name: 'Compared' }).getByRole('listitem').first().waitFor();
    await page.getByLabel('Link', { exact: true }).selectOption({ label: '9 Gbit/s' });
    await page.getByText('HDR', { exact: true }).last().tap();
    await page.getByRole('region', { name: 'A limited one' }).getByText('It loses:').waitFor();
    await keepScreenshot(page, 'edids');
    expect(await screenFaults(page, 'edids')).toEqual([]);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the limited EDID' }).tap(),
    ]);
    const saved = new Uint8Array(await readFile(await download.path()));
    const expected = limitEdid(wallDisplay, { maxTmdsCharacterRateMHz: 300, dropHdr: true });
    expect(saved).toEqual(encodeEdid(expected));
    const { edid, problems } = decodeEdid(saved);
    expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(edid && sinkCapabilities(edid)).toMatchObject({
      frl: null,
      eotfs: [],
      maxTmdsCharacterRateMHz: 300,
    });
    await page.reload();
    await page.getByRole('button', { name: 'Look into an EDID' }).tap();
    await page.getByText('LUMEN WALL 9').first().waitFor();
    await page.getByRole('button', { name: 'Clear both' }).tap();
    await expect.poll(() => page.getByText('LUMEN WALL 9').count()).toBe(0);
  });

  it('say what is wrong with them, and that a text holds none', async () => {
    const page = await stage.signedIn('brask', 'phone');
    await openBench(page);
    const paste = page.getByLabel('Pasted as hexadecimal or base64').first();
    await paste.fill('nothing of the kind');
    await page.getByText('There is no EDID in this text.').waitFor();
    const damaged = Uint8Array.from(wall);
    damaged[20] = (damaged[20] ?? 0) ^ 1;
    await paste.fill(Buffer.from(damaged).toString('hex'));
    await page.getByText('block 0, byte 127').waitFor();
    await page.getByText('checksums wrong').waitFor();
  });

  it('can be looked into at the desk', async () => {
    const page = await stage.signedIn('brask', 'desk');
    await page.getByRole('main').getByRole('link').first().click();
    await page.getByLabel('Note').waitFor();
    await page.goto(`${page.url()}/evidence`);
    await page.getByRole('button', { name: 'Look into an EDID' }).click();
    await page.getByLabel('Pasted as hexadecimal or base64').first().fill(Buffer.from(wall).toString('hex'));
    await page.getByText('LUMEN WALL 9').first().waitFor();
    await page.getByText(/^Formats/).click();
    await keepScreenshot(page, 'edids');
    expect(await screenFaults(page, 'edids at the desk')).toEqual([]);
  });
});

describe('EDIDs of a case at second line', () => {
  let stage: CaseStage;
  beforeAll(async () => {
    stage = await openCaseStage();
  });
  afterAll(() => stage.close());

  it('are taken from its evidence, compared with a pasted one, limited and saved', async () => {
    const { play } = stage;
    const about = { kind: 'edid', tie: { deviceId: 'projector' }, description: 'Read at the projector' };
    await play.attach(about, new Blob([Uint8Array.from(wall)]), 'projector.bin');
    const page = await stage.signedIn('pim', 'desk');
    await page.goto(`/app/cases/${play.ticketId}`);
    // The part is folded until somebody goes to it.
    await page.getByRole('link', { name: 'EDIDs compared' }).click();
    await page.getByRole('button', { name: 'Look into an EDID' }).click();
    const ofEvidence = page.getByLabel('Of the evidence');
    const choice = ofEvidence.first().getByRole('option', { name: /projector\.bin/ });
    await choice.waitFor({ state: 'attached' });
    const option = (await choice.textContent()) ?? '';
    await ofEvidence.first().selectOption({ label: option });
    await page.getByText('LUMEN WALL 9').first().waitFor();
    await page
      .getByRole('group', { name: 'Second EDID, to compare with' })
      .getByLabel('Pasted as hexadecimal or base64')
      .fill(Buffer.from(plain).toString('hex'));
    await page.getByRole('region', { name: 'Compared' }).getByRole('listitem').first().waitFor();
    await page.getByLabel('Link', { exact: true }).selectOption({ label: '18 Gbit/s, no fixed rate link' });
    await page.getByRole('region', { name: 'A limited one' }).getByText('It loses:').waitFor();
    await keepScreenshot(page, 'case-edids');
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(await sidewaysPx(page)).toBe(0);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the limited EDID' }).click(),
    ]);
    const saved = new Uint8Array(await readFile(await download.path()));
    const limits = { maxTmdsCharacterRateMHz: 600, dropFrl: true };
    expect(saved).toEqual(encodeEdid(limitEdid(wallDisplay, limits)));
  });
});
