import type { RecognitionRow } from './recognition-row.ts';
import {
  bad,
  count,
  good,
  inVain,
  noError,
  notYet,
  otherTopics,
  regained,
  report,
  words,
} from './recognition-words.ts';

const supply = words(
  '5v, pwr5v, 5vpwr, 5v det, 5vdet, plus 5v, 5 v, 12v, 24v, 3v3, 1v8, 1v2, 1v1, 2v5, 5v0, vbus, vcc, rail, rails, supply, poe, poc, poh, psu, vcc*, vdd*, voltage, 12 v, 24 v, 3 3 v, power good, pgood, pwrgood, cable power, hdmi power, bus power',
);
const supplyAlone = words(
  'unpowered, brown out, brownout, undervoltage, under voltage, overcurrent, over current, short circuit',
);
const hotPlug = words(
  'hot plug, hotplug, hpd, hot unplug, hotunplug, connection status, connection state, connector state, connector status',
);
const plugged = [...hotPlug, ...words('cable, connector, plug, plugged, unplugged, unplug')];
const sink = words(
  'sink, display, screen, monitor, projector, tv, rxsense, rx sense, downstream device, hdmi out',
);
const picture = words(
  'sync, hsync, vsync, tmds, pixel clock, video signal, input signal, video input, video, picture, stream, input timing, timing, pll, symbol lock, lock, locked, unlock, unlocked, clk, clock, de, deserialiser, deserializer, serdes, cdr, sig det, sigdet, signal, frame, frames, frl, alignment, deskew, vtotal, tmds valid, raster, carrier, input',
);
const carrier = words(
  'extender, hdbt, opt, sfp, aoc, optical, optical link, fibre, fiber, los, fibre link, optics, transceiver, remote unit link, hdbaset',
);
const found = words(
  'found, locked, pll lock, tmds lock, clock lock, cdr lock, video lock, lock achieved, lock acquired, lock ok, detected, ok, running, good, acquired, stable, regained, restored, recovered, back, present, valid, returned, resumed, appeared, rose, arriv*, in sync, aligned, alignment done, lock ok, sync ok, signal ok, sig det 1, sigdet 1, signal 1, lock 1, locked 1, stable 1, valid 1, sync 1',
);
const otherSync = words(
  'ntp, ptp, time sync, time server, clock sync, lip, audio, network, wifi, file, cloud, database, lip sync, background, photo, calendar, contacts, account, settings, picture mode, picture setting, sample clock, word clock, system clock',
);

/** Rows on supply, hot plug, EDID and the picture itself. Down comes before up, but after what says that it came back. */
export const rowsOfSignals: readonly RecognitionRow[] = [
  {
    kind: 'edidFailed',
    all: [
      words('edid, ddc, e ddc, eddc'),
      [...bad, ...words('all 0xff, all 0x00, using stored, using default, default edid, fallback edid')],
    ],
    none: noError,
    example: 'rx1: EDID read failed: checksum error in block 1',
    note: 'The source side couldn’t learn what the sink accepts.',
  },
  {
    kind: 'edidRead',
    all: [
      ['edid'],
      words(
        'done, complete, completed, succeeded, success, successful, successfully, passed, ok, read, reading, parsed, loaded, valid, changed, updated, received, copied',
      ),
    ],
    none: bad,
    example: 'tx0: EDID read, 256 bytes',
    note: 'A sink was read, or its EDID changed.',
  },
];

