import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { firm } from '../../seed/firm.ts';
import { expectStatus, overHttp, signIn } from '../../seed/session.ts';
import type { Chain } from '../../shared/contract/chain.ts';
import { houseOf, houseOfSixty, rowOfFour } from '../web/big-chain.ts';
import { accessibilityFaults } from './checks.ts';
import { keepScreenshot, type Look, openStage, type Size, type Stage, sizes, waitMs } from './stage.ts';

type Edges = { left: number; right: number; top: number; bottom: number };
const areOver = (one: Edges, other: Edges): boolean =>
  one.left < other.right - 0.5 &&
  other.left < one.right - 0.5 &&
  one.top < other.bottom - 0.5 &&
  other.top < one.bottom - 0.5;
const isIn = (inner: Edges, outer: Edges): boolean =>
  inner.left >= outer.left - 0.5 &&
  inner.right <= outer.right + 0.5 &&
  inner.top >= outer.top - 0.5 &&
  inner.bottom <= outer.bottom + 0.5;

/** Where things stand in the window: devices with what is written in them, branches, labels of cables. */
const drawn = (page: Page) =>
  page.evaluate(`(() => {
    const edges = (element) => {
      const { left, right, top, bottom } = element.getBoundingClientRect();
      return { left, right, top, bottom };
    };
    return {
      window: edges(document.querySelector('.drawing-window')),
      devices: [...document.querySelectorAll('.drawing-device')].map((device) => ({
        ...edges(device.querySelector('path, rect')),
        isSmall: device.matches('.is-small'),
        texts: [...device.querySelectorAll('text:not(.drawing-sign text)')].map(edges),
      })),
      frames: [...document.querySelectorAll('.drawing-frame')].map(edges),
      labels: [...document.querySelectorAll('.drawing-label > text')].map(edges),
    };
  })()`) as Promise<{
    window: Edges;
    devices: (Edges & { isSmall: boolean; texts: Edges[] })[];
    frames: Edges[];
    labels: Edges[];
  }>;

const overlaps = (boxes: readonly Edges[]): Edges[] =>
  boxes.flatMap((one, at) => boxes.slice(at + 1).filter((other) => areOver(one, other)));

