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
  placeKey,
  signalOrder,
  signalRank,
  sourcesOf,
  upstreamOf,
} from '../../shared/chain/graph.ts';
import type { Place } from '../../shared/contract/chain.ts';
import { arbitraryChain } from './arbitrary-chain.ts';
import {
  cable,
  chainOf,
  display,
  homeCinema,
  matrixSwitch,
  processor,
  rowOf,
  source,
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

describe('rows', () => {
  it('joins each device to the next', () => {
    const row = rowOf([source('a'), processor('b'), display('c')], { lengthM: 2 });
    expect(row.links.map(({ from, to, lengthM }) => [from.deviceId, to.deviceId, lengthM])).toEqual([
      ['a', 'b', 2],
      ['b', 'c', 2],
    ]);
  });
});
