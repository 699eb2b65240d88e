import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  componentsFromTo,
  displaysOf,
  parallelBranches,
  pathsBetween,
  placeKey,
  sourcesOf,
  upstreamOf,
} from '../../shared/chain/graph.ts';
import type { Chain, Place } from '../../shared/contract/chain.ts';
import { arbitraryChain } from './arbitrary-chain.ts';
import {
  cable,
  chainOf,
  display,
  homeCinema,
  input,
  matrixSwitch,
  output,
  receiver,
  source,
  splitter,
} from './build-chain.ts';

const keys = (places: Place[]): string[] => places.map(placeKey);

/** `depth` splitters that each feed a switch by two cables: two to the power of `depth` paths. */
function ladder(depth: number): Chain {
  const steps = Array.from({ length: depth }, (_, at) => at + 1);
  const after = (at: number): `${string}.${string}` => (at === 1 ? 'player.out1' : `switch${at - 1}.out1`);
  return chainOf(
    [
      source('player'),
      ...steps.flatMap((at) => [splitter(`split${at}`), matrixSwitch(`switch${at}`)]),
      display('tv'),
    ],
    [
      ...steps.flatMap((at) => [
        cable(after(at), `split${at}.in1`),
        cable(`split${at}.out1`, `switch${at}.in1`),
        cable(`split${at}.out2`, `switch${at}.in2`),
      ]),
      cable(`switch${depth}.out1`, 'tv.in1'),
    ],
  );
}

describe('paths', () => {
  it('names devices and links in order, shortest first', () => {
    const chain = chainOf(
      [source('player', { ports: [output('out1'), output('out2')] }), receiver('receiver'), display('tv')],
      [
        cable('player.out1', 'receiver.in1', { id: 'L1' }),
        cable('receiver.out1', 'tv.in1', { id: 'L2' }),
        cable('player.out2', 'tv.in2', { id: 'L3' }),
      ],
    );
    expect(pathsBetween(chain, 'player', 'tv')).toEqual({
      paths: [
        { deviceIds: ['player', 'tv'], linkIds: ['L3'] },
        { deviceIds: ['player', 'receiver', 'tv'], linkIds: ['L1', 'L2'] },
      ],
      complete: true,
    });
  });

  it('has none from a device to itself, against the signal, or to something unknown', () => {
    const chain = homeCinema();
    for (const [from, to] of [
      ['player', 'player'],
      ['projector', 'player'],
      ['player', 'nobody'],
      ['nobody', 'player'],
      ['player', 'streamer'],
    ] as const)
      expect(pathsBetween(chain, from, to)).toEqual({ paths: [], complete: true });
  });

  it('lists every path up to the limit and says when there are more', () => {
    expect(pathsBetween(ladder(5), 'player', 'tv')).toMatchObject({ complete: true });
    expect(pathsBetween(ladder(5), 'player', 'tv').paths).toHaveLength(32);
    expect(pathsBetween(ladder(5), 'player', 'tv', 32).complete).toBe(true);
    expect(pathsBetween(ladder(5), 'player', 'tv', 31)).toMatchObject({ complete: false });
    expect(pathsBetween(ladder(5), 'player', 'tv', 31).paths).toHaveLength(31);
  });

  it('stays bounded where two to the power of 99 paths lead through 200 devices', () => {
    const chain = ladder(99);
    expect(chain.devices).toHaveLength(200);
    const { paths, complete } = pathsBetween(chain, 'player', 'tv');
    expect(paths).toHaveLength(64);
    expect(complete).toBe(false);
    expect(componentsFromTo(chain, 'player', 'tv')).toHaveLength(200 + chain.links.length);
    expect(parallelBranches(chain, 'tv')).toEqual([]);
  });

  it('ends in a tangle of loops, too', () => {
    const devices = Array.from({ length: 20 }, (_, at) =>
      matrixSwitch(`s${at}`, {
        ports: Array.from({ length: 20 }, (_unused, n) => [output(`out${n}`), input(`in${n}`)]).flat(),
      }),
    );
    const links = devices.flatMap((one, at) =>
      devices.flatMap((other, to) => (at === to ? [] : [cable(`${one.id}.out${to}`, `${other.id}.in${at}`)])),
    );
    const { paths, complete } = pathsBetween(chainOf(devices, links), 's0', 's19');
    expect(paths.length).toBeGreaterThan(0);
    expect(complete).toBe(false);
  });

  it('says that it gave up where a tangle of loops hides the way', () => {
    const tangle = Array.from({ length: 14 }, (_, at) => `c${at}`);
    const mesh = (id: string): ReturnType<typeof matrixSwitch> =>
      matrixSwitch(id, {
        ports: [...tangle, 'a', 'tv'].flatMap((other) => [output(`to-${other}`), input(`from-${other}`)]),
      });
    const joined = (from: string, to: string) => cable(`${from}.to-${to}`, `${to}.from-${from}`);
    const chain = chainOf(
      [mesh('a'), ...tangle.map(mesh), display('tv', { ports: [input('from-a')] })],
      [
        ...tangle.flatMap((one) => [
          joined('a', one),
          joined(one, 'a'),
          ...tangle.filter((other) => other !== one).map((other) => joined(one, other)),
        ]),
        joined('a', 'tv'),
      ],
    );
    expect(pathsBetween(chain, 'a', 'tv')).toEqual({ paths: [], complete: false });
  });

  it('agrees with the components between the two ends, in any chain', () => {
    fc.assert(
      fc.property(arbitraryChain({ maxBetween: 5 }), (chain) => {
        for (const from of sourcesOf(chain))
          for (const to of displaysOf(chain)) {
            const { paths, complete } = pathsBetween(chain, from.id, to.id, 1000);
            expect(complete).toBe(true);
            const onPaths = new Set([
              ...paths.flatMap(({ deviceIds }) => deviceIds.map((id) => `device:${id}`)),
              ...paths.flatMap(({ linkIds }) => linkIds.map((id) => `link:${id}`)),
            ]);
            expect(new Set(keys(componentsFromTo(chain, from.id, to.id)))).toEqual(onPaths);
            expect(new Set(paths.map(({ linkIds }) => linkIds.join())).size).toBe(paths.length);
          }
      }),
    );
  });
});

