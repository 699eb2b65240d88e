import type { Chain, Device, Link, SignalMode, VideoFormat } from '../../../shared/contract/chain.ts';
import {
  cable,
  chainOf,
  display,
  frl48,
  input,
  matrixSwitch,
  opticalCable,
  output,
  processor,
  receiver,
  rowOf,
  source,
  splitter,
  tmds18,
  withDevice,
  withLink,
  withPort,
} from '../../chain/build-chain.ts';
import { edid9, edid18, edid48, format } from '../../signal/link-budget/chains.ts';
import { end } from '../audit-findings.ts';
import { hd60, uhd60, uhd120, wanting } from './build.ts';
import type { Row } from './row.ts';

const fixedRate = (gbpsPerLane: 6 | 10): SignalMode => ({ kind: 'frl', lanes: 4, gbpsPerLane });
const fast = { highestMode: fixedRate(10), setMode: fixedRate(10), contentProtection: '2.3' } as const;
const film: VideoFormat = { ...format(2160, 24, 'ycbcr422', 12), dynamicRange: 'hdr10' };
const uhd60In420 = format(2160, 60, 'ycbcr420', 8);
const uhd60Deep: VideoFormat = { ...format(2160, 60, 'rgb', 10), dynamicRange: 'hdr10' };

/** A disc player (L1) and a console (L2) in a receiver of 40 Gbit/s, and 12 m of optical cable to a television (L3). */
const rack = (): Chain =>
  wanting(
    chainOf(
      [
        source('player'),
        source('console', { ports: [output('out1', { ...fast, setMode: null })] }),
        receiver('receiver', {
          ports: [input('in1', { setMode: tmds18 }), input('in2', fast), output('out1', fast)],
        }),
        display('tv', {
          ports: [input('in1', { highestMode: frl48, contentProtection: '2.3', edidHex: edid48 })],
        }),
      ],
      [
        cable('player.out1', 'receiver.in1', { id: 'L1' }),
        cable('console.out1', 'receiver.in2', { id: 'L2', category: 'ultraHighSpeed', lengthM: 2 }),
        opticalCable('receiver.out1', 'tv.in1', { id: 'L3', lengthM: 12 }),
      ],
    ),
    uhd120,
    film,
  );

/** A streamer in a receiver (L1), and a projector behind it (L2). */
const room = (facts: Partial<Link>, wanted: VideoFormat): Chain =>
  wanting(
    chainOf(
      [source('streamer'), receiver('receiver'), display('projector')],
      [
        cable('streamer.out1', 'receiver.in1', { id: 'L1' }),
        cable('receiver.out1', 'projector.in1', { id: 'L2', ...facts }),
      ],
    ),
    wanted,
  );
const extenders = (facts: Partial<Link> = {}): Partial<Link> => ({
  construction: 'twistedPairExtender',
  category: 'unknown',
  certified: false,
  direction: 'asMarked',
  lengthM: 35,
  rated: { gbps: 18, lengthM: 40 },
  sourceEnd: end({ needsPower: true, powered: 'yes' }),
  sinkEnd: end({ needsPower: true, powered: 'yes' }),
  ...facts,
});
const bestAvoided = 'twisted-pair-extender shouldFix L2: twistedPairBestAvoided > replaceTwistedPair';

/** A player, a switch and a projector whose EDID is this one, by L1 and L2. */
const behindSwitch = (edid: string, wanted: VideoFormat, facts: Partial<Device> = {}): Chain => {
  const row = chainOf(
    [source('player'), matrixSwitch('switch'), display('projector')],
    [cable('player.out1', 'switch.in1', { id: 'L1' }), cable('switch.out1', 'projector.in1', { id: 'L2' })],
  );
  return wanting(withDevice(withPort(row, 'projector', 'in1', { edidHex: edid }), 'switch', facts), wanted);
};
const limited: Device['edidHandling'] = {
  kind: 'limits',
  maxTmdsCharacterRateMHz: 300,
  dropsFrl: true,
  drops420: false,
  dropsHdr: false,
  stereoOnly: false,
};

/** A splitter on so many televisions, the last of them with older protection. */
function splitOn(count: number, oldest: '1.4' | '2.2'): Chain {
  const numbers = Array.from({ length: count }, (_, at) => at + 1);
  const outputs = numbers.map((number) => output(`out${number}`));
  const televisions = numbers.map((number) =>
    display(`tv${number}`, {
      ports: [input('in1', { contentProtection: number === count ? oldest : '2.2' })],
    }),
  );
  const links = numbers.map((number) =>
    cable(`splitter.out${number}`, `tv${number}.in1`, { id: `L${number}` }),
  );
  return wanting(
    chainOf(
      [source('player'), splitter('splitter', { ports: [input('in1'), ...outputs] }), ...televisions],
      [cable('player.out1', 'splitter.in1', { id: 'L' }), ...links],
    ),
    uhd60,
  );
}

const toneMapped = (receiverFacts: Partial<Device> = {}): Chain =>
  wanting(
    rowOf([
      source('player'),
      receiver('receiver', receiverFacts),
      processor('processor', { passes: { toneMaps: true } }),
      display('projector', { passes: { dynamicRanges: [] } }),
    ]),
    film,
  );

/**
 * Installations as a technician meets them, each as it was put down before the audit was asked. Remedies are the trade's
 * usual ones (common practice, no source).
 */
