import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ChainFault, chainFaults } from '../../shared/chain/validate.ts';
import { type Chain, chain as chainForm, type Device, type Link } from '../../shared/contract/chain.ts';
import { arbitraryChain } from './arbitrary-chain.ts';
import {
  cable,
  chainOf,
  display,
  homeCinema,
  output,
  processor,
  receiver,
  rowOf,
  source,
  withDevice,
  withLink,
  withoutLinks,
} from './build-chain.ts';

const codes = (chain: Chain): string[] => chainFaults(chain).map(({ said }) => said.code);
const plugged = (of: Chain, ...links: Link[]): Chain => ({ ...of, links: [...of.links, ...links] });
const placed = (of: Chain, ...devices: Device[]): Chain => ({ ...of, devices: [...of.devices, ...devices] });

describe('a chain without faults', () => {
  it.each<[string, Chain]>([
    [
      'a home cinema whose television has an output for return audio, over the one cable',
      withDevice(homeCinema(), 'television', {
        ports: [...display('television').ports, output('out1', { returnAudio: 'earc' })],
      }),
    ],
    ['a home cinema with a branch', homeCinema()],
    ['nothing at all', chainOf([], [])],
    ['one device alone', chainOf([receiver('receiver')], [])],
    ['a source on a display', rowOf([source('player'), display('tv')])],
    [
      'two chains that share nothing',
      chainOf(
        [source('a'), display('b'), source('c'), display('d')],
        [cable('a.out1', 'b.in1'), cable('c.out1', 'd.in1')],
      ),
    ],
    [
      'a dead end beside the way',
      plugged(placed(homeCinema(), receiver('zone')), cable('processor.out2', 'zone.in1')),
    ],
  ])('%s', (_name, chain) => {
    expect(chainFaults(chain)).toEqual([]);
  });

  it('is what the generator of random chains makes, in the form of the contract', () => {
    fc.assert(
      fc.property(arbitraryChain(), (chain) => {
        expect(chainFaults(chain)).toEqual([]);
        expect(chainForm.parse(chain)).toEqual(chain);
      }),
    );
  });
});

