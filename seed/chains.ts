import type { ChainInput } from '../shared/contract/chain.ts';
import { cinemaFormats, copper, type DeviceInput, input, modes, optical, output } from './chain-parts.ts';

const player = (id: string, name: string, serial: string): DeviceInput => ({
  id,
  name,
  role: 'source',
  model: 'Ostravel D-2',
  serial,
  firmware: '2.04',
  drawsMenu: true,
  ports: [output('out', 'HDMI OUT', { fiveVoltMa: 55 })],
});

const projector = (id: string, name: string, serial: string): DeviceInput => ({
  id,
  name,
  role: 'display',
  model: 'Brindmar L-40',
  serial,
  firmware: '1.31',
  drawsMenu: true,
  ports: [input('in1', 'HDMI 1', { fiveVoltMa: 50 }), input('in2', 'HDMI 2')],
});

const nimbrel = (serial: string, firmware: string): DeviceInput => ({
  id: 'processor',
  name: 'Cinema processor',
  role: 'processor',
  model: 'Nimbrel NP-7',
  serial,
  firmware,
  drawsMenu: true,
  processesPicture: true,
  settings: {
    'Output rate': 'follow source',
    'Input bandwidth': 'automatic',
    'Output bandwidth': 'automatic',
  },
  ports: [
    input('in1', 'IN 1'),
    input('in2', 'IN 2'),
    output('out1', 'OUT A'),
    output('out2', 'OUT B', { highestMode: modes.tmds9 }),
  ],
});

/** Seven devices with a branch; the cable in the wall to the projector is too long for what it is. */
export const gableRoom: ChainInput = {
  name: 'Gable room cinema',
  wantedFormats: [...cinemaFormats],
  devices: [
    player('disc', 'Disc player', 'OD2-004417'),
    { ...player('stream', 'Streaming box', 'OD2-009120'), model: 'Ostravel S-1', drawsMenu: true },
    {
      id: 'games',
      name: 'Games console',
      role: 'source',
      model: 'Tarnwick G3',
      serial: 'TG3-55120',
      firmware: '9.1',
      drawsMenu: true,
      ports: [output('out', 'HDMI OUT', { highestMode: modes.frl40, setMode: modes.tmds18, fiveVoltMa: 55 })],
    },
    {
      id: 'receiver',
      name: 'Receiver',
      role: 'receiver',
      model: 'Quellor R-9',
      serial: 'QR9-71204',
      firmware: '1.8.1',
      drawsMenu: true,
      settings: { 'HDMI 4K signal format': '18 Gbit/s', 'Video conversion': 'off' },
      ports: [
        input('in1', 'IN 1', { setMode: modes.tmds18 }),
        input('in2', 'IN 2', { setMode: modes.tmds18 }),
        input('in3', 'IN 3', { setMode: modes.tmds9 }),
        output('out1', 'OUT 1 (main)'),
        output('out2', 'OUT 2 (zone)', { highestMode: modes.tmds9 }),
      ],
    },
    nimbrel('NP7-10388', '3.9'),
    // Nobody has read its firmware yet.
    { ...projector('projector', 'Projector', 'BL40-2217'), firmware: null },
    {
      id: 'panel',
      name: 'Side panel',
      role: 'display',
      model: 'Brindmar P-24',
      serial: 'BP24-0091',
      firmware: '0.9',
      drawsMenu: true,
      ports: [input('in1', 'HDMI 1')],
    },
  ],
  links: [
    copper('C1', 'disc:out', 'receiver:in1', 2),
    copper('C2', 'stream:out', 'receiver:in2', 2),
    copper('C3', 'games:out', 'receiver:in3', 1.5),
    copper('C4', 'receiver:out1', 'processor:in1', 2),
    copper('C5', 'processor:out1', 'projector:in1', 12, {
      category: 'highSpeed',
      certified: false,
      route: 'inWall',
      installedOn: '2021-03-12',
      sourceEnd: { seated: 'yes' },
      sinkEnd: { seated: 'unknown' },
    }),
    copper('C6', 'receiver:out2', 'panel:in1', 6),
  ],
};

