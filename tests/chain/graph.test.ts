import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  componentsBetween,
  componentsFromTo,
  componentsOf,
  displaysOf,
  downstreamOf,
  findDevice,
  findLink,
  findPort,
  freePorts,
  linkAtPort,
  linkEnds,
  linksInto,
  linksOutOf,
  parallelBranches,
  pathsBetween,
  placeExists,
  placeKey,
  placeName,
  samePlace,
  signalOrder,
  signalRank,
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
  processor,
  receiver,
  rowOf,
  source,
  splitter,
  withLink,
} from './build-chain.ts';

const ids = (set: Set<string>): string[] => [...set].sort();
const keys = (places: Place[]): string[] => places.map(placeKey);

describe('looking things up', () => {
  const chain = homeCinema();

  it('finds devices, ports and links by id, and nothing under an unknown id', () => {
    expect(findDevice(chain, 'processor')?.name).toBe('Cinema processor');
    expect(findPort(chain, { deviceId: 'receiver', portId: 'in2' })?.direction).toBe('input');
    expect(findLink(chain, 'L4')?.construction).toBe('activeOptical');
    expect(findDevice(chain, 'nobody')).toBeUndefined();
    expect(findPort(chain, { deviceId: 'receiver', portId: 'in9' })).toBeUndefined();
    expect(findLink(chain, 'L9')).toBeUndefined();
  });

  it('knows what is plugged in where, and what is free', () => {
    expect(linkAtPort(chain, { deviceId: 'receiver', portId: 'in2' })?.id).toBe('L2');
    expect(linkAtPort(chain, { deviceId: 'player', portId: 'out1' })?.id).toBe('L1');
    expect(linkAtPort(chain, { deviceId: 'receiver', portId: 'in3' })).toBeUndefined();
    expect(freePorts(chain, 'receiver', 'input').map(({ id }) => id)).toEqual(['in3', 'in4']);
    expect(freePorts(chain, 'receiver', 'output')).toEqual([]);
    expect(linksInto(chain, 'receiver').map(({ id }) => id)).toEqual(['L1', 'L2']);
    expect(linksOutOf(chain, 'receiver').map(({ id }) => id)).toEqual(['L3', 'L5']);
  });

  it('gives both ends of a link, or null when one is missing', () => {
    const link = linksInto(chain, 'projector')[0];
    expect(link && linkEnds(chain, link)).toMatchObject({
      source: { id: 'processor' },
      output: { id: 'out1' },
      sink: { id: 'projector' },
      input: { id: 'in1' },
    });
    const loose = withLink(chain, 'L4', { to: { deviceId: 'projector', portId: 'in7' } });
    expect(loose.links.map((each) => linkEnds(loose, each) !== null)).toEqual([
      true,
      true,
      true,
      false,
      true,
    ]);
  });

  it('lists sources and displays', () => {
    expect(sourcesOf(chain).map(({ id }) => id)).toEqual(['player', 'streamer']);
    expect(displaysOf(chain).map(({ id }) => id)).toEqual(['projector', 'television']);
  });
});

describe('upstream and downstream', () => {
  it('follow the signal through branches', () => {
    const chain = homeCinema();
    expect(ids(upstreamOf(chain, 'projector'))).toEqual(['player', 'processor', 'receiver', 'streamer']);
    expect(ids(upstreamOf(chain, 'television'))).toEqual(['player', 'receiver', 'streamer']);
    expect(ids(downstreamOf(chain, 'receiver'))).toEqual(['processor', 'projector', 'television']);
    expect(ids(upstreamOf(chain, 'player'))).toEqual([]);
    expect(ids(downstreamOf(chain, 'nobody'))).toEqual([]);
  });

  it('hold a device itself only when a loop leads back to it', () => {
    const loop = chainOf(
      [matrixSwitch('a'), matrixSwitch('b')],
      [cable('a.out1', 'b.in1'), cable('b.out1', 'a.in1')],
    );
    expect(ids(upstreamOf(loop, 'a'))).toEqual(['a', 'b']);
    expect(signalOrder(loop).sort()).toEqual(['a', 'b']);
  });

  it('are each other turned round, in any chain', () => {
    fc.assert(
      fc.property(arbitraryChain(), (chain) => {
        for (const one of chain.devices) {
          const below = downstreamOf(chain, one.id);
          for (const other of chain.devices)
            expect(upstreamOf(chain, other.id).has(one.id)).toBe(below.has(other.id));
        }
      }),
      { numRuns: 50 },
    );
  });
});