describe('each fault names its place', () => {
  const cinema = homeCinema();
  const cases: [string, Chain, ChainFault][] = [
    [
      'a link between two inputs',
      withLink(cinema, 'L3', { from: { deviceId: 'receiver', portId: 'in3' } }),
      {
        said: {
          code: 'linkBetweenInputs',
          values: { link: 'L3', from: { portId: 'in3' }, to: { portId: 'in1' } },
        },
        place: { kind: 'link', linkId: 'L3' },
        pointer: '/links/2',
      },
    ],
    [
      'a link between two outputs',
      withLink(cinema, 'L3', { to: { deviceId: 'processor', portId: 'out2' } }),
      {
        said: { code: 'linkBetweenOutputs', values: { from: { portId: 'out1' }, to: { portId: 'out2' } } },
        place: { kind: 'link', linkId: 'L3' },
        pointer: '/links/2',
      },
    ],
    [
      'a link the wrong way round',
      withLink(cinema, 'L3', {
        from: { deviceId: 'processor', portId: 'in1' },
        to: { deviceId: 'receiver', portId: 'out1' },
      }),
      {
        said: { code: 'linkWrongWayRound', values: { from: { portId: 'in1' }, to: { portId: 'out1' } } },
        place: { kind: 'link', linkId: 'L3' },
        pointer: '/links/2',
      },
    ],
    [
      'an input used twice',
      withLink(cinema, 'L2', { to: { deviceId: 'receiver', portId: 'in1' } }),
      {
        said: { code: 'portUsedTwice', values: { port: { portId: 'in1' }, links: ['L1', 'L2'] } },
        place: { kind: 'port', deviceId: 'receiver', portId: 'in1' },
        pointer: '/links/1/to',
      },
    ],
    [
      'an output used twice',
      withLink(cinema, 'L5', { from: { deviceId: 'receiver', portId: 'out1' } }),
      {
        said: { code: 'portUsedTwice', values: { port: { portId: 'out1' }, links: ['L3', 'L5'] } },
        place: { kind: 'port', deviceId: 'receiver', portId: 'out1' },
        pointer: '/links/4/from',
      },
    ],
    [
      'a loop',
      plugged(cinema, cable('processor.out2', 'receiver.in3', { id: 'L6' })),
      {
        said: {
          code: 'signalLoop',
          values: { devices: [{ deviceId: 'receiver' }, { deviceId: 'processor' }], link: 'L6' },
        },
        place: { kind: 'link', linkId: 'L6' },
        pointer: '/links/5',
      },
    ],
    [
      'a link from a device to itself',
      plugged(cinema, cable('processor.out2', 'processor.in2', { id: 'L6' })),
      {
        said: { code: 'linkIntoItself', values: { link: 'L6', device: { deviceId: 'processor' } } },
        place: { kind: 'link', linkId: 'L6' },
        pointer: '/links/5',
      },
    ],
    [
      'a display with an output',
      withDevice(cinema, 'television', { ports: [...display('television').ports, output('out1')] }),
      {
        said: {
          code: 'displayWithOutput',
          values: { display: { name: 'Television' }, output: { label: 'HDMI OUT1' } },
        },
        place: { kind: 'port', deviceId: 'television', portId: 'out1' },
        pointer: '/devices/5/ports/2',
      },
    ],
    [
      'a television’s return audio with a cable of its own',
      plugged(
        placed(
          withDevice(cinema, 'television', {
            ports: [...display('television').ports, output('out1', { returnAudio: 'arc' })],
          }),
          receiver('bar'),
        ),
        cable('television.out1', 'bar.in1', { id: 'L6' }),
      ),
      {
        said: { code: 'displayWithOutput', values: { output: { label: 'HDMI OUT1' } } },
        place: { kind: 'port', deviceId: 'television', portId: 'out1' },
        pointer: '/devices/5/ports/2',
      },
    ],
    [
      'a device that nothing is plugged into',
      withoutLinks(cinema, 'L2'),
      {
        said: { code: 'deviceUnconnected', values: { device: { deviceId: 'streamer' } } },
        place: { kind: 'device', deviceId: 'streamer' },
        pointer: '/devices/1',
      },
    ],
    [
      'a group without a source',
      withoutLinks(cinema, 'L3'),
      {
        said: {
          code: 'devicesWithoutSource',
          values: { devices: [{ deviceId: 'processor' }, { deviceId: 'projector' }] },
        },
        place: { kind: 'device', deviceId: 'processor' },
        pointer: '/devices/3',
      },
    ],
    [
      'a group without a display',
      plugged(
        placed(cinema, source('game', { name: 'Console' }), receiver('den', { name: 'Den' })),
        cable('game.out1', 'den.in1'),
      ),
      {
        said: {
          code: 'devicesWithoutDisplay',
          values: { devices: [{ deviceId: 'game' }, { deviceId: 'den' }] },
        },
        place: { kind: 'device', deviceId: 'game' },
        pointer: '/devices/6',
      },
    ],
    [
      'a length of nothing',
      withLink(cinema, 'L1', { lengthM: 0 }),
      {
        said: { code: 'lengthNotPositive', values: { link: { linkId: 'L1' }, length: 0 } },
        place: { kind: 'link', linkId: 'L1' },
        pointer: '/links/0/lengthM',
      },
    ],
    [
      'a negative length',
      withLink(cinema, 'L4', { lengthM: -2 }),
      {
        said: { code: 'lengthNotPositive', values: { link: { linkId: 'L4' }, length: -2 } },
        place: { kind: 'link', linkId: 'L4' },
        pointer: '/links/3/lengthM',
      },
    ],
    [
      'two links with one id',
      withLink(cinema, 'L2', { id: 'L1' }),
      {
        said: {
          code: 'linksOfOneId',
          values: {
            id: 'L1',
            links: [
              { ends: { from: { device: { deviceId: 'player' } } } },
              { ends: { from: { device: { deviceId: 'streamer' } } } },
            ],
          },
        },
        place: { kind: 'link', linkId: 'L1' },
        pointer: '/links/1/id',
      },
    ],
    [
      'two ports of a device with one id',
      withDevice(cinema, 'player', { ports: [output('out1'), output('out1')] }),
      {
        said: { code: 'portsOfOneId', values: { id: 'out1', device: { deviceId: 'player' } } },
        place: { kind: 'port', deviceId: 'player', portId: 'out1' },
        pointer: '/devices/0/ports/1/id',
      },
    ],
    [
      'two devices with one id',
      placed(cinema, display('projector', { name: 'Second screen' })),
      {
        said: {
          code: 'devicesOfOneId',
          values: { id: 'projector', devices: [{ name: 'Projector' }, { name: 'Second screen' }] },
        },
        place: { kind: 'device', deviceId: 'projector' },
        pointer: '/devices/6/id',
      },
    ],
    [
      'a link to a device that is not there',
      withLink(cinema, 'L5', { to: { deviceId: 'tv', portId: 'in1' } }),
      {
        said: { code: 'linkToUnknownDevice', values: { link: 'L5', device: 'tv' } },
        place: { kind: 'link', linkId: 'L5' },
        pointer: '/links/4/to/deviceId',
      },
    ],
    [
      'a link from a port that is not there',
      withLink(cinema, 'L1', { from: { deviceId: 'player', portId: 'out2' } }),
      {
        said: {
          code: 'linkFromUnknownPort',
          values: { link: 'L1', port: 'out2', device: { deviceId: 'player' } },
        },
        place: { kind: 'link', linkId: 'L1' },
        pointer: '/links/0/from/portId',
      },
    ],
  ];

  it.each(cases)('%s', (_name, chain, fault) => {
    const there = chainFaults(chain).filter(({ pointer }) => pointer === fault.pointer);
    expect(there).toMatchObject([fault]);
  });

  it('and one fault is told once, without others that only follow from it', () => {
    const alsoUnplugged = ['a link to a device that is not there'];
    for (const [name, chain] of cases.filter(([each]) => !alsoUnplugged.includes(each)))
      expect([name, chainFaults(chain).length]).toEqual([name, 1]);
  });
});

