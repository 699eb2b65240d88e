import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layOut } from '../../src/web/drawing/layout.ts';
import { homeCinema } from '../chain/build-chain.ts';
import { bigChain } from './big-chain.ts';

const overlapping = ({ devices }: ReturnType<typeof layOut>): string[] =>
  devices.flatMap((one, at) =>
    devices
      .slice(at + 1)
      .filter(
        (other) =>
          Math.abs(one.x - other.x) < (one.width + other.width) / 2 &&
          Math.abs(one.y - other.y) < (one.height + other.height) / 2,
      )
      .map((other) => `${one.id} and ${other.id}`),
  );

describe('the drawing of a chain', () => {
  it.each(['down', 'across'] as const)('goes %s from sources to displays', (direction) => {
    const chain = homeCinema();
    const layout = layOut(chain, direction);
    const at = new Map(layout.devices.map((box) => [box.id, direction === 'down' ? box.y : box.x]));
    for (const { from, to } of chain.links)
      expect(at.get(to.deviceId)).toBeGreaterThan(at.get(from.deviceId) ?? Number.POSITIVE_INFINITY);
    expect(layout.devices).toHaveLength(chain.devices.length);
    expect(layout.links).toHaveLength(chain.links.length);
  });

  it('lets no two devices overlap, whatever the chain', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer(), (count, seed) => {
        for (const direction of ['down', 'across'] as const)
          expect(overlapping(layOut(bigChain(count, seed), direction))).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });

  it('keeps 60 devices apart and within its own edges', () => {
    const layout = layOut(bigChain(60, 1), 'down');
    expect(layout.devices).toHaveLength(60);
    expect(overlapping(layout)).toEqual([]);
    for (const { x, y, width, height } of layout.devices) {
      expect(x - width / 2).toBeGreaterThanOrEqual(0);
      expect(y - height / 2).toBeGreaterThanOrEqual(0);
      expect(x + width / 2).toBeLessThanOrEqual(layout.width);
      expect(y + height / 2).toBeLessThanOrEqual(layout.height);
    }
  });

  it('draws several cables between the same two devices, and leaves out one that leads nowhere', () => {
    const chain = homeCinema();
    const [first] = chain.links;
    if (first === undefined) throw new Error('a cable is needed');
    const twice = { ...first, id: 'second' };
    const nowhere = { ...first, id: 'nowhere', to: { deviceId: 'none', portId: 'none' } };
    const drawn = layOut({ ...chain, links: [...chain.links, twice, nowhere] }, 'down').links.map(
      ({ id }) => id,
    );
    expect(drawn).toEqual([...chain.links.map(({ id }) => id), 'second']);
  });
});