export const rowsOfSupply: readonly RecognitionRow[] = [
  {
    kind: 'syncLost',
    all: [
      words(
        'sync lost, lost sync, sync loss, loss of sync, no sync, out of sync, lost lock, signal lost, lost signal, signal loss, loss of signal, no signal, no stable signal, no valid signal, no input signal, no video signal, video lost, lost video, video loss, no video, no input, input lost, picture lost, no picture, stream lost, clock lost, lost clock, loss of clock, no clock, no tmds, pll unlock, pll unlocked, input unstable, input absent, input no longer stable, no longer stable',
      ),
    ],
    none: [...otherSync, ...count, ...regained],
    unlessOurs: otherTopics,
    example: 'rx1: sync lost',
    note: 'The receiving side sees no usable picture any more.',
  },
  {
    kind: 'supplyLost',
    all: [supply],
    turn: 'off',
    unlessOurs: otherTopics,
    example: 'rx1: +5V: 1 -> 0',
    note: 'The same as below, told by the state.',
  },
  {
    kind: 'supplyFound',
    all: [supply],
    turn: 'on',
    unlessOurs: otherTopics,
    example: 'rx1: +5V: 0 -> 1',
    note: 'The same as below, told by the state.',
  },
  {
    kind: 'supplyFound',
    all: [supply, regained],
    none: inVain,
    unlessOurs: otherTopics.filter((word) => word !== 'remote' && word !== 'bus power'),
    example: 'rx1: +5V restored',
    note: 'A supply is back after it was gone.',
  },
  {
    kind: 'supplyLost',
    all: [supply, [...bad, ...supplyAlone]],
    none: [...noError, ...count],
    unlessOurs: otherTopics.filter((word) => word !== 'remote' && word !== 'bus power'),
    example: 'rx1: +5V lost',
    note: 'The 5 V line of a link (HDMI 1.4b, 4.2.7), or a supply inside the device, was gone.',
  },
  {
    kind: 'supplyLost',
    all: [
      [...supplyAlone, 'power', 'powered'],
      [...supplyAlone, ...bad],
    ],
    none: [
      ...noError,
      ...count,
      ...words('power saving, power mode, power key, power button, powering, hpd, rxsense'),
    ],
    unlessOurs: otherTopics,
    example: 'active cable lost its power',
    note: 'The same by what is left without, or what protects from it.',
  },
  {
    kind: 'supplyFound',
    all: [supply, good],
    none: [...notYet, ...bad, ...report],
    unlessOurs: otherTopics.filter((word) => word !== 'remote' && word !== 'bus power'),
    example: 'rx1: +5V present',
    note: 'A supply is there.',
  },
];

export const rowsOfHotPlug: readonly RecognitionRow[] = [
  {
    kind: 'hotPlugDown',
    all: [[...plugged, ...sink]],
    turn: 'off',
    unlessOurs: otherTopics,
    example: 'tx0: HPD 1->0',
    note: 'The same as below, told by the state.',
  },
  {
    kind: 'hotPlugUp',
    all: [[...plugged, ...sink]],
    turn: 'on',
    unlessOurs: otherTopics,
    example: 'tx0: HPD 0->1',
    note: 'The same as below, told by the state.',
  },
  {
    kind: 'hotPlugUp',
    all: [[...hotPlug, ...sink], regained],
    none: [...count, ...inVain],
    unlessOurs: otherTopics,
    example: 'display came back on output 2',
    note: 'What was gone is there again: said first, since such a line may name the loss too.',
  },
  {
    kind: 'hotPlugDown',
    all: [hotPlug, [...bad, ...words('pulse, toggled, toggle, 0')]],
    none: [...noError, ...count],
    example: 'tx0: hot plug detect low',
    note: 'The hot plug line fell, for a pulse or for longer; the source side drops the picture.',
  },
  {
    kind: 'hotPlugDown',
    all: [
      sink,
      words(
        'no display, no sink, no monitor, no tv, no screen, disconnect*, removed, removal, unplug*, detach*, gone, lost, vanish*, absent, went away, no longer, disappear*',
      ),
    ],
    none: count,
    unlessOurs: otherTopics,
    example: 'output 2: sink disconnected',
    note: 'The same in the words of the source side.',
  },
  {
    kind: 'hotPlugDown',
    all: [
      words(
        'unplug, unplugged, plug out, cable out, cable removed, cable disconnected, cable unplugged, pulled out, cable pulled',
      ),
    ],
    none: count,
    unlessOurs: otherTopics,
    example: 'input 3: cable unplugged',
    note: 'The same by the cable.',
  },
  {
    kind: 'hotPlugUp',
    all: [hotPlug, [...good, ...words('1, hot plug event, hotplug event')]],
    none: [...bad, ...count, ...notYet],
    example: 'tx0: HPD asserted',
    note: 'The hot plug line rose; the source side starts over with EDID and content protection.',
  },
  {
    kind: 'hotPlugUp',
    all: [
      sink,
      words(
        'connected, plugged, attached, detected, found, present, back, appeared, inserted, insertion, attach, got',
      ),
    ],
    none: [...bad, ...count, ...notYet],
    unlessOurs: otherTopics,
    example: 'output 2: sink connected',
    note: 'The same in the words of the source side.',
  },
  {
    kind: 'hotPlugUp',
    all: [
      words('plug, plugged, plug in, cable in, cable inserted, cable connected, cable plugged, plugged in'),
    ],
    none: [...bad, ...count, ...notYet],
    unlessOurs: otherTopics,
    example: 'input 3: cable plugged in',
    note: 'The same by the cable.',
  },
];