describe('the drawing of a chain', () => {
  let stage: Stage;
  const tickets = new Map<number, string>();
  const chains: readonly Chain[] = [rowOfFour(), houseOf(1, -3), houseOfSixty(), houseOf(13, 5)];
  beforeAll(async () => {
    stage = await openStage();
    const oda = await signIn(overHttp(stage.base), firm.handle, `oda@${firm.handle}.example`);
    const site = { client: 'The big house', address: '60 Long Lane' };
    const { id: siteId } = expectStatus(await oda.post<{ id: string }>('/sites', site), 201);
    for (const chain of chains) {
      const path = `/sites/${siteId}/chains`;
      const { id: chainId } = expectStatus(await oda.post<{ id: string }>(path, chain), 201);
      const ticket = { siteId, chainId, intake: { symptom: { kind: 'dropOuts' } } };
      const { id } = expectStatus(await oda.post<{ id: string }>('/tickets', ticket), 201);
      tickets.set(chain.devices.length, id);
    }
  });
  afterAll(() => stage.close());

  const open = async (page: Page, count: number) => {
    await page.goto(`/app/visits/${tickets.get(count)}`);
    await page.getByRole('group', { name: /^Chain/ }).waitFor();
    await page.locator('.drawing').scrollIntoViewIfNeeded();
    await page.locator('.drawing svg[data-zooms]').waitFor();
  };
  it('lies whole in its window still, once what is known of its parts has come and needs room', async () => {
    const oda = await signIn(overHttp(stage.base), firm.handle, `oda@${firm.handle}.example`);
    const { items } = expectStatus(
      await oda.get<{ items: { id: string; number: number }[] }>('/tickets'),
      200,
    );
    const page = await stage.signedIn('oda', 'desk');
    await page.goto(`/app/tickets/${items.find(({ number }) => number === 1)?.id}`);
    await page.locator('.drawing').scrollIntoViewIfNeeded();
    await page.locator('.drawing svg[data-zooms]').waitFor();
    await page.locator('.drawing-legend').waitFor();
    const outside = async () => {
      const { window, devices } = await drawn(page);
      expect(devices.length).toBeGreaterThan(4);
      return devices.filter((device) => !isIn(device, window)).length;
    };
    await expect.poll(outside, { timeout: waitMs }).toBe(0);
    // It is laid out anew for another window, and back: neither comes back to the other's view.
    for (const width of [390, 720, sizes.desk.width]) {
      await page.setViewportSize({ width, height: 900 });
      await page.waitForTimeout(500);
      await expect.poll(outside, { timeout: waitMs }).toBe(0);
    }
    expect(await page.getByRole('button', { name: 'Whole chain' }).isDisabled()).toBe(true);
  });

  const larger = (page: Page) => page.getByRole('button', { name: 'Larger' });

  describe.each(['phone', 'desk'] as const)('on a %s', (size: Size) => {
    it.each([4, 12, 60, 200])(
      'has all of %i devices in its window, none over another, no word cut',
      async (count) => {
        const page = await stage.signedIn('brask', size);
        await open(page, count);
        const { window, devices, frames, labels } = await drawn(page);
        expect(devices).toHaveLength(count);
        const cards = devices.filter(({ isSmall }) => !isSmall);
        expect(overlaps(devices)).toEqual([]);
        expect(overlaps([...cards, ...frames, ...labels])).toEqual([]);
        for (const box of [...devices, ...frames, ...labels]) expect(isIn(box, window)).toBe(true);
        for (const { texts, ...box } of devices) for (const text of texts) expect(isIn(text, box)).toBe(true);
        // the way that matters says its names at first sight
        expect(cards.filter(({ texts }) => texts.length === 0)).toEqual([]);
        const took = await page.evaluate('performance.getEntriesByName("chain-drawing").at(-1).duration');
        process.stdout.write(`${count} devices on a ${size}: laid out and drawn in ${took} ms\n`);
        await keepScreenshot(page, `chain-of-${count}`);
        await larger(page).click();
        const nameless = async () =>
          (await drawn(page)).devices.filter(({ texts }) => texts.length === 0).length;
        await expect.poll(nameless).toBe(0);
        const closer = (await drawn(page)).devices;
        for (const { texts, ...box } of closer) for (const text of texts) expect(isIn(text, box)).toBe(true);
        const small = closer.flatMap(({ texts }) => texts).filter(({ top, bottom }) => bottom - top < 9);
        expect(small).toEqual([]);
        await page.getByRole('button', { name: 'Whole chain' }).click();
        const again = await drawn(page);
        for (const box of again.devices) expect(isIn(box, again.window)).toBe(true);
        await page.context().close();
      },
    );
  });

  it('keeps what is under two fingers there, and lets one finger scroll the page', async () => {
    const page = await stage.signedIn('brask', 'phone');
    await open(page, 60);
    const { window } = await drawn(page);
    const middle = { x: (window.left + window.right) / 2, y: (window.top + window.bottom) / 2 };
    const control = await page.context().newCDPSession(page);
    const touch = (type: string, points: { x: number; y: number }[]) =>
      control.send('Input.dispatchTouchEvent', {
        type: type as 'touchStart',
        touchPoints: points.map((point, id) => ({ ...point, id })),
      });
    const under = (at: { x: number; y: number }) =>
      page.evaluate(`(() => {
        const at = new DOMPoint(${at.x}, ${at.y}).matrixTransform(document.querySelector('.drawing-world').getScreenCTM().inverse());
        return { x: at.x, y: at.y };
      })()`) as Promise<{ x: number; y: number }>;
    const shown = (at: { x: number; y: number }) =>
      page.evaluate(`(() => {
        const at = new DOMPoint(${at.x}, ${at.y}).matrixTransform(document.querySelector('.drawing-world').getScreenCTM());
        return { x: at.x, y: at.y };
      })()`) as Promise<{ x: number; y: number }>;
    // off the middle, so that a zoom about the middle would be seen
    const centre = { x: middle.x + 40, y: middle.y - 60 };
    const fingers = (apart: number) => [
      { x: centre.x - apart, y: centre.y },
      { x: centre.x + apart, y: centre.y },
    ];
    const before = await under(centre);
    await touch('touchStart', fingers(20));
    for (const apart of [25, 30, 40, 50, 60]) await touch('touchMove', fingers(apart));
    await touch('touchEnd', []);
    const after = await shown(before);
    process.stdout.write(
      `pinched by 3: the point moved ${Math.hypot(after.x - centre.x, after.y - centre.y)} px\n`,
    );
    expect(Math.abs(after.x - centre.x)).toBeLessThanOrEqual(2);
    expect(Math.abs(after.y - centre.y)).toBeLessThanOrEqual(2);
    const scrolled = () => page.evaluate('scrollY') as Promise<number>;
    const swipe = async () => {
      const from = await scrolled();
      await touch('touchStart', [middle]);
      for (const dy of [20, 60, 100, 140]) await touch('touchMove', [{ x: middle.x, y: middle.y - dy }]);
      await touch('touchEnd', []);
      await page.waitForTimeout(300);
      return (await scrolled()) - from;
    };
    // enlarged, one finger moves the drawing
    const still = await shown(before);
    expect(await swipe()).toBe(0);
    expect((await shown(before)).y).toBeLessThan(still.y - 50);
    await page.getByRole('button', { name: 'Whole chain' }).click();
    expect(await swipe()).toBeGreaterThan(50);
  });

  it('is moved and enlarged by keys and by the wheel, and opens a branch', async () => {
    const page = await stage.signedIn('brask', 'desk');
    await open(page, 60);
    const transform = () => page.locator('.drawing-world').getAttribute('transform');
    const whole = await transform();
    await page.locator('.drawing-window').focus();
    await page.keyboard.press('+');
    await expect.poll(transform).not.toBe(whole);
    const closer = await transform();
    await page.keyboard.press('ArrowRight');
    expect(await transform()).not.toBe(closer);
    await page.keyboard.press('0');
    expect(await transform()).toBe(whole);
    await page.locator('.drawing-window').hover();
    await page.mouse.wheel(0, -200);
    await expect.poll(transform).not.toBe(whole);
    await page.keyboard.press('0');
    const cards = () => page.locator('.drawing-device:not(.is-small) [aria-label$="Source"]').count();
    const before = await cards();
    await page
      .getByRole('button', { name: /^Open a branch/ })
      .first()
      .focus();
    await page.keyboard.press('Enter');
    await expect.poll(cards).toBeGreaterThan(before);
    const { window, devices } = await drawn(page);
    expect(overlaps(devices)).toEqual([]);
    for (const box of devices) expect(isIn(box, window)).toBe(true);
    await page.getByRole('button', { name: 'Whole chain' }).click();
    await expect.poll(cards).toBe(before);
  });

  it.each(['light', 'dark', 'outdoor'] as const)(
    'has no fault for whoever reads it otherwise, %s',
    async (look: Look) => {
      const page = await stage.signedIn('brask', 'phone', look);
      await open(page, 60);
      expect(await accessibilityFaults(page)).toEqual([]);
      await larger(page).click();
      expect(await accessibilityFaults(page)).toEqual([]);
      await page.context().close();
    },
  );
});