describe('what is half known', () => {
  it('two devices that nobody has connected yet are both told', () => {
    expect(chainFaults(chainOf([source('player'), display('tv')], [])).map(({ pointer }) => pointer)).toEqual(
      ['/devices/0', '/devices/1'],
    );
  });

  it('one device plugged into itself is a loop, not an orphan', () => {
    const chain = chainOf([processor('a')], [cable('a.out1', 'a.in1')]);
    expect(codes(chain)).toEqual(['linkIntoItself']);
  });

  it('a link from a port to itself is a loop and joins two of a kind, no more', () => {
    const chain = plugged(homeCinema(), cable('processor.out2', 'processor.out2'));
    expect(codes(chain)).toEqual(['linkBetweenOutputs', 'linkIntoItself']);
  });

  it('two links to one port that is not there are told as that', () => {
    const gone = { to: { deviceId: 'receiver', portId: 'in9' } };
    expect(codes(withLink(withLink(homeCinema(), 'L1', gone), 'L2', gone))).toEqual([
      'linkToUnknownPort',
      'linkToUnknownPort',
    ]);
  });

  it('a mistyped device id is told with the device it left unplugged, not with the one it starts from', () => {
    const chain = withLink(rowOf([source('player'), display('tv')]), 'playerout1-tvin1', {
      to: { deviceId: 'vt', portId: 'in1' },
    });
    expect(codes(chain)).toEqual(['linkToUnknownDevice', 'deviceUnconnected']);
  });
});