export const rowsOfPicture: readonly RecognitionRow[] = [
  {
    kind: 'syncLost',
    all: [[...picture, ...carrier]],
    turn: 'off',
    none: [...otherSync, ...count],
    unlessOurs: otherTopics,
    example: 'rx1: video lock: 1 -> 0',
    note: 'The same as below, told by the state.',
  },
  {
    kind: 'syncFound',
    all: [[...picture, ...carrier]],
    turn: 'on',
    none: [...otherSync, ...report],
    unlessOurs: otherTopics,
    example: 'rx1: video lock: 0 -> 1',
    note: 'The same as below, told by the state.',
  },
  {
    kind: 'syncFound',
    all: [[...picture, ...carrier], regained],
    none: [...otherSync, ...count, ...inVain],
    unlessOurs: otherTopics,
    example: 'rx1: lock regained after signal loss',
    note: 'What was lost is there again: said first, since such a line names the loss too.',
  },
  {
    kind: 'syncLost',
    all: [[...picture, 'lane'], bad],
    none: [...otherSync, ...count, ...noError],
    unlessOurs: otherTopics,
    example: 'rx1: TMDS clock unlocked',
    note: 'The same, said in more words.',
  },
  {
    kind: 'syncLost',
    all: [carrier, [...bad, ...words('los 1, los asserted')]],
    none: [...count, ...noError, 'los 0'],
    unlessOurs: otherTopics,
    example: 'extender: link down',
    note: 'The stretch between two ends of an extender carries nothing any more.',
  },
  {
    kind: 'syncFound',
    all: [picture, found],
    none: [...otherSync, ...report, ...notYet, ...bad, 'strength'],
    unlessOurs: otherTopics,
    example: 'rx1: sync found, 3840x2160p60',
    note: 'The receiving side has a picture again.',
  },
  {
    kind: 'syncFound',
    all: [carrier, [...found, ...words('up, ok, los 0, established, fine')]],
    none: [...report, ...notYet, ...bad.filter((word) => word !== 'los')],
    unlessOurs: otherTopics,
    example: 'extender: link up',
    note: 'The stretch between two ends of an extender is there again.',
  },
  {
    kind: 'formatChange',
    all: [
      words(
        'format, resolution, video mode, timing, timings, signal mode, mode set, modeset, infoframe, frame rate, refresh rate, colour space, color space, colour depth, color depth, bit depth, hdr, dynamic range, info frame',
      ),
      words('change, changed, changing, switch, switched, switching, set, new'),
    ],
    none: words('log format, date format, time format, file format, no change, not changed, unchanged'),
    example: 'rx1: video format changed: 1920x1080p24 to 3840x2160p60',
    note: 'Resolution, rate, colour or dynamic range of the signal is another now.',
  },
];