describe('parallel branches', () => {
  it('says where to unplug and what goes dark', () => {
    const chain = homeCinema();
    expect(parallelBranches(chain, 'projector')).toEqual([
      { linkId: 'L5', forkDeviceId: 'receiver', deviceIds: ['television'], displayIds: ['television'] },
    ]);
    expect(parallelBranches(chain, 'television')).toEqual([
      {
        linkId: 'L3',
        forkDeviceId: 'receiver',
        deviceIds: ['processor', 'projector'],
        displayIds: ['projector'],
      },
    ]);
    expect(parallelBranches(chain, 'nobody')).toEqual([]);
  });

  it('has none where two ways meet again before the display', () => {
    expect(parallelBranches(ladder(1), 'tv')).toEqual([]);
  });

  it('leaves every device that feeds the display connected, and covers every other display it shares a source with', () => {
    fc.assert(
      fc.property(arbitraryChain(), (chain) => {
        for (const { id } of displaysOf(chain)) {
          const feeding = upstreamOf(chain, id);
          const branches = parallelBranches(chain, id);
          const dark = new Set(branches.flatMap(({ deviceIds }) => deviceIds));
          for (const device of feeding) expect(dark.has(device)).toBe(false);
          for (const other of displaysOf(chain)) {
            const shares = [...upstreamOf(chain, other.id)].some((device) => feeding.has(device));
            expect(dark.has(other.id)).toBe(shares && other.id !== id);
          }
        }
      }),
    );
  });
});