describe('order along the signal', () => {
  it('keeps a branch together and every device after what feeds it', () => {
    expect(signalOrder(homeCinema())).toEqual([
      'player',
      'streamer',
      'receiver',
      'processor',
      'projector',
      'television',
    ]);
  });

  it('never puts a device before one that feeds it, and leaves none out, however the document is sorted', () => {
    fc.assert(
      fc.property(arbitraryChain(), fc.infiniteStream(fc.nat()), (chain, picks) => {
        const devices = [...chain.devices].sort(() => ((picks.next().value ?? 0) % 2 === 0 ? 1 : -1));
        const order = signalOrder({ ...chain, devices });
        expect([...order].sort()).toEqual(chain.devices.map(({ id }) => id).sort());
        for (const { from, to } of chain.links)
          expect(order.indexOf(from.deviceId)).toBeLessThan(order.indexOf(to.deviceId));
      }),
    );
  });

  it('ranks every place: inputs, the device, its outputs, its links, then the next device', () => {
    const chain = homeCinema();
    const rank = signalRank(chain);
    const places: Place[] = [
      { kind: 'chain' },
      { kind: 'link', linkId: 'L1' },
      { kind: 'port', deviceId: 'receiver', portId: 'in1' },
      { kind: 'device', deviceId: 'receiver' },
      { kind: 'port', deviceId: 'receiver', portId: 'out2' },
      { kind: 'link', linkId: 'L3' },
      { kind: 'port', deviceId: 'processor', portId: 'in1' },
      { kind: 'device', deviceId: 'television' },
      { kind: 'link', linkId: 'L99' },
    ];
    expect([...places].reverse().sort((a, b) => rank(a) - rank(b))).toEqual(places);
  });
});

describe('components', () => {
  it('lists devices and links along the signal', () => {
    expect(keys(componentsOf(homeCinema()))).toEqual([
      'device:player',
      'link:L1',
      'device:streamer',
      'link:L2',
      'device:receiver',
      'link:L3',
      'link:L5',
      'device:processor',
      'link:L4',
      'device:projector',
      'device:television',
    ]);
  });

  it('gives those from one device to another, with or without the two', () => {
    const chain = homeCinema();
    expect(keys(componentsFromTo(chain, 'receiver', 'projector'))).toEqual([
      'device:receiver',
      'link:L3',
      'device:processor',
      'link:L4',
      'device:projector',
    ]);
    expect(keys(componentsBetween(chain, 'receiver', 'projector'))).toEqual([
      'link:L3',
      'device:processor',
      'link:L4',
    ]);
    expect(componentsFromTo(chain, 'projector', 'receiver')).toEqual([]);
    expect(componentsFromTo(chain, 'processor', 'television')).toEqual([]);
    expect(componentsFromTo(chain, 'receiver', 'nobody')).toEqual([]);
    expect(keys(componentsFromTo(chain, 'receiver', 'receiver'))).toEqual(['device:receiver']);
  });
});

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

describe('names of places', () => {
  const chain = chainOf(
    [source('player', { name: 'Blu player' }), matrixSwitch('switch'), processor('processor')],
    [cable('player.out1', 'switch.in3', { id: 'L1' }), cable('switch.out1', 'processor.in1', { id: 'L2' })],
  );

  it.each<[Place, string]>([
    [{ kind: 'chain' }, "the chain 'Cinema'"],
    [{ kind: 'device', deviceId: 'processor' }, "processor 'Cinema processor'"],
    [{ kind: 'port', deviceId: 'switch', portId: 'in3' }, "port 'HDMI IN3' of switch 'Switch'"],
    [{ kind: 'link', linkId: 'L1' }, "the cable from Blu player 'HDMI OUT1' to Switch 'HDMI IN3'"],
    [{ kind: 'device', deviceId: 'gone' }, "device 'gone'"],
    [{ kind: 'port', deviceId: 'switch', portId: 'gone' }, "port 'gone' of switch 'Switch'"],
    [{ kind: 'link', linkId: 'gone' }, "link 'gone'"],
  ])('%o is %s', (place, name) => {
    expect(placeName(chain, place)).toBe(name);
    expect(placeExists(chain, place)).toBe(!name.includes('gone'));
  });

  it('tells devices and ports of the same name apart', () => {
    const twins = chainOf(
      [
        source('player', { ports: [output('out1', { label: 'OUT' }), output('out2', { label: 'OUT' })] }),
        display('left', { name: 'Screen' }),
        display('right', { name: 'Screen' }),
      ],
      [cable('player.out1', 'left.in1', { id: 'L1' }), cable('player.out2', 'right.in1', { id: 'L2' })],
    );
    const names = twins.links.map(({ id }) => placeName(twins, { kind: 'link', linkId: id }));
    expect(names).toEqual([
      "the cable from Disc player 'OUT' (out1) to Screen (left) 'HDMI IN1'",
      "the cable from Disc player 'OUT' (out2) to Screen (right) 'HDMI IN1'",
    ]);
  });

  it('calls an extender over twisted pair by its kind', () => {
    const extended = withLink(chain, 'L2', { construction: 'twistedPairExtender' });
    expect(placeName(extended, { kind: 'link', linkId: 'L2' })).toBe(
      "the twisted-pair extender from Switch 'HDMI OUT1' to Cinema processor 'HDMI IN1'",
    );
  });

  it('never gives two places of a chain the same key or the same name', () => {
    fc.assert(
      fc.property(arbitraryChain(), (any) => {
        const places = componentsOf(any);
        expect(new Set(keys(places)).size).toBe(places.length);
        expect(new Set(places.map((place) => placeName(any, place))).size).toBe(places.length);
        for (const [at, place] of places.entries())
          expect(places.findIndex((other) => samePlace(place, other))).toBe(at);
      }),
    );
  });
});

describe('rows', () => {
  it('joins each device to the next', () => {
    const row = rowOf([source('a'), processor('b'), display('c')], { lengthM: 2 });
    expect(row.links.map(({ from, to, lengthM }) => [from.deviceId, to.deviceId, lengthM])).toEqual([
      ['a', 'b', 2],
      ['b', 'c', 2],
    ]);
  });
});
