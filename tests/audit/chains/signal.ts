import type { Chain, Device, Link, VideoFormat } from '../../../shared/contract/chain.ts';
import {
  cable,
  chainOf,
  display,
  homeCinema,
  matrixSwitch,
  processor,
  receiver,
  rowOf,
  source,
  splitter,
  tmds9,
  withDevice,
  withPort,
} from '../../chain/build-chain.ts';
import { display18, edidHex } from '../../signal/link-budget/build-edid.ts';
import { format } from '../../signal/link-budget/chains.ts';
import { edid18, hd60, uhd60, wanting } from './build.ts';
import type { Row } from './row.ts';

const hdr10: VideoFormat = { ...format(2160, 60, 'ycbcr422', 12), dynamicRange: 'hdr10' };
const dynamic: VideoFormat = { ...uhd60, dynamicRange: 'st2094-10' };
const edidSdr = edidHex({ ...display18, hdr: false });

/** A player through a receiver on a television, a link of 18 Gbit/s each, with facts of the three devices. */
const way = (wanted: VideoFormat, facts: { [id: string]: Partial<Device> } = {}): Chain => {
  const chain = wanting(rowOf([source('player'), receiver('receiver'), display('tv')]), wanted);
  return Object.entries(facts).reduce((of, [id, each]) => withDevice(of, id, each), chain);
};
const seenBy = (of: Chain, edid: string): Chain => withPort(of, 'tv', 'in1', { edidHex: edid });
const none = { passes: { dynamicRanges: [], features: [], wideColour: false, threeD: false } };
const sd60: VideoFormat = { ...hd60, widthPx: 720, heightPx: 480 };
/** The receiver's input set to 9 Gbit/s. */
const low = (wanted: VideoFormat): Chain => withPort(way(wanted), 'receiver', 'in1', { setMode: tmds9 });
/** A receiver on a television, with sound back over the one cable, `L`. */
const back = (facts: Partial<Link>): Chain =>
  withPort(
    withPort(
      wanting(
        chainOf(
          [source('player'), receiver('receiver'), display('tv')],
          [cable('player.out1', 'receiver.in1'), cable('receiver.out1', 'tv.in1', { id: 'L', ...facts })],
        ),
        uhd60,
      ),
      'receiver',
      'out1',
      { returnAudio: 'earc' },
    ),
    'tv',
    'in1',
    { returnAudio: 'arc' },
  );
const old = (wanted: VideoFormat): Chain =>
  withoutFree(withPort(way(wanted), 'tv', 'in1', { contentProtection: '1.4' }));
/** The television with the one input. */
function withoutFree(of: Chain): Chain {
  const tv = of.devices.find(({ id }) => id === 'tv');
  return withDevice(of, 'tv', { ports: tv?.ports.slice(0, 1) ?? [] });
}
const limits: Device['edidHandling'] = {
  kind: 'limits',
  maxTmdsCharacterRateMHz: null,
  dropsFrl: false,
  drops420: false,
  dropsHdr: true,
  stereoOnly: false,
};

