import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { firm } from '../../seed/firm.ts';
import { expectStatus, overHttp, signIn } from '../../seed/session.ts';
import type { ChainDocument } from '../../shared/contract/site.ts';
import { rowOfFour } from '../web/big-chain.ts';
import { faultsInEveryLook, sidewaysPx } from './checks.ts';
import { tabTo } from './keyboard.ts';
import { keepScreenshot, openStage, type Stage, waitMs } from './stage.ts';

describe('a chain changed on its drawing', () => {
  let stage: Stage;
  const oda = () => signIn(overHttp(stage.base), firm.handle, `oda@${firm.handle}.example`);
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage.close());
  afterEach(async () => {
    for (const context of stage.browser.contexts()) await context.close();
  });

  /** A client's chain of a source, a receiver, a processor and a display in a row. */
  const addChain = async (): Promise<string> => {
    const client = await oda();
    const site = { client: 'Fennel Rise', address: '3 Fennel Rise' };
    const { id: siteId } = expectStatus(await client.post<{ id: string }>('/sites', site), 201);
    const added = await client.post<{ id: string }>(`/sites/${siteId}/chains`, rowOfFour());
    return expectStatus(added, 201).id;
  };
  const saved = async (id: string) =>
    expectStatus(await (await oda()).get<ChainDocument>(`/chains/${id}`), 200);
  const device = (page: Page, name: string | RegExp) =>
    page.getByRole('group', { name: /^Chain/ }).getByRole('button', { name });
  const open = async (page: Page, id: string): Promise<void> => {
    await page.goto(`/app/chains/${id}`);
    await page.getByRole('button', { name: 'Change the chain' }).click();
    await page.locator('.drawn-edit .drawing-device').first().waitFor();
  };
  const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();
  const unfold = (page: Page, text: string) =>
    page.locator('.drawn-edit summary', { hasText: text }).first().click();

  it('is added to, connected, undone and saved by a finger on a phone, and kept over a reload', async () => {
    const id = await addChain();
    const page = await stage.signedIn('oda', 'phone');
    await open(page, id);
    const before = (await saved(id)).chain;
    await keepScreenshot(page, 'drawn-edit');

    await unfold(page, 'Add to the chain');
    await page.getByRole('button', { name: 'Add Source' }).tap();
    await page.getByRole('status').getByText('Now connect it').waitFor();
    // What is not connected can't be saved, and says so where it is.
    await page.locator('.place-panel .field-error').first().waitFor();
    await keepScreenshot(page, 'drawn-edit-fault');
    await page.getByRole('button', { name: 'Connect OUT1' }).tap();
    // None of its sockets is free: one more is there in the room.
    const goal = before.devices.find(({ role }) => role === 'switch');
    await keepScreenshot(page, 'drawn-edit-where');
    await device(page, new RegExp(`^${goal?.name},`)).tap();
    await page.getByRole('button', { name: /at a socket to be added/ }).tap();
    await page.getByText('Ready for saving').waitFor();
    await keepScreenshot(page, 'drawn-edit-connected');

    await page.reload();
    await page.getByText('Ready for saving').waitFor();
    await page.locator('.drawing-device').nth(before.devices.length).waitFor();
    await page.getByRole('button', { name: 'Save as a new version' }).tap();
    await page.getByText('Saved.').waitFor();
    const { chain, version } = await saved(id);
    expect(version).toBe(2);
    expect(chain.devices).toHaveLength(before.devices.length + 1);
    expect(chain.links).toHaveLength(before.links.length + 1);
    expect(chain.links.at(-1)?.to.deviceId).toBe(goal?.id);
    expect(await sidewaysPx(page)).toBe(0);
  });

  it('is rearranged, taken from and undone by keyboard alone', async () => {
    const id = await addChain();
    const page = await stage.signedIn('oda', 'desk');
    await page.goto(`/app/chains/${id}`);
    await device(page, /./).first().waitFor();
    await tabTo(page, /^Change the chain$/);
    await page.keyboard.press('Enter');
    await page.locator('.drawn-edit .drawing-device').first().waitFor();
    const { chain: before } = await saved(id);
    const [source, first, second, display] = before.devices.map(({ name }) => name);

    // The second device is moved before the first: into the cable from the source.
    await tabTo(page, new RegExp(`^${second}, `));
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 3, name: second ?? '', exact: true }).waitFor();
    await keepScreenshot(page, 'drawn-edit-device');
    await tabTo(page, /^Move it into another cable$/);
    await page.keyboard.press('Enter');
    await tabTo(page, new RegExp(`\\(${source} → ${first}\\)`));
    await page.keyboard.press('Enter');
    await page
      .getByRole('status')
      .getByText(new RegExp(`^${second} sits after`))
      .waitFor();

    // A device is taken away by the key for it, which leaves the chain in two, and comes back.
    await tabTo(page, new RegExp(`^${first}, `));
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 3, name: first ?? '', exact: true }).waitFor();
    await page.keyboard.press('Delete');
    await page.getByRole('heading', { name: 'To be put right before it can be saved' }).waitFor();
    expect(await page.locator('.drawing-device').count()).toBe(3);
    await page.keyboard.press('Control+z');
    await page.getByText('Ready for saving').waitFor();
    await page.keyboard.press('Control+Shift+z');
    await page.getByRole('heading', { name: 'To be put right before it can be saved' }).waitFor();
    await page.keyboard.press('Control+z');
    await page.getByText('Ready for saving').waitFor();
    expect(await faultsInEveryLook(page, 'a chain changed on its drawing')).toEqual([]);

    await page.keyboard.press('Control+Enter');
    await page.getByText('Saved.').waitFor();
    const { chain } = await saved(id);
    const next = (name: string | undefined): string | undefined => {
      const deviceId = chain.devices.find((one) => one.name === name)?.id;
      const to = chain.links.find(({ from }) => from.deviceId === deviceId)?.to.deviceId;
      return chain.devices.find((one) => one.id === to)?.name;
    };
    expect([next(source), next(second), next(first)]).toEqual([second, first, display]);
    expect(chain.links).toHaveLength(before.links.length);
  });

  it('says what another has changed meanwhile, and takes one of the two', async () => {
    const id = await addChain();
    const page = await stage.signedIn('oda', 'desk');
    await open(page, id);
    const link = (await saved(id)).chain.links[0]?.id ?? '';
    await device(page, new RegExp(`^Cable ${link},`)).click();
    await unfold(page, 'Length, kind and all else');
    await page.getByLabel('Length, m').first().fill('9');
    const client = await oda();
    const now = await client.get<ChainDocument>(`/chains/${id}`);
    const theirs = { ...now.body.chain, name: 'Theirs' };
    expectStatus(await client.put(`/chains/${id}`, theirs, now.etag), 200);
    await press(page, 'Save as a new version');
    await page.getByRole('button', { name: 'Save mine over theirs' }).waitFor({ timeout: waitMs });
    expect((await saved(id)).chain.name).toBe('Theirs');
    await press(page, 'Save mine over theirs');
    await press(page, 'Save as a new version');
    await page.getByText('Saved.').waitFor();
    expect((await saved(id)).chain.links[0]?.lengthM).toBe(9);
  });
});
