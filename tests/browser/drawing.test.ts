import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { firm } from '../../seed/firm.ts';
import { expectStatus, overHttp, signIn } from '../../seed/session.ts';
import { houseOfSixty } from '../web/big-chain.ts';
import { keepScreenshot, openStage, type Size, type Stage } from './stage.ts';

describe('the drawing of a chain of 60 devices', () => {
  let stage: Stage;
  let ticketId: string;
  beforeAll(async () => {
    stage = await openStage();
    const oda = await signIn(overHttp(stage.base), firm.handle, `oda@${firm.handle}.example`);
    const site = { client: 'The big house', address: '60 Long Lane' };
    const { id: siteId } = expectStatus(await oda.post<{ id: string }>('/sites', site), 201);
    const chain = houseOfSixty();
    const { id: chainId } = expectStatus(
      await oda.post<{ id: string }>(`/sites/${siteId}/chains`, chain),
      201,
    );
    const intake = { symptom: { kind: 'dropOuts' } };
    const ticket = await oda.post<{ id: string }>('/tickets', { siteId, chainId, intake });
    ticketId = expectStatus(ticket, 201).id;
  });
  afterAll(() => stage.close());

  const boxes = (page: Page) =>
    page.evaluate(`[...document.querySelectorAll('.drawing-device')].map((device) => {
      const { left, right, top, bottom } = device.querySelector('path, rect').getBoundingClientRect();
      return { left, right, top, bottom };
    })`) as Promise<{ left: number; right: number; top: number; bottom: number }[]>;

  it.each(['phone', 'desk'] as const)('lets no two overlap and stays legible on a %s', async (size: Size) => {
    const page = await stage.signedIn('brask', size);
    await page.goto(`/app/visits/${ticketId}`);
    await page.getByRole('group', { name: /^Chain/ }).waitFor();
    const drawn = await boxes(page);
    expect(drawn).toHaveLength(60);
    const overlaps = drawn.flatMap((one, at) =>
      drawn
        .slice(at + 1)
        .filter(
          (other) =>
            one.left < other.right &&
            other.left < one.right &&
            one.top < other.bottom &&
            other.top < one.bottom,
        ),
    );
    expect(overlaps).toEqual([]);
    // Letters of a name as they are seen: their natural 13 px times the drawing's scale.
    const letters = (await page.evaluate(
      'document.querySelector(".drawing-name").getBoundingClientRect().height',
    )) as number;
    expect(letters).toBeGreaterThanOrEqual(9);
    const took = await page.evaluate('performance.getEntriesByName("chain-drawing").at(-1).duration');
    process.stdout.write(`${drawn.length} devices on a ${size}: laid out and drawn in ${took} ms\n`);
    await keepScreenshot(page, 'chain-of-60');
  });
});
