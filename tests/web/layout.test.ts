import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chain } from '../../shared/contract/chain.ts';
import { type Box, fitScale, type Layout, type Window } from '../../src/web/drawing/fit.ts';
import { layOut } from '../../src/web/drawing/layout.ts';
import { written } from '../../src/web/drawing/lettering.ts';
import { boxesOf, namesAt } from '../../src/web/drawing/names.ts';
import { largestScale, wholeView } from '../../src/web/drawing/view.ts';
import { homeCinema } from '../chain/build-chain.ts';
import { bigChain, houseOf, rowOfFour } from './big-chain.ts';

const phone: Window = { width: 342, height: 459 };
const desk: Window = { width: 760, height: 558 };
const windows = [phone, desk, { width: 1100, height: 660 }, { width: 280, height: 300 }];

type Area = Omit<Box, 'id'>;
const areOver = (one: Area, other: Area): boolean =>
  one.x < other.x + other.width &&
  other.x < one.x + one.width &&
  one.y < other.y + other.height &&
  other.y < one.y + one.height;
const isIn = (inner: Area, outer: Area): boolean =>
  inner.x >= outer.x - 1e-6 &&
  inner.y >= outer.y - 1e-6 &&
  inner.x + inner.width <= outer.x + outer.width + 1e-6 &&
  inner.y + inner.height <= outer.y + outer.height + 1e-6;

const overlapsAmong = (boxes: readonly Box[]): string[] =>
  boxes.flatMap((one, at) =>
    boxes
      .slice(at + 1)
      .filter((other) => areOver(one, other))
      .map((other) => `${one.id} and ${other.id}`),
  );

/** What is wrong with a layout: devices missing, boxes over each other, something outside. */
function faultsOf(layout: Layout, chain: Chain): string[] {
  const frames = layout.branches.map(({ frame }) => frame);
  const page = { x: 0, y: 0, width: layout.width, height: layout.height };
  const drawn = boxesOf(layout).map(({ id }) => id);
  return [
    ...(drawn.toSorted().join() ===
    chain.devices
      .map(({ id }) => id)
      .toSorted()
      .join()
      ? []
      : ['not every device once']),
    ...overlapsAmong([...layout.devices, ...frames]),
    ...overlapsAmong(boxesOf(layout)),
    ...[...layout.devices, ...frames].filter((box) => !isIn(box, page)).map(({ id }) => `${id} is outside`),
    ...layout.branches.flatMap(({ devices, frame, head }) => [
      ...devices.filter((box) => !isIn(box, frame)).map(({ id }) => `${id} is outside its branch`),
      ...devices.filter((box) => areOver(box, head)).map(({ id }) => `${id} lies over its branch's words`),
    ]),
    ...layout.lines
      .filter(
        ({ label }) =>
          !isIn(label, page) || [...layout.devices, ...frames].some((box) => areOver(box, label)),
      )
      .map(({ id }) => `what is written on ${id} lies over something`),
  ];
}