export const installationRows: Row[] = [
  ['a console of 2160p120 and a disc player, on 12 m of optical cable', rack(), []],
  [
    'the same with the console’s input left at 18 Gbit/s',
    withPort(rack(), 'receiver', 'in2', { setMode: tmds18 }),
    ['port-mode mustFix receiver.in2: portSetBelowNeed > setPortMode'],
  ],
  [
    'the same with a receiver of 24 Gbit/s: one question for both of its links',
    ['in2', 'out1'].reduce(
      (of, id) => withPort(of, 'receiver', id, { highestMode: fixedRate(6), setMode: fixedRate(6) }),
      rack(),
    ),
    ['link-budget note L2: alsoOnLinks > checkSourceCompresses'],
  ],
  [
    'its optical cable in two pieces on a wall plate',
    withLink(rack(), 'L3', { couplers: 1 }),
    ['couplers shouldFix L3: activeCableOnCouplers > layInOnePiece'],
  ],
  [
    'its optical cable reversed and not fed: two faults',
    withLink(rack(), 'L3', {
      direction: 'reversed',
      sinkEnd: end({ needsPower: true, powered: 'no' }),
    }),
    [
      'direction mustFix L3: cableReversed > turnCableRound',
      'end-power mustFix L3: cableEndWithoutPower > plugInSupply',
    ],
  ],
  [
    'extenders of 10.2 Gbit/s with 2160p60 in 4:2:0',
    room(extenders({ rated: { gbps: 10.2, lengthM: 40 } }), uhd60In420),
    [bestAvoided],
  ],
  [
    'the same extenders with 2160p60 in RGB: one remedy, not two',
    room(extenders({ rated: { gbps: 10.2, lengthM: 40 } }), uhd60),
    ['certification mustFix L2: extenderRatedForLess > fitFasterExtender'],
  ],
  [
    'extenders further apart than their maker says',
    room(extenders({ lengthM: 55 }), uhd60),
    ['length-long mustFix L2: extenderTooLong > replaceTwistedPair'],
  ],
  [
    'extenders whose boxes stand the wrong way round: they are swapped, there is no plug to turn',
    room(extenders({ direction: 'reversed' }), uhd60),
    ['direction mustFix L2: cableReversed > swapExtenderEnds', bestAvoided],
  ],
  [
    '15 m of passive copper that is noted as certified',
    room({ lengthM: 15 }, uhd60),
    ['length-long shouldFix L2: cableLongForItsLabel > scanLabelAgain'],
  ],
  [
    '10 m in a wall without a label, for films in HDR',
    room({ lengthM: 10, certified: false, route: 'inWall' }, film),
    [],
  ],
  [
    '5 m over two wall plates',
    room({ lengthM: 5, couplers: 2 }, uhd60),
    ['couplers shouldFix L2: cableOnCouplers > layInOnePiece'],
  ],
  [
    '12 m of active copper that its maker rates to 10 m',
    room(
      {
        construction: 'activeCopper',
        direction: 'asMarked',
        category: 'unknown',
        certified: false,
        lengthM: 12,
        rated: { gbps: 18, lengthM: 10 },
      },
      uhd60,
    ),
    ['length-long shouldFix L2: cableTooLongFor > replaceByCertifiedOptical'],
  ],
  [
    'a switch that limits to 9 Gbit/s: it is told once, at the switch',
    behindSwitch(edid18, uhd60, { edidHandling: limited }),
    ['edid-management mustFix switch: edidLimitedLosing > switchEdidManagementOff'],
  ],
  [
    'a switch with an EDID of 9 Gbit/s of its own',
    behindSwitch(edid18, uhd60, { edidHandling: { kind: 'replaces', edidHex: edid9 } }),
    ['edid-management mustFix switch: edidReplacedLosing > switchEdidManagementOff'],
  ],
  [
    'a projector whose input is set to admit 9 Gbit/s: told at the projector, not once a cable',
    behindSwitch(edid9, uhd60),
    ['link-budget mustFix L2: formatTooMuch > setInputOrAskForListed'],
  ],
  [
    'both: switching the limit off would not help',
    behindSwitch(edid9, uhd60, { edidHandling: limited }),
    [
      'link-budget mustFix L2: formatTooMuch > setInputOrAskForListed',
      'edid-management shouldFix switch: edidLimited > switchEdidManagementOff',
    ],
  ],
  [
    '10 bits of RGB at 2160p60 on sockets of 18 Gbit/s: one finding for the whole way',
    behindSwitch(edid18, uhd60Deep),
    ['link-budget mustFix L1: alsoOnLinks > useFasterPort'],
  ],
  ['a processor that tone-maps for a projector without HDR', toneMapped(), []],
  [
    'the same behind a receiver that drops HDR',
    toneMapped({ passes: { dynamicRanges: [] } }),
    ['picture-loss shouldFix receiver: lossAtDevice > letDevicePass'],
  ],
  [
    'four televisions on a splitter, one of them of 1.4',
    splitOn(4, '1.4'),
    ['content-protection shouldFix L4: type1NotShown > findProtectionVersions'],
  ],
  [
    'more televisions on a splitter than 2.2 allows',
    splitOn(34, '2.2'),
    ['protection-topology shouldFix L: tooMuchBehindSource > hangFewerBehindSource'],
  ],
  ['an older television where 1080p is wanted', { ...splitOn(2, '1.4'), wantedFormats: [hd60] }, []],
  [
    'a firmware that is lower however its maker counts, 1.05 beside 1.6',
    withDevice(rack(), 'tv', { model: 'TV-1', firmware: 'v1.05' }),
    ['firmware-level mustFix tv: firmwareBelowLevel > updateFirmwareTo'],
    {},
    [{ model: 'TV-1', minimum: '1.6' }],
  ],
  [
    'a firmware that is higher or lower by how its maker counts, 1.10 beside 1.9',
    withDevice(rack(), 'tv', { model: 'TV-1', firmware: '1.10' }),
    ['firmware-level note tv: firmwareLevelUnknown > askBeforeUpdating'],
    {},
    [{ model: 'TV-1', minimum: '1.9' }],
  ],
];