/** Three devices: the smallest cinema. */
export const studySet: ChainInput = {
  name: 'Study',
  devices: [
    player('disc', 'Disc player', 'OD2-006002'),
    {
      id: 'switch',
      name: 'Switch',
      role: 'switch',
      model: 'Varnby X4',
      serial: 'VX4-3321',
      firmware: 'V01.23',
      edidHandling: { kind: 'replaces' },
      ports: [input('in1', '1'), input('in2', '2'), output('out', 'OUT')],
    },
    projector('screen', 'Screen', 'BL40-3004'),
  ],
  links: [copper('C1', 'disc:out', 'switch:in1', 1), copper('C2', 'switch:out', 'screen:in1', 3)],
};

/** Twelve devices: four sources, a switch, a receiver, a processor, an extender pair, a splitter, two displays. */
export const boatHouse: ChainInput = {
  name: 'Boat house',
  wantedFormats: [...cinemaFormats],
  devices: [
    player('disc', 'Disc player', 'OD2-011200'),
    player('stream', 'Streaming box', 'OD2-011201'),
    player('tuner', 'Tuner', 'OD2-011202'),
    player('laptop', 'Laptop lead', 'OD2-011203'),
    {
      id: 'switch',
      name: 'Rack switch',
      role: 'switch',
      model: 'Varnby X4',
      serial: 'VX4-4180',
      firmware: 'V01.25',
      ports: [
        input('in1', '1'),
        input('in2', '2'),
        input('in3', '3'),
        input('in4', '4'),
        output('out', 'OUT'),
      ],
    },
    {
      id: 'receiver',
      name: 'Receiver',
      role: 'receiver',
      model: 'Quellor R-9',
      serial: 'QR9-80055',
      firmware: '1.8',
      drawsMenu: true,
      processesPicture: true,
      settings: { 'Video conversion': 'on' },
      ports: [
        input('in1', 'IN 1', { setMode: modes.tmds18 }),
        output('out1', 'OUT 1 (main)'),
        output('out2', 'OUT 2 (zone)'),
      ],
    },
    nimbrel('NP7-11902', '3.10'),
    {
      id: 'sender',
      name: 'Extender, rack end',
      role: 'extender',
      model: 'Skirl T1',
      serial: 'ST1-881',
      firmware: '1.0',
      ports: [input('in', 'IN'), output('line', 'LINE OUT')],
    },
    {
      id: 'catcher',
      name: 'Extender, far end',
      role: 'extender',
      model: 'Skirl T2',
      serial: 'ST2-882',
      firmware: '1.0',
      ports: [input('line', 'LINE IN'), output('out', 'OUT')],
    },
    {
      id: 'splitter',
      name: 'Splitter',
      role: 'splitter',
      model: 'Varnby P2',
      serial: 'VP2-17',
      firmware: null,
      ports: [input('in', 'IN'), output('out1', '1'), output('out2', '2')],
    },
    projector('projector', 'Projector', 'BL40-5150'),
    projector('terrace', 'Terrace screen', 'BL40-5151'),
  ],
  links: [
    copper('C1', 'disc:out', 'switch:in1', 2),
    copper('C2', 'stream:out', 'switch:in2', 2),
    copper('C3', 'tuner:out', 'switch:in3', 2),
    optical('C4', 'laptop:out', 'switch:in4', 10, { drawMa: 120 }),
    copper('C5', 'switch:out', 'receiver:in1', 2),
    copper('C6', 'receiver:out1', 'processor:in1', 2),
    optical('C7', 'processor:out1', 'projector:in1', 18, { drawMa: 120 }),
    copper('C8', 'receiver:out2', 'sender:in', 2),
    copper('C9', 'sender:line', 'catcher:line', 40, {
      construction: 'twistedPairExtender',
      category: 'unknown',
      certified: false,
      factoryFittedEnds: false,
      route: 'inConduit',
      sourceEnd: { needsPower: true, powered: 'yes', seated: 'yes' },
      sinkEnd: { needsPower: true, powered: 'unknown', seated: 'yes' },
    }),
    copper('C10', 'catcher:out', 'splitter:in', 2),
    copper('C11', 'splitter:out1', 'terrace:in1', 5),
  ],
};
