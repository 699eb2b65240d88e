import { describe, expect, it } from 'vitest';
import { chainDiff } from '../../shared/chain/diff.ts';
import type { Chain, VideoFormat } from '../../shared/contract/chain.ts';
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
const sentences = (before: Chain, after: Chain): string[] =>
  chainDiff(before, after).map(({ sentence }) => sentence);

describe('one difference is one sentence', () => {
  const end = { needsPower: false, powered: 'unknown', seated: 'yes' } as const;
  it.each<[string, Chain]>([
    ["The chain is now called 'Den', was 'Cinema'", { ...cinema, name: 'Den' }],
    ['Now wanted: 3840×2160p60 4:2:2 12 bit', { ...cinema, wantedFormats: [uhd60] }],
    [
      "Firmware of processor 'Cinema processor': 1.8 → 1.8.1",
      withDevice(cinema, 'processor', { firmware: '1.8.1' }),
    ],
    [
      "Firmware of processor 'Cinema processor': 1.8 → not known",
      withDevice(cinema, 'processor', { firmware: null }),
    ],
    [
      "Serial number of source 'Streamer': not known → S77",
      withDevice(cinema, 'streamer', { serial: 'S77' }),
    ],
    ["Model of source 'Streamer': not known → EF-3", withDevice(cinema, 'streamer', { model: 'EF-3' })],
    ["Name of source 'Box': Streamer → Box", withDevice(cinema, 'streamer', { name: 'Box' })],
    ["Role of switch 'Receiver': receiver → switch", withDevice(cinema, 'receiver', { role: 'switch' })],
    [
      "Own on-screen menu of receiver 'Receiver': yes → no",
      withDevice(cinema, 'receiver', { drawsMenu: false }),
    ],
    [
      "Scaling or processing of receiver 'Receiver': no → yes",
      withDevice(cinema, 'receiver', { processesPicture: true }),
    ],
    [
      "EDID handling of receiver 'Receiver': passed on → limited (TMDS up to 300 MHz, no FRL, stereo only)",
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
      "EDID handling of receiver 'Receiver': passed on → replaced by one of 2 bytes",
      withDevice(cinema, 'receiver', { edidHandling: { kind: 'replaces', edidHex: '00ff' } }),
    ],
    [
      "Output format of processor 'Cinema processor': as received → 3840×2160p60 4:2:2 12 bit",
      withDevice(cinema, 'processor', { outputFormat: uhd60 }),
    ],
    ["Notes of receiver 'Receiver': added", withDevice(cinema, 'receiver', { notes: 'In the left rack.' })],
    [
      "Setting 'Output mode' of processor 'Cinema processor': auto → 9",
      withDevice(cinema, 'processor', { settings: { 'Output mode': 9 } }),
    ],
    [
      "Setting 'Output mode' of processor 'Cinema processor': auto → not recorded",
      withDevice(cinema, 'processor', { settings: {} }),
    ],
    [
      "Setting 'constructor' of receiver 'Receiver': not recorded → on",
      withDevice(cinema, 'receiver', {
        settings: { constructor: true } as unknown as Record<string, boolean>,
      }),
    ],
    [
      "Removed input: port 'HDMI IN2' of display 'Television'",
      withDevice(cinema, 'television', { ports: [input('in1')] }),
    ],
    [
      "New output: port 'HDMI OUT2' of source 'Streamer'",
      withDevice(cinema, 'streamer', { ports: [output('out1'), output('out2')] }),
    ],
    [
      "Highest mode of port 'HDMI IN1' of display 'Projector': TMDS 600 MHz (18 Gbit/s) → FRL 4 × 12 Gbit/s (48 Gbit/s)",
      withPort(cinema, 'projector', 'in1', { highestMode: frl48 }),
    ],
    [
      "Mode of port 'HDMI IN1' of display 'Projector': automatic → TMDS 300 MHz (9 Gbit/s)",
      withPort(cinema, 'projector', 'in1', { setMode: tmds9 }),
    ],
    [
      "Content protection of port 'HDMI IN1' of display 'Projector': 2.2 → not known",
      withPort(cinema, 'projector', 'in1', { contentProtection: 'unknown' }),
    ],
    [
      "EDID of port 'HDMI IN1' of display 'Projector': added",
      withPort(cinema, 'projector', 'in1', { edidHex: '00' }),
    ],
    [
      "5 V current of port 'HDMI OUT1' of source 'Disc player': not known → 55 mA",
      withPort(cinema, 'player', 'out1', { fiveVoltMa: 55 }),
    ],
    [
      "Label of port 'HDMI 1' of display 'Projector': HDMI IN1 → HDMI 1",
      withPort(cinema, 'projector', 'in1', { label: 'HDMI 1' }),
    ],
    ['Cable L3 (Receiver to Cinema processor): now 10 m, was 3 m', withLink(cinema, 'L3', { lengthM: 10 })],
    [
      'Cable L3 (Receiver to Cinema processor): now active copper, was passive copper',
      withLink(cinema, 'L3', { construction: 'activeCopper' }),
    ],
    [
      'Cable L3 (Receiver to Cinema processor): now Ultra High Speed, was Premium High Speed',
      withLink(cinema, 'L3', { category: 'ultraHighSpeed' }),
    ],
    [
      'Cable L3 (Receiver to Cinema processor): now not certified, was certified',
      withLink(cinema, 'L3', { certified: false }),
    ],
    [
      'Cable L4 (Cinema processor to Projector): now reversed, was laid as marked',
      withLink(cinema, 'L4', { direction: 'reversed' }),
    ],
    [
      'Cable L4 (Cinema processor to Projector): now not powered at the display end, was powered at the display end',
      withLink(cinema, 'L4', { sinkEnd: { needsPower: true, powered: 'no', seated: 'yes' } }),
    ],
    [
      'Cable L3 (Receiver to Cinema processor): now not known whether seated at the source end, was seated at the source end',
      withLink(cinema, 'L3', { sourceEnd: { ...end, seated: 'unknown' } }),
    ],
    [
      'Cable L3 (Receiver to Cinema processor): now in the wall, was laid free',
      withLink(cinema, 'L3', { route: 'inWall' }),
    ],
    [
      "Cable L1 now runs from Disc player 'HDMI OUT1' to Receiver 'HDMI IN3', was from Disc player 'HDMI OUT1' to Receiver 'HDMI IN1'",
      withLink(cinema, 'L1', { to: { deviceId: 'receiver', portId: 'in3' } }),
    ],
    ["Removed cable from Receiver 'HDMI OUT2' to Television 'HDMI IN1'", withoutLinks(cinema, 'L5')],
    [
      "New cable from Cinema processor 'HDMI OUT2' to Television 'HDMI IN2'",
      { ...cinema, links: [...cinema.links, cable('processor.out2', 'television.in2', { id: 'L6' })] },
    ],
    [
      "New: source 'Console', model AB-100",
      { ...cinema, devices: [...cinema.devices, source('game', { name: 'Console', model: 'AB-100' })] },
    ],
    [
      "Removed: display 'Television'",
      { ...cinema, devices: cinema.devices.filter(({ id }) => id !== 'television') },
    ],
  ])('%s', (sentence, after) => {
    expect(sentences(cinema, after)).toEqual([sentence]);
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
        sentence: expect.any(String),
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
    expect(sentences(twins, after)).toEqual(["New: display 'Projector' (third)"]);
  });
});