/** Chains in which HDR, or what else comes with a picture, arrives or gets lost. */
export const signalRows: Row[] = [
  ['HDR10 of which nobody noted what takes it', way(hdr10), []],
  ['HDR10 on a display whose EDID admits it', seenBy(way(hdr10), edid18), []],
  [
    'HDR10 on a display whose EDID doesn’t admit it: one finding for two links',
    seenBy(way(hdr10), edidSdr),
    ['picture-loss shouldFix tv: lossAtDevice > setInputToAdmit'],
  ],
  ['SDR on that display', seenBy(way(uhd60), edidSdr), []],
  [
    'a receiver that drops HDR',
    seenBy(way(hdr10, { receiver: none }), edid18),
    ['picture-loss shouldFix receiver: lossAtDevice > letDevicePass'],
  ],
  ['the same receiver with SDR', seenBy(way(uhd60, { receiver: none }), edid18), []],
  [
    'HLG through a receiver that passes HDR10 only',
    way({ ...hdr10, dynamicRange: 'hlg' }, { receiver: { passes: { dynamicRanges: ['hdr10'] } } }),
    ['picture-loss shouldFix receiver: lossAtDevice > letDevicePass'],
  ],
  [
    'a receiver that is set to tone-map: on purpose',
    way(hdr10, { receiver: { passes: { dynamicRanges: [], toneMaps: true } }, tv: none }),
    [],
  ],
  [
    'a receiver that takes HDR out of the EDID: told once, with what it costs',
    seenBy(way(hdr10, { receiver: { edidHandling: limits } }), edid18),
    ['edid-management shouldFix receiver: edidLimitedLosing > switchEdidManagementOff'],
  ],
  [
    'the same where HDR isn’t wanted',
    seenBy(way(uhd60, { receiver: { edidHandling: limits } }), edid18),
    ['edid-management shouldFix receiver: edidLimited > switchEdidManagementOff'],
  ],
  [
    'a receiver that shows an EDID without HDR',
    seenBy(way(hdr10, { receiver: { edidHandling: { kind: 'replaces', edidHex: edidSdr } } }), edid18),
    ['edid-management shouldFix receiver: edidReplacedLosing > switchEdidManagementOff'],
  ],
  [
    'a processor that makes SDR for an SDR projector, as it is there to do',
    wanting(
      withDevice(withPort(homeCinema(), 'projector', 'in1', { edidHex: edidSdr }), 'processor', {
        outputFormat: uhd60,
      }),
      { ...hdr10, displayIds: ['projector'] },
    ),
    [],
  ],
  [
    'a processor that sends HDR10 to a projector that doesn’t take it',
    wanting(
      rowOf([
        source('player'),
        processor('processor', { outputFormat: hdr10 }),
        display('projector', { passes: { dynamicRanges: [] } }),
      ]),
      uhd60,
    ),
    ['picture-loss shouldFix projector: lossAtDevice > askForWhatIsTaken'],
  ],
  [
    'a player that sends no HDR',
    way(hdr10, { player: none }),
    ['picture-loss shouldFix player: lossAtDevice > askForWhatIsTaken'],
  ],
  [
    'HDR10 in 8 bits',
    way({ ...uhd60, dynamicRange: 'hdr10' }),
    ['picture-loss note player: lossAtDevice > askForTenBits'],
  ],
  ['dynamic metadata inside RGB of 8 bits: no loss', way(dynamic), []],
  [
    'dynamic metadata on a display that admits static ones only',
    seenBy(way(dynamic), edid18),
    ['picture-loss shouldFix tv: lossAtDevice > setInputToAdmit'],
  ],
  [
    '12 bits through a receiver that passes 8',
    way(format(2160, 24, 'rgb', 12), { receiver: { passes: { deepestBits: 8 } } }),
    ['picture-loss shouldFix receiver: lossAtDevice > letDevicePass'],
  ],
  [
    'variable rate and low latency on a receiver that passes neither',
    way({ ...uhd60, features: ['vrr', 'allm'] }, { receiver: { passes: { features: [] } } }),
    ['picture-loss shouldFix receiver: lossAtDevice > letDevicePass'],
  ],
  [
    'variable rate on a display whose EDID has none',
    seenBy(way({ ...uhd60, features: ['vrr'] }), edid18),
    ['picture-loss shouldFix tv: lossAtDevice > setInputToAdmit'],
  ],
  [
    'quick media switching before a processor that makes its own rate',
    wanting(rowOf([source('player'), processor('processor', { outputFormat: uhd60 }), display('tv', none)]), {
      ...uhd60,
      features: ['qms'],
    }),
    [],
  ],
  [
    'a splitter on two displays of which one takes no HDR',
    splitOn(edid18, edidSdr),
    ['picture-loss shouldFix splitter: lossAtDevice > feedDisplaysAlike'],
  ],
  ['return audio over copper', back({}), []],
  [
    'return audio over an optical cable of which nobody knows',
    back({ construction: 'activeOptical', direction: 'asMarked', lengthM: 15 }),
    ['return-audio note L: returnAudioUnknown > tryReturnAudio'],
  ],
  [
    'the same where it was tried',
    back({ construction: 'activeOptical', direction: 'asMarked', lengthM: 15, returnAudio: 'yes' }),
    [],
  ],
  [
    'return audio over a cable that carries none',
    back({ returnAudio: 'no' }),
    ['return-audio shouldFix L: returnAudioNotCarried > useCableWithReturnAudio'],
  ],
  [
    'a television of 1.4 where 2160p is wanted',
    old(uhd60),
    ['content-protection shouldFix receiverout1-tvin1: type1NotShown > findProtectionVersions'],
  ],
  ['the same where 1080p is all that is wanted', old(hd60), []],
  [
    'the same with HDR of 1080p',
    old({ ...hd60, bitsPerComponent: 10, dynamicRange: 'hdr10' }),
    ['content-protection shouldFix receiverout1-tvin1: type1NotShown > findProtectionVersions'],
  ],
  [
    'a television without protection where 1080p is wanted',
    withoutFree(withPort(way(hd60), 'tv', 'in1', { contentProtection: 'none' })),
    ['content-protection shouldFix receiverout1-tvin1: protectedNotShown > findProtectionVersions'],
  ],
  [
    'an old input of the receiver, a new one free, where 1080p is wanted',
    withPort(way(hd60), 'receiver', 'in1', { contentProtection: '1.4' }),
    [],
  ],
  [
    'five switches in a row behind a source: 2.2 allows four levels',
    wanting(
      rowOf([
        source('player'),
        ...[1, 2, 3, 4, 5].map((number) => matrixSwitch(`switch${number}`)),
        display('tv'),
      ]),
      hd60,
    ),
    ['protection-topology shouldFix playerout1-switch1in1: tooMuchBehindSource > hangFewerBehindSource'],
  ],
  [
    'eight channels at 192 kHz beside 480p60, whose blanking is short',
    way({ ...sd60, sound: { channels: 8, rateKHz: 192 } }),
    ['picture-loss shouldFix player: lossAtDevice > askForLessSound'],
  ],
  ['eight channels at 48 kHz beside 480p60', way({ ...sd60, sound: { channels: 8, rateKHz: 48 } }), []],
  ['eight channels at 192 kHz beside 2160p60', way({ ...uhd60, sound: { channels: 8, rateKHz: 192 } }), []],
  ['3D of 1080p60 on sockets of 9 Gbit/s: 297 MHz', low({ ...hd60, threeD: true }), []],
  [
    '3D of 1080p120 there: twice 297 MHz',
    low({ ...format(1080, 120, 'rgb', 8), threeD: true }),
    ['port-mode mustFix receiver.in1: portSetBelowNeed > setPortMode'],
  ],
  [
    '3D on a display whose EDID has none',
    seenBy(way({ ...hd60, threeD: true }), edid18),
    ['picture-loss shouldFix tv: lossAtDevice > setInputToAdmit'],
  ],
  [
    'the colours of BT.2020 on a receiver that doesn’t pass them',
    way({ ...uhd60, colorimetry: 'bt2020' }, { receiver: none }),
    ['picture-loss shouldFix receiver: lossAtDevice > letDevicePass'],
  ],
];

function splitOn(one: string, other: string): Chain {
  const chain = chainOf(
    [source('player'), splitter('splitter'), display('tv'), display('projector')],
    [
      cable('player.out1', 'splitter.in1', { id: 'L1' }),
      cable('splitter.out1', 'tv.in1', { id: 'L2' }),
      cable('splitter.out2', 'projector.in1', { id: 'L3' }),
    ],
  );
  const seen = withPort(withPort(chain, 'tv', 'in1', { edidHex: one }), 'projector', 'in1', {
    edidHex: other,
  });
  return wanting(seen, { ...hdr10, displayIds: ['tv'] });
}