describe('the layout of a chain', () => {
  it.each([
    [2, bigChain(2, 1)],
    [4, rowOfFour()],
    [12, houseOf(1, -3)],
    [60, houseOf(4)],
    [60, bigChain(60, 1)],
    [200, houseOf(13, 5)],
    [200, bigChain(200, 7)],
  ])('fits %i devices into every window, each of them once and none over another', (count, chain) => {
    expect(chain.devices).toHaveLength(count);
    for (const window of windows) {
      const layout = layOut(chain, window);
      expect(faultsOf(layout, chain)).toEqual([]);
      const { x, y, k } = wholeView(layout, window);
      expect(Math.min(x, y)).toBeGreaterThanOrEqual(-1e-6);
      expect(x + layout.width * k).toBeLessThanOrEqual(window.width + 1e-6);
      expect(y + layout.height * k).toBeLessThanOrEqual(window.height + 1e-6);
    }
  });

  it('does so whatever the chain, what matters on it and what was opened', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 120 }),
        fc.integer(),
        fc.array(fc.nat(119), { maxLength: 8 }),
        fc.boolean(),
        (count, seed, picked, areOpened) => {
          const chain = bigChain(count, seed);
          const ids = picked.map((at) => `d${at % count}`);
          const wanted = areOpened
            ? { opened: new Set(ids) }
            : {
                weights: new Map(ids.map((id, at) => [id, at + 1])),
                signed: new Set(chain.links.slice(0, picked.length).map(({ id }) => id)),
              };
          for (const window of [phone, desk]) {
            const layout = layOut(chain, window, wanted);
            expect(faultsOf(layout, chain)).toEqual([]);
            expect(fitScale(layout, window) * layout.width).toBeLessThanOrEqual(window.width + 1e-6);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('goes from sources to displays', () => {
    const chain = homeCinema();
    for (const window of windows) {
      const layout = layOut(chain, window);
      const boxes = new Map(
        layout.devices.map((box) => [box.id, layout.direction === 'down' ? box.y : box.x]),
      );
      for (const { from, to } of chain.links)
        expect(boxes.get(to.deviceId)).toBeGreaterThan(boxes.get(from.deviceId) ?? Number.POSITIVE_INFINITY);
      expect(layout.devices).toHaveLength(chain.devices.length);
      expect(layout.lines).toHaveLength(chain.links.length);
    }
  });

  it('draws large what matters, wherever it is', () => {
    const chain = houseOf(13);
    for (const id of ['splitter12', 'source2-7', 'display5-3']) {
      const { devices } = layOut(chain, phone, { weights: new Map([[id, 1]]) });
      expect(devices.map((box) => box.id)).toContain(id);
    }
  });

  it('keeps the cards of what matters legible among 200', () => {
    for (const chain of [houseOf(13), bigChain(200, 7)])
      for (const window of [phone, desk]) {
        const layout = layOut(chain, window);
        const k = fitScale(layout, window);
        const names = new Map(chain.devices.map(({ id, name }) => [id, name]));
        // a name of 24 letters in three lines, or of 17 in two
        const unreadable = layout.devices.filter(
          ({ id, width, height }) =>
            written([{ text: names.get(id) ?? id }], width * k * 0.86, height * k * 0.915).length === 0,
        );
        expect(unreadable).toEqual([]);
      }
  });

  it('brings every name within what can be enlarged', () => {
    for (const chain of [houseOf(13), bigChain(200, 7)])
      expect(namesAt(layOut(chain, phone), chain)).toBeLessThan(largestScale);
  });

  it('draws what was opened as cards', () => {
    const chain = houseOf(4);
    const [branch] = layOut(chain, phone).branches;
    const opened = new Set(branch?.deviceIds);
    const cards = layOut(chain, phone, { opened }).devices.map(({ id }) => id);
    expect(cards).toEqual(expect.arrayContaining([...opened]));
  });

  it('draws several cables between the same two devices, and leaves out one that leads nowhere', () => {
    const chain = homeCinema();
    const [first] = chain.links;
    if (first === undefined) throw new Error('a cable is needed');
    const twice = { ...first, id: 'second' };
    const nowhere = { ...first, id: 'nowhere', to: { deviceId: 'none', portId: 'none' } };
    const { lines } = layOut({ ...chain, links: [...chain.links, twice, nowhere] }, desk);
    expect(lines.flatMap(({ linkIds }) => linkIds)).toEqual([...chain.links.map(({ id }) => id), 'second']);
  });

  it('lays out a chain whose cables run in a circle', () => {
    const chain = homeCinema();
    const [first] = chain.links;
    if (first === undefined) throw new Error('a cable is needed');
    const back = { ...first, id: 'back', from: first.to, to: first.from };
    const looped = { ...chain, links: [...chain.links, back] };
    expect(faultsOf(layOut(looped, phone), looped)).toEqual([]);
  });
});
