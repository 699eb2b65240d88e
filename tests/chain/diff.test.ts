import { describe, expect, it } from 'vitest';
import { chainDiff } from '../../shared/chain/diff.ts';
import type { Chain, VideoFormat } from '../../shared/contract/chain.ts';
import type { Message } from '../../shared/contract/message.ts';
import {
  cable,
  display,
  frl48,
  homeCinema,
  input,
  output,
  source,
  tmds9,
  tmds18,
  withDevice,
  withLink,
  withoutLinks,
  withPort,
} from './build-chain.ts';

const cinema = withDevice(homeCinema(), 'processor', {
  firmware: '1.8',
  settings: { 'Output mode': 'auto' },
});
const uhd60: VideoFormat = {
  widthPx: 3840,
  heightPx: 2160,
  interlaced: false,
  refreshHz: 60,
  encoding: 'ycbcr422',
  bitsPerComponent: 12,
};
const said = (before: Chain, after: Chain): Message[] =>
  chainDiff(before, after).map(({ sentence }) => sentence);

describe('one difference is one message', () => {
  const end = { needsPower: false, powered: 'unknown', seated: 'yes' } as const;
  it.each<[string, string, object, Chain]>([
    ['a name', 'chainRenamed', { before: 'Cinema', after: 'Den' }, { ...cinema, name: 'Den' }],
    ['a wanted format', 'formatWanted', { format: uhd60 }, { ...cinema, wantedFormats: [uhd60] }],
    [
      'firmware',
      'firmwareChanged',
      { device: { deviceId: 'processor' }, before: '1.8', after: '1.8.1' },
      withDevice(cinema, 'processor', { firmware: '1.8.1' }),
    ],
    [
      'firmware that is not known any more',
      'firmwareChanged',
      { before: '1.8', after: null },
      withDevice(cinema, 'processor', { firmware: null }),
    ],
    [
      'a serial number',
      'serialChanged',
      { before: null, after: 'S77' },
      withDevice(cinema, 'streamer', { serial: 'S77' }),
    ],
    [
      'a model',
      'modelChanged',
      { before: null, after: 'EF-3' },
      withDevice(cinema, 'streamer', { model: 'EF-3' }),
    ],
    [
      'a name of a device',
      'deviceRenamed',
      { before: 'Streamer', after: 'Box' },
      withDevice(cinema, 'streamer', { name: 'Box' }),
    ],
    [
      'a role',
      'roleChanged',
      { before: 'receiver', after: 'switch' },
      withDevice(cinema, 'receiver', { role: 'switch' }),
    ],
    ['a menu', 'drawsMenuChanged', { after: false }, withDevice(cinema, 'receiver', { drawsMenu: false })],
    [
      'processing',
      'processesPictureChanged',
      { after: true },
      withDevice(cinema, 'receiver', { processesPicture: true }),
    ],
    [
      'EDID limits',
      'edidHandlingChanged',
      {
        before: { code: 'edidPassedOn' },
        after: {
          code: 'edidIsLimitedTo',
          values: {
            limits: [
              { code: 'edidLimitTmds', values: { rate: 300 } },
              { code: 'edidLimitNoFrl' },
              { code: 'edidLimitStereo' },
            ],
          },
        },
      },
      withDevice(cinema, 'receiver', {
        edidHandling: {
          kind: 'limits',
          maxTmdsCharacterRateMHz: 300,
          dropsFrl: true,
          drops420: false,
          dropsHdr: false,
          stereoOnly: true,
        },
      }),
    ],
    [
      'an EDID of its own',
      'edidHandlingChanged',
      { after: { code: 'edidReplacedBy', values: { bytes: 2 } } },
      withDevice(cinema, 'receiver', { edidHandling: { kind: 'replaces', edidHex: '00ff' } }),
    ],
    [
      'an output format',
      'outputFormatChanged',
      { before: null, after: uhd60 },
      withDevice(cinema, 'processor', { outputFormat: uhd60 }),
    ],
    [
      'what comes with a picture',
      'passesChanged',
      {
        before: [],
        after: [
          { code: 'passesHdr', values: { kinds: 'HDR10, ST 2094-40' } },
          { code: 'passesBits', values: { bits: 10 } },
          { code: 'passesFeatures', values: { features: '' } },
          { code: 'passesToneMapping', values: { is: true } },
        ],
      },
      withDevice(cinema, 'receiver', {
        passes: { dynamicRanges: ['hdr10', 'st2094-40'], deepestBits: 10, features: [], toneMaps: true },
      }),
    ],
    [
      'the rating of a cable’s maker',
      'ratedChanged',
      { before: { code: 'ratedUnknown' }, after: { code: 'ratedForAt', values: { rate: 18, length: 15 } } },
      withLink(cinema, 'L4', { rated: { gbps: 18, lengthM: 15 } }),
    ],
    ['a gauge', 'gaugeChanged', { before: null, after: 'AWG 28' }, withLink(cinema, 'L1', { gaugeAwg: 28 })],
    [
      'return audio of a cable',
      'returnAudioChanged',
      { before: null, after: 'no' },
      withLink(cinema, 'L1', { returnAudio: 'no' }),
    ],
    ['couplers', 'couplersChanged', { before: null, after: 1 }, withLink(cinema, 'L1', { couplers: 1 })],
    [
      'notes',
      'notesAdded',
      { at: { deviceId: 'receiver' } },
      withDevice(cinema, 'receiver', { notes: 'In the left rack.' }),
    ],
    [
      'a setting',
      'settingChanged',
      { setting: 'Output mode', before: 'auto', after: 9 },
      withDevice(cinema, 'processor', { settings: { 'Output mode': 9 } }),
    ],
    [
      'a setting that is gone',
      'settingChanged',
      { setting: 'Output mode', before: 'auto', after: null },
      withDevice(cinema, 'processor', { settings: {} }),
    ],
    [
      'a setting named like a part of every object',
      'settingChanged',
      { setting: 'constructor', before: null, after: true },
      withDevice(cinema, 'receiver', {
        settings: { constructor: true } as unknown as Record<string, boolean>,
      }),
    ],
    [
      'a port that is gone',
      'portRemoved',
      { port: { portId: 'in2' }, side: 'input' },
      withDevice(cinema, 'television', { ports: [input('in1')] }),
    ],
    [
      'a port',
      'portAdded',
      { port: { portId: 'out2' }, side: 'output' },
      withDevice(cinema, 'streamer', { ports: [output('out1'), output('out2')] }),
    ],
    [
      'a highest mode',
      'highestModeChanged',
      { before: tmds18, after: frl48 },
      withPort(cinema, 'projector', 'in1', { highestMode: frl48 }),
    ],
    [
      'a mode',
      'setModeChanged',
      { before: null, after: tmds9 },
      withPort(cinema, 'projector', 'in1', { setMode: tmds9 }),
    ],
    [
      'content protection',
      'contentProtectionChanged',
      { before: '2.2', after: 'unknown' },
      withPort(cinema, 'projector', 'in1', { contentProtection: 'unknown' }),
    ],
    [
      'an EDID',
      'edidAdded',
      { port: { portId: 'in1' } },
      withPort(cinema, 'projector', 'in1', { edidHex: '00' }),
    ],
    [
      'a 5 V line',
      'fiveVoltChanged',
      { before: null, after: 55 },
      withPort(cinema, 'player', 'out1', { fiveVoltMa: 55 }),
    ],
    [
      'a label',
      'labelChanged',
      { before: 'HDMI IN1', after: 'HDMI 1' },
      withPort(cinema, 'projector', 'in1', { label: 'HDMI 1' }),
    ],
    [
      'a length',
      'lengthChanged',
      { cable: { linkId: 'L3' }, before: 3, after: 10 },
      withLink(cinema, 'L3', { lengthM: 10 }),
    ],
    [
      'a construction',
      'constructionChanged',
      { before: 'passiveCopper', after: 'activeCopper' },
      withLink(cinema, 'L3', { construction: 'activeCopper' }),
    ],
    [
      'a category',
      'categoryChanged',
      { before: 'premiumHighSpeed', after: 'ultraHighSpeed' },
      withLink(cinema, 'L3', { category: 'ultraHighSpeed' }),
    ],
    ['a certificate', 'certifiedChanged', { after: false }, withLink(cinema, 'L3', { certified: false })],
    [
      'how a cable lies',
      'cableDirectionChanged',
      { before: 'asMarked', after: 'reversed' },
      withLink(cinema, 'L4', { direction: 'reversed' }),
    ],
    [
      'power at an end',
      'endPoweredChanged',
      { end: 'display', before: 'yes', after: 'no' },
      withLink(cinema, 'L4', { sinkEnd: { needsPower: true, powered: 'no', seated: 'yes' } }),
    ],
    [
      'the seat of a plug',
      'endSeatedChanged',
      { end: 'source', before: 'yes', after: 'unknown' },
      withLink(cinema, 'L3', { sourceEnd: { ...end, seated: 'unknown' } }),
    ],
    [
      'a route',
      'routeChanged',
      { before: 'free', after: 'inWall' },
      withLink(cinema, 'L3', { route: 'inWall' }),
    ],
    [
      'where a cable is plugged in',
      'cableMoved',
      {
        cable: { ends: { to: { portId: 'in1' } } },
        from: { portId: 'out1' },
        to: { portId: 'in3' },
      },
      withLink(cinema, 'L1', { to: { deviceId: 'receiver', portId: 'in3' } }),
    ],
    ['a cable that is gone', 'cableRemoved', { cable: { linkId: 'L5' } }, withoutLinks(cinema, 'L5')],
    [
      'a cable',
      'cableAdded',
      { cable: { linkId: 'L6' } },
      { ...cinema, links: [...cinema.links, cable('processor.out2', 'television.in2', { id: 'L6' })] },
    ],
    [
      'a device',
      'deviceAdded',
      { device: { name: 'Console' }, model: 'AB-100' },
      { ...cinema, devices: [...cinema.devices, source('game', { name: 'Console', model: 'AB-100' })] },
    ],
    [
      'a device that is gone',
      'deviceRemoved',
      { device: { deviceId: 'television' } },
      { ...cinema, devices: cinema.devices.filter(({ id }) => id !== 'television') },
    ],
  ])('%s', (_what, code, values, after) => {
    expect(said(cinema, after)).toMatchObject([{ code, values }]);
  });
});

