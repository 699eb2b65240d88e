import { boatHouse, gableRoom, studySet } from '../../seed/chains.ts';
import type { Chain, VideoFormat } from '../../shared/contract/chain.ts';
import { chain as chainSchema, type Device, type Link, type Port } from '../../shared/contract/chain.ts';
import { benchChains } from '../bench/isolation-chains.ts';
import {
  display,
  extender,
  frl48,
  homeCinema,
  processor,
  receiver,
  rowOf,
  source,
  tmds9,
  withDevice,
  withLink,
  withPort,
} from '../chain/build-chain.ts';
import { edid9, edid18, edid48, edid48Plain, edid1080 } from '../signal/link-budget/chains.ts';

const format = (facts: Partial<VideoFormat>): VideoFormat => ({
  widthPx: 3840,
  heightPx: 2160,
  refreshHz: 60,
  interlaced: false,
  encoding: 'rgb',
  bitsPerComponent: 8,
  ...facts,
});
/** From what goes anywhere to what goes nowhere. */
const formats: VideoFormat[] = [
  format({ widthPx: 1920, heightPx: 1080, refreshHz: 59.94 }),
  format({}),
  format({ bitsPerComponent: 10, encoding: 'ycbcr422' }),
  format({ bitsPerComponent: 12, encoding: 'ycbcr444', refreshHz: 120 }),
  format({ encoding: 'ycbcr420', bitsPerComponent: 10 }),
  format({ encoding: 'ycbcr420', widthPx: 641, heightPx: 333, refreshHz: 61.7 }),
];

/** What can be wrong or not known of a cable, each so that a rule of the audit has something to say. */
const cableFaults: Partial<Link>[] = [
  { category: 'standard' },
  { category: 'highSpeed', certified: false },
  { category: 'unknown', certified: false },
  { certified: false },
  { lengthM: 0.5 },
  { lengthM: 12.5 },
  { lengthM: 30, route: 'inWall' },
  { lengthM: 10, construction: 'activeCopper', direction: 'unknown' },
  { construction: 'activeCopper', direction: 'notDirectional', drawMa: 40 },
  { construction: 'activeOptical', factoryFittedEnds: null, direction: 'unknown', drawMa: 90 },
  { construction: 'activeOptical', factoryFittedEnds: false, direction: 'reversed' },
  { construction: 'activeOptical', sourceEnd: { needsPower: true, powered: 'yes', seated: 'yes' } },
  { construction: 'twistedPairExtender', category: 'unknown', lengthM: 25 },
  { direction: 'reversed' },
  { direction: 'unknown' },
  { sinkEnd: { needsPower: true, powered: 'no', seated: 'no' }, construction: 'activeCopper' },
  { sourceEnd: { needsPower: true, powered: 'unknown', seated: 'unknown' } },
  {
    sourceEnd: { needsPower: false, powered: 'unknown', seated: 'no' },
    sinkEnd: { needsPower: false, powered: 'unknown', seated: 'no' },
  },
];

const portFaults: Partial<Port>[] = [
  { setMode: tmds9 },
  { setMode: frl48 },
  { highestMode: tmds9, setMode: null },
  { highestMode: frl48, setMode: null },
  { contentProtection: 'none' },
  { contentProtection: '1.4' },
  { contentProtection: 'unknown' },
  { label: 'AUDIO OUT' },
  { label: 'ZONE 2' },
  { fiveVoltMa: 20 },
  { fiveVoltMa: 300 },
  { setMode: null },
];

const deviceFaults: Partial<Device>[] = [
  { processesPicture: true },
  { edidHandling: { kind: 'replaces', edidHex: null } },
  {
    edidHandling: {
      kind: 'limits',
      maxTmdsCharacterRateMHz: 300,
      dropsFrl: true,
      drops420: true,
      dropsHdr: true,
      stereoOnly: true,
    },
  },
  ...['1.2', '2.0', '3.0', '2024-03-04', '04/05/2024', '1234', 'abc', '1.2 and 1.3', '', null].map(
    (firmware) => ({
      model: 'Model A',
      firmware,
    }),
  ),
];
export const minimumFirmware = [
  { model: 'Model A', minimum: '2.0' },
  { model: 'Model A', minimum: '2.0 build 77' },
  { model: 'Model A', minimum: '2024-05-06' },
];

