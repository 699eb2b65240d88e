import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { componentsOf, placeExists, placeKey, placeName, samePlace } from '../../shared/chain/graph.ts';
import type { Place } from '../../shared/contract/chain.ts';
import { arbitraryChain } from './arbitrary-chain.ts';
import { cable, chainOf, display, matrixSwitch, output, processor, source, withLink } from './build-chain.ts';

const keys = (places: Place[]): string[] => places.map(placeKey);

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
