import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chainFaults } from '../../shared/chain/validate.ts';
import {
  type Chain,
  type ChainFault,
  chain as chainForm,
  type Device,
  type Link,
} from '../../shared/contract/chain.ts';
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

const codes = (chain: Chain): string[] => chainFaults(chain).map(({ code }) => code);
const plugged = (of: Chain, ...links: Link[]): Chain => ({ ...of, links: [...of.links, ...links] });
const placed = (of: Chain, ...devices: Device[]): Chain => ({ ...of, devices: [...of.devices, ...devices] });

describe('a chain without faults', () => {
  it.each<[string, Chain]>([
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
        code: 'link-direction',
        place: { kind: 'link', linkId: 'L3' },
        pointer: '/links/2',
        text: "Link 'L3' joins two inputs, Receiver 'HDMI IN3' and Cinema processor 'HDMI IN1'; a cable runs from an output to an input.",
      },
    ],
    [
      'a link between two outputs',
      withLink(cinema, 'L3', { to: { deviceId: 'processor', portId: 'out2' } }),
      {
        code: 'link-direction',
        place: { kind: 'link', linkId: 'L3' },
        pointer: '/links/2',
        text: "Link 'L3' joins two outputs, Receiver 'HDMI OUT1' and Cinema processor 'HDMI OUT2'; a cable runs from an output to an input.",
      },
    ],
    [
      'a link the wrong way round',
      withLink(cinema, 'L3', {
        from: { deviceId: 'processor', portId: 'in1' },
        to: { deviceId: 'receiver', portId: 'out1' },
      }),
      {
        code: 'link-direction',
        place: { kind: 'link', linkId: 'L3' },
        pointer: '/links/2',
        text: "Link 'L3' runs the wrong way, from the input Cinema processor 'HDMI IN1' to the output Receiver 'HDMI OUT1'; turn it round.",
      },
    ],
    [
      'an input used twice',
      withLink(cinema, 'L2', { to: { deviceId: 'receiver', portId: 'in1' } }),
      {
        code: 'port-used-twice',
        place: { kind: 'port', deviceId: 'receiver', portId: 'in1' },
        pointer: '/links/1/to',
        text: "Links 'L1' and 'L2' are both plugged into port 'HDMI IN1' of receiver 'Receiver'.",
      },
    ],
    [
      'an output used twice',
      withLink(cinema, 'L5', { from: { deviceId: 'receiver', portId: 'out1' } }),
      {
        code: 'port-used-twice',
        place: { kind: 'port', deviceId: 'receiver', portId: 'out1' },
        pointer: '/links/4/from',
        text: "Links 'L3' and 'L5' are both plugged into port 'HDMI OUT1' of receiver 'Receiver'.",
      },
    ],
    [
      'a loop',
      plugged(cinema, cable('processor.out2', 'receiver.in3', { id: 'L6' })),
      {
        code: 'cycle',
        place: { kind: 'link', linkId: 'L6' },
        pointer: '/links/5',
        text: "The signal goes round in a loop: receiver 'Receiver' → processor 'Cinema processor' → receiver 'Receiver'. Link 'L6' closes it.",
      },
    ],
    [
      'a link from a device to itself',
      plugged(cinema, cable('processor.out2', 'processor.in2', { id: 'L6' })),
      {
        code: 'cycle',
        place: { kind: 'link', linkId: 'L6' },
        pointer: '/links/5',
        text: "Link 'L6' leads from processor 'Cinema processor' back into itself.",
      },
    ],
    [
      'a display with an output',
      withDevice(cinema, 'television', { ports: [...display('television').ports, output('out1')] }),
      {
        code: 'display-with-output',
        place: { kind: 'port', deviceId: 'television', portId: 'out1' },
        pointer: '/devices/5/ports/2',
        text: "Display 'Television' has an output 'HDMI OUT1'; a chain ends at its displays.",
      },
    ],
    [
      'a device that nothing is plugged into',
      withoutLinks(cinema, 'L2'),
      {
        code: 'orphan',
        place: { kind: 'device', deviceId: 'streamer' },
        pointer: '/devices/1',
        text: "Source 'Streamer' isn't connected to anything.",
      },
    ],
    [
      'a group without a source',
      withoutLinks(cinema, 'L3'),
      {
        code: 'orphan',
        place: { kind: 'device', deviceId: 'processor' },
        pointer: '/devices/3',
        text: "Processor 'Cinema processor' and display 'Projector' are connected to each other, but to no source.",
      },
    ],
    [
      'a group without a display',
      plugged(
        placed(cinema, source('game', { name: 'Console' }), receiver('den', { name: 'Den' })),
        cable('game.out1', 'den.in1'),
      ),
      {
        code: 'orphan',
        place: { kind: 'device', deviceId: 'game' },
        pointer: '/devices/6',
        text: "Source 'Console' and receiver 'Den' are connected to each other, but to no display.",
      },
    ],
    [
      'a length of nothing',
      withLink(cinema, 'L1', { lengthM: 0 }),
      {
        code: 'length-not-positive',
        place: { kind: 'link', linkId: 'L1' },
        pointer: '/links/0/lengthM',
        text: "The length of the cable from Disc player 'HDMI OUT1' to Receiver 'HDMI IN1' is 0 m; it has to be more than nothing.",
      },
    ],
    [
      'a negative length',
      withLink(cinema, 'L4', { lengthM: -2 }),
      {
        code: 'length-not-positive',
        place: { kind: 'link', linkId: 'L4' },
        pointer: '/links/3/lengthM',
        text: "The length of the cable from Cinema processor 'HDMI OUT1' to Projector 'HDMI IN1' is -2 m; it has to be more than nothing.",
      },
    ],
    [
      'two links with one id',
      withLink(cinema, 'L2', { id: 'L1' }),
      {
        code: 'duplicate-id',
        place: { kind: 'link', linkId: 'L1' },
        pointer: '/links/1/id',
        text: "Two links have the id 'L1': the cable from Disc player 'HDMI OUT1' to Receiver 'HDMI IN1' and the cable from Streamer 'HDMI OUT1' to Receiver 'HDMI IN2'.",
      },
    ],
    [
      'two ports of a device with one id',
      withDevice(cinema, 'player', { ports: [output('out1'), output('out1')] }),
      {
        code: 'duplicate-id',
        place: { kind: 'port', deviceId: 'player', portId: 'out1' },
        pointer: '/devices/0/ports/1/id',
        text: "Two ports of source 'Disc player' have the id 'out1'.",
      },
    ],
    [
      'two devices with one id',
      placed(cinema, display('projector', { name: 'Second screen' })),
      {
        code: 'duplicate-id',
        place: { kind: 'device', deviceId: 'projector' },
        pointer: '/devices/6/id',
        text: "Two devices have the id 'projector': display 'Projector' and display 'Second screen'.",
      },
    ],
    [
      'a link to a device that is not there',
      withLink(cinema, 'L5', { to: { deviceId: 'tv', portId: 'in1' } }),
      {
        code: 'unknown-port',
        place: { kind: 'link', linkId: 'L5' },
        pointer: '/links/4/to/deviceId',
        text: "Link 'L5' goes to a device 'tv' that isn't in the chain.",
      },
    ],
    [
      'a link from a port that is not there',
      withLink(cinema, 'L1', { from: { deviceId: 'player', portId: 'out2' } }),
      {
        code: 'unknown-port',
        place: { kind: 'link', linkId: 'L1' },
        pointer: '/links/0/from/portId',
        text: "Link 'L1' comes from a port 'out2' that source 'Disc player' doesn't have.",
      },
    ],
  ];

  it.each(cases)('%s', (_name, chain, fault) => {
    expect(chainFaults(chain)).toContainEqual(fault);
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
    expect(codes(chain)).toEqual(['cycle']);
  });

  it('a link from a port to itself is a loop and joins two of a kind, no more', () => {
    const chain = plugged(homeCinema(), cable('processor.out2', 'processor.out2'));
    expect(codes(chain)).toEqual(['link-direction', 'cycle']);
  });

  it('two links to one port that is not there are told as that', () => {
    const gone = { to: { deviceId: 'receiver', portId: 'in9' } };
    expect(codes(withLink(withLink(homeCinema(), 'L1', gone), 'L2', gone))).toEqual([
      'unknown-port',
      'unknown-port',
    ]);
  });

  it('a mistyped device id is told with the device it left unplugged, not with the one it starts from', () => {
    const chain = withLink(rowOf([source('player'), display('tv')]), 'playerout1-tvin1', {
      to: { deviceId: 'vt', portId: 'in1' },
    });
    expect(codes(chain)).toEqual(['unknown-port', 'orphan']);
  });
});