const damagedPorts = (of: Chain): Chain[] =>
  of.links.flatMap(({ from, to }) =>
    [from, to].flatMap(({ deviceId, portId }) =>
      portFaults.map((facts) => withPort(of, deviceId, portId, facts)),
    ),
  );

function damaged(of: Chain): Chain[] {
  // One cable of each kind of place: from a source, between devices, to a display.
  const ofLinks = of.links
    .filter(({ id }) => ['L1', 'L3', 'L4'].includes(id))
    .flatMap(({ id }) => cableFaults.map((facts) => withLink(of, id, facts)));
  const ofDevices = of.devices.flatMap(({ id }) => deviceFaults.map((facts) => withDevice(of, id, facts)));
  return [...ofLinks, ...damagedPorts(of), ...ofDevices];
}

/** All ports of a device alike: with what is worse on one of them, the others are the better ones. */
const allPorts = (of: Chain, deviceId: string, facts: Partial<Port>): Chain =>
  withDevice(of, deviceId, {
    ports: (of.devices.find(({ id }) => id === deviceId)?.ports ?? []).map((port) => ({ ...port, ...facts })),
  });

/** Chains in which something is wrong, each in one or two ways; and the demo's and the bench's as they are. */
export function chainsToSpeakOf(): Chain[] {
  const demo = [gableRoom, studySet, boatHouse].map((each) => chainSchema.parse(each));
  const bench = Object.values(benchChains).map((make) => make());
  const cinema = homeCinema();
  const fast = allPorts(allPorts(cinema, 'receiver', { highestMode: frl48 }), 'player', {
    highestMode: frl48,
  });
  const namesakes = withDevice(cinema, 'television', { name: 'Projector' });
  const extended = withLink(cinema, 'L5', { construction: 'twistedPairExtender' });
  const [seen = cinema, ...seenOtherwise] = [edid18, edid9, edid48, edid48Plain, edid1080].map((edidHex) =>
    withPort(cinema, 'projector', 'in1', { edidHex }),
  );
  const compressed = withPort(allPorts(fast, 'projector', { highestMode: frl48 }), 'projector', 'in1', {
    edidHex: edid48,
  });
  const doubly = [
    withLink(withPort(cinema, 'processor', 'out1', { fiveVoltMa: 55 }), 'L4', { drawMa: 200 }),
    withPort(withPort(fast, 'receiver', 'in1', { highestMode: tmds9 }), 'streamer', 'out1', {
      highestMode: tmds9,
    }),
    withPort(fast, 'receiver', 'in1', { highestMode: tmds9 }),
    withLink(allPorts(fast, 'projector', { highestMode: frl48 }), 'L4', { certified: false, lengthM: 90 }),
    withDevice(withDevice(cinema, 'receiver', { processesPicture: true }), 'projector', {
      processesPicture: true,
    }),
    withDevice(rowOf([source('player'), receiver('receiver'), display('projector')]), 'receiver', {
      processesPicture: true,
    }),
    withDevice(
      withDevice(rowOf([source('player'), receiver('one'), receiver('two'), display('tv')]), 'one', {
        processesPicture: true,
      }),
      'two',
      { processesPicture: true },
    ),
    rowOf([source('player'), extender('extender'), display('projector')]),
    rowOf([source('player'), processor('processor'), display('projector')], {
      construction: 'activeOptical',
      direction: 'asMarked',
    }),
  ];
  return [
    ...demo,
    ...bench,
    fast,
    namesakes,
    extended,
    compressed,
    ...seenOtherwise,
    ...doubly,
    ...damaged(seen),
    ...damagedPorts(fast),
  ].map((each) => ({ ...each, wantedFormats: [...each.wantedFormats, ...formats] }));
}