describe('what a program reads of a difference', () => {
  it('is typed, with the place and both values', () => {
    expect(chainDiff(cinema, withDevice(cinema, 'processor', { firmware: '1.8.1' }))).toEqual([
      {
        kind: 'changed',
        place: { kind: 'device', deviceId: 'processor' },
        field: 'firmware',
        before: '1.8',
        after: '1.8.1',
        sentence: expect.objectContaining({ code: 'firmwareChanged' }),
      },
    ]);
    expect(chainDiff(cinema, withPort(cinema, 'projector', 'in1', { setMode: tmds18 }))[0]).toMatchObject({
      place: { kind: 'port', deviceId: 'projector', portId: 'in1' },
      field: 'setMode',
      before: null,
      after: tmds18,
    });
    expect(chainDiff(cinema, withoutLinks(cinema, 'L5'))[0]).toMatchObject({
      kind: 'removed',
      part: 'link',
      place: { kind: 'link', linkId: 'L5' },
    });
  });

  it('tells each of several differences', () => {
    const after = withLink(withDevice(cinema, 'receiver', { firmware: '2.0' }), 'L1', {
      lengthM: 5,
      certified: false,
    });
    expect(chainDiff(cinema, after).map((change) => (change.kind === 'changed' ? change.field : ''))).toEqual(
      ['firmware', 'certified', 'lengthM'],
    );
  });
});

describe('places of the same name', () => {
  it('are told apart by id', () => {
    const twins = withDevice(cinema, 'television', { name: 'Projector' });
    const after = { ...twins, devices: [...twins.devices, display('third', { name: 'Projector' })] };
    expect(said(twins, after)).toMatchObject([{ values: { device: { deviceId: 'third', isShared: true } } }]);
  });
});
