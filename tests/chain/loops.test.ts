import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chainFaults } from '../../shared/chain/validate.ts';
import type { Chain, Link } from '../../shared/contract/chain.ts';
import { arbitraryChain } from './arbitrary-chain.ts';
import {
  cable,
  chainOf,
  display,
  homeCinema,
  matrixSwitch,
  output,
  processor,
  receiver,
  source,
  withDevice,
} from './build-chain.ts';

const codes = (chain: Chain): string[] => chainFaults(chain).map(({ said }) => said.code);
const plugged = (of: Chain, ...links: Link[]): Chain => ({ ...of, links: [...of.links, ...links] });

const loops = ['signalLoop', 'linkIntoItself'];

describe('loops', () => {
  it('are named device by device, in the way of the signal', () => {
    const chain = chainOf(
      [
        source('p'),
        ...['a', 'b', 'c'].map((id) => matrixSwitch(id, { name: id.toUpperCase() })),
        display('d'),
      ],
      [
        cable('p.out1', 'a.in1'),
        cable('a.out1', 'b.in1', { id: 'L1' }),
        cable('b.out1', 'c.in1', { id: 'L2' }),
        cable('c.out1', 'a.in2', { id: 'L3' }),
      ],
    );
    const loop = chainFaults(chain).find(({ said }) => said.code === 'signalLoop');
    expect(loop?.said.values).toMatchObject({
      devices: [{ deviceId: 'a' }, { deviceId: 'b' }, { deviceId: 'c' }],
      link: 'L3',
    });
  });

  it('that share no device are told one by one', () => {
    const pairs = ['a', 'b'].map((id) => [processor(`${id}1`), processor(`${id}2`)]);
    const links = ['a', 'b'].flatMap((id): Link[] => [
      cable(`${id}1.out1`, `${id}2.in1`),
      cable(`${id}2.out1`, `${id}1.in1`),
    ]);
    expect(codes(chainOf(pairs.flat(), links)).filter((code) => code === 'signalLoop')).toHaveLength(2);
  });

  it('that share devices are one fault', () => {
    const chain = chainOf(
      [source('p'), processor('a'), processor('b'), matrixSwitch('c'), display('d')],
      [
        cable('p.out1', 'c.in1'),
        cable('a.out1', 'b.in1'),
        cable('b.out1', 'a.in1'),
        cable('b.out2', 'c.in2'),
        cable('c.out1', 'a.in2'),
        cable('a.out2', 'd.in1'),
      ],
    );
    expect(codes(chain)).toEqual(['signalLoop']);
  });

  it('take in no link between two outputs', () => {
    const outward = withDevice(homeCinema(), 'receiver', {
      ports: [...receiver('receiver').ports, output('out3')],
    });
    expect(codes(plugged(outward, cable('processor.out2', 'receiver.out3')))).toEqual(['linkBetweenOutputs']);
  });

  it('are judged by the ports, so a link noted the wrong way round makes none', () => {
    const chain = chainOf(
      [source('p'), processor('a'), processor('b'), display('d')],
      [
        cable('p.out1', 'a.in1'),
        cable('a.out1', 'b.in1'),
        cable('b.in2', 'a.out2'),
        cable('b.out1', 'd.in1'),
      ],
    );
    expect(codes(chain)).toEqual(['linkWrongWayRound']);
  });

  it('is found wherever a link is led back upstream', () => {
    fc.assert(
      fc.property(arbitraryChain(), fc.nat(), (chain, pick) => {
        const link = chain.links[pick % chain.links.length];
        if (link === undefined) return;
        const closing: Link = {
          ...link,
          id: 'closing',
          from: { deviceId: link.to.deviceId, portId: 'back-out' },
          to: { deviceId: link.from.deviceId, portId: 'back-in' },
        };
        const devices = chain.devices.map((device) => ({
          ...device,
          ports: [
            ...device.ports,
            ...(device.id === closing.from.deviceId ? [{ ...output('back-out') }] : []),
            ...(device.id === closing.to.deviceId
              ? [{ ...output('back-in'), direction: 'input' as const }]
              : []),
          ],
        }));
        const found = chainFaults({ ...chain, devices, links: [...chain.links, closing] });
        expect(found.filter(({ said }) => loops.includes(said.code))).toHaveLength(1);
      }),
    );
  });
});
