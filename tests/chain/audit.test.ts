import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AuditOptions, auditChain, auditRules, usualAssumptions } from '../../shared/chain/audit.ts';
import { placeExists, placeName, signalRank } from '../../shared/chain/graph.ts';
import {
  type Chain,
  type Finding,
  finding,
  findingSeverities,
  type Link,
} from '../../shared/contract/chain.ts';
import { arbitraryChain } from './arbitrary-chain.ts';
import {
  cable,
  chainOf,
  display,
  extender,
  frl48,
  homeCinema,
  input,
  matrixSwitch,
  opticalCable,
  output,
  processor,
  receiver,
  rowOf,
  source,
  splitter,
  tmds9,
  tmds18,
  withDevice,
  withLink,
  withPort,
} from './build-chain.ts';

const plain: AuditOptions = { minimumFirmware: [] };
const seen = (chain: Chain, options: Partial<AuditOptions> = {}): string[] =>
  auditChain(chain, { ...plain, ...options }).map(
    ({ rule, severity, place }) => `${rule} ${severity} ${placeText(place)}`,
  );
const placeText = (place: Finding['place']): string =>
  place.kind === 'link'
    ? place.linkId
    : place.kind === 'device'
      ? place.deviceId
      : place.kind === 'port'
        ? `${place.deviceId}.${place.portId}`
        : 'chain';
const only = (chain: Chain, options: Partial<AuditOptions> = {}): Finding => {
  const findings = auditChain(chain, { ...plain, ...options });
  expect(findings).toHaveLength(1);
  return findings[0] as Finding;
};

const cinema = homeCinema();
const end = (facts: Partial<Link['sinkEnd']>): Link['sinkEnd'] => ({
  needsPower: false,
  powered: 'unknown',
  seated: 'yes',
  ...facts,
});

describe('a home cinema in good order', () => {
  it('has nothing to tell', () => {
    expect(seen(cinema)).toEqual([]);
  });
});

describe('cables', () => {
  const L3 = (facts: Partial<Link>): Chain => withLink(cinema, 'L3', facts);
  const L4 = (facts: Partial<Link>): Chain => withLink(cinema, 'L4', facts);
  const between9 = withPort(
    withPort(cinema, 'receiver', 'out1', { highestMode: tmds9, setMode: null }),
    'processor',
    'in1',
    { highestMode: tmds9 },
  );

  it.each<[string, Chain, string[]]>([
    ['of category Standard', L3({ category: 'standard' }), ['certification mustFix L3']],
    ['of category High Speed, certified', L3({ category: 'highSpeed' }), ['certification mustFix L3']],
    ['of Premium High Speed without a label', L3({ certified: false }), ['certification shouldFix L3']],
    ['of Ultra High Speed, certified', L3({ category: 'ultraHighSpeed' }), []],
    ['of an unknown category', L3({ category: 'unknown', certified: false }), ['certification note L3']],
    ['1 m long', L3({ lengthM: 1 }), ['length-short shouldFix L3']],
    ['1.7 m long', L3({ lengthM: 1.7 }), ['length-short shouldFix L3']],
    ['1.8 m long', L3({ lengthM: 1.8 }), []],
    ['6 ft long', L3({ lengthM: 1.8288 }), []],
    ['7.6 m of passive copper', L3({ lengthM: 7.6 }), []],
    ['25 ft of passive copper', L3({ lengthM: 7.62 }), []],
    ['7.7 m of passive copper', L3({ lengthM: 7.7 }), ['length-long mustFix L3']],
    [
      '10 m of active copper',
      L3({ lengthM: 10, construction: 'activeCopper', direction: 'asMarked' }),
      ['length-long shouldFix L3'],
    ],
    ['60 m of active optical', L4({ lengthM: 60 }), []],
    ['1 m of active optical', L4({ lengthM: 1 }), ['length-short shouldFix L4']],
    [
      'optical with ends fitted on site',
      L4({ factoryFittedEnds: false }),
      ['factory-fitted-ends shouldFix L4'],
    ],
    [
      'optical with ends fitted by nobody knows whom',
      L4({ factoryFittedEnds: null }),
      ['factory-fitted-ends note L4'],
    ],
    ['copper with ends fitted on site', L3({ factoryFittedEnds: false }), []],
    [
      'over twisted pair',
      L4({ construction: 'twistedPairExtender', category: 'unknown', certified: false, lengthM: 30 }),
      ['twisted-pair-extender shouldFix L4'],
    ],
    ['reversed', L4({ direction: 'reversed' }), ['direction mustFix L4']],
    ['of passive copper, reversed', L3({ direction: 'reversed' }), ['direction mustFix L3']],
    ['active, direction not noted', L4({ direction: 'unknown' }), ['direction shouldFix L4']],
    [
      'of active copper, direction not noted',
      L3({ construction: 'activeCopper', direction: 'unknown' }),
      ['direction shouldFix L3'],
    ],
    ['of passive copper, direction not noted', L3({ direction: 'unknown' }), ['direction note L3']],
    ['active but noted as not directional', L4({ direction: 'notDirectional' }), ['direction note L4']],
    [
      'without the power it needs',
      L4({ sinkEnd: end({ needsPower: true, powered: 'no' }) }),
      ['end-power mustFix L4'],
    ],
    ['maybe without the power it needs', L4({ sinkEnd: end({ needsPower: true }) }), ['end-power note L4']],
    ['without power where it needs none', L4({ sinkEnd: end({ powered: 'no' }) }), []],
    [
      'without power at both ends that need it',
      L4({
        sourceEnd: end({ needsPower: true, powered: 'no' }),
        sinkEnd: end({ needsPower: true, powered: 'no' }),
      }),
      ['end-power mustFix L4', 'end-power mustFix L4'],
    ],
    ['hanging half out', L3({ sinkEnd: end({ seated: 'no' }) }), ['seating mustFix L3']],
    [
      'hanging half out, other end unknown',
      L3({ sourceEnd: end({ seated: 'unknown' }), sinkEnd: end({ seated: 'no' }) }),
      ['seating mustFix L3'],
    ],
    ['with a seat nobody checked', L3({ sourceEnd: end({ seated: 'unknown' }) }), ['seating note L3']],
    ['High Speed between ports that pass no more', withLink(between9, 'L3', { category: 'highSpeed' }), []],
    [
      'High Speed from a port that passes no more',
      withLink(withPort(cinema, 'player', 'out1', { highestMode: tmds9 }), 'L1', { category: 'highSpeed' }),
      [],
    ],
    [
      'High Speed into a port that passes no more',
      withLink(
        withDevice(cinema, 'processor', {
          ports: [input('in1', { highestMode: tmds9 }), output('out1')],
        }),
        'L3',
        { category: 'highSpeed' },
      ),
      [],
    ],
    [
      'High Speed without a label between such ports',
      withLink(between9, 'L3', { category: 'highSpeed', certified: false }),
      [],
    ],
    [
      '10 m of passive copper between such ports',
      withLink(between9, 'L3', { lengthM: 10 }),
      ['length-long shouldFix L3'],
    ],
  ])('%s', (_name, chain, expected) => {
    expect(seen(chain)).toEqual(expected);
  });

  describe('of the optical kind, straight from a playback source', () => {
    const direct = (
      facts: Partial<Link>,
      supplyMa: number | null = null,
      sinkMa: number | null = null,
    ): Chain =>
      chainOf(
        [
          source('player', { ports: [output('out1', { fiveVoltMa: supplyMa })] }),
          display('projector', { ports: [input('in1', { fiveVoltMa: sinkMa })] }),
        ],
        [opticalCable('player.out1', 'projector.in1', { id: 'L1', ...facts })],
      );

    it.each<[string, Chain, string[]]>([
      ['may starve', direct({}), ['optical-on-source-power shouldFix L1']],
      ['starves by the figures', direct({ drawMa: 250 }, 55), ['optical-on-source-power mustFix L1']],
      [
        'starves by the figures with what the display draws',
        direct({ drawMa: 250 }, 300, 51),
        ['optical-on-source-power mustFix L1'],
      ],
      ['is fed by the figures', direct({ drawMa: 250 }, 300), ['optical-on-source-power note L1']],
      [
        'is fed by its own supply',
        direct({ sourceEnd: end({ needsPower: true, powered: 'yes' }) }),
        ['optical-on-source-power note L1'],
      ],
    ])('%s', (_name, chain, expected) => {
      expect(seen(chain)).toEqual(expected);
    });

    it('says the figures it judges by', () => {
      expect(only(direct({ drawMa: 250 }, 55)).text).toContain('supplies 55 mA where 250 mA are drawn');
    });
  });

  it('are judged by the numbers an organisation sets', () => {
    const long = L3({ lengthM: 9 });
    expect(seen(long, { assumptions: { longestCopperM: 10 } })).toEqual([]);
    expect(seen(cinema, { assumptions: { shortestCableM: 4 } })).toEqual([
      'length-short shouldFix L1',
      'length-short shouldFix L2',
      'length-short shouldFix L3',
      'length-short shouldFix L5',
    ]);
    expect(seen(L3({ category: 'highSpeed' }), { assumptions: { requiredGbps: 9 } })).toEqual([]);
    expect(usualAssumptions).toEqual({ shortestCableM: 1.8, longestCopperM: 7.6, requiredGbps: 18 });
  });

  it('between ports of 48 Gbit/s have to be certified for that where the organisation asks for it', () => {
    const fast = rowOf([
      source('player', { ports: [output('out1', { highestMode: frl48 })] }),
      display('tv', { ports: [input('in1', { highestMode: frl48 })] }),
    ]);
    expect(seen(fast)).toEqual([]);
    const asked = only(fast, { assumptions: { requiredGbps: 48 } });
    expect(asked.text).toContain('tested for 18 Gbit/s, between ports that pass 48 Gbit/s');
    expect(asked.whatToDo).toBe('Replace it with a cable that is certified for 48 Gbit/s.');
  });
});

describe('ports', () => {
  const twoOutputs = (one: Parameters<typeof output>[1], other: Parameters<typeof output>[1]): Chain =>
    withDevice(cinema, 'receiver', {
      ports: [
        input('in1', { setMode: tmds18 }),
        input('in2', { setMode: tmds18 }),
        output('out1', one),
        output('out2', other),
      ],
    });
  const told = { setMode: tmds18 };
  const slow = { highestMode: tmds9 };

  it.each<[string, Chain, string[]]>([
    [
      'set below what both ends pass',
      withPort(cinema, 'receiver', 'in1', { setMode: tmds9 }),
      ['port-mode mustFix receiver.in1'],
    ],
    [
      'set below, but no lower than the other end passes',
      withPort(withPort(cinema, 'player', 'out1', slow), 'receiver', 'in1', { setMode: tmds9 }),
      [],
    ],
    [
      'of a receiver that nobody looked at, in one note',
      withPort(withPort(cinema, 'receiver', 'in1', { setMode: null }), 'receiver', 'out1', { setMode: null }),
      ['port-mode note receiver'],
    ],
    ['of another device on automatic', withPort(cinema, 'processor', 'in1', { setMode: null }), []],
    [
      'noted as set above their highest mode',
      withPort(withPort(cinema, 'player', 'out1', slow), 'receiver', 'in1', {
        highestMode: tmds9,
        setMode: tmds18,
      }),
      ['port-mode note receiver.in1'],
    ],
    [
      'slower than a free one beside them',
      withPort(cinema, 'projector', 'in1', slow),
      ['lower-rate-port mustFix projector.in1'],
    ],
    [
      'slower than a free one, where more than 18 Gbit/s could pass',
      withPort(withPort(cinema, 'projector', 'in2', { highestMode: frl48 }), 'processor', 'out1', {
        highestMode: frl48,
      }),
      ['lower-rate-port note projector.in1'],
    ],
    [
      'slower than one whose link needs less',
      withPort(withPort(twoOutputs({ ...slow }, told), 'television', 'in1', slow), 'television', 'in2', slow),
      ['lower-rate-port shouldFix receiver.out1'],
    ],
    [
      'slower than one whose link needs as much',
      twoOutputs(told, { ...slow }),
      ['lower-rate-port shouldFix receiver.out2'],
    ],
    [
      'as slow as the display they feed',
      withPort(withPort(twoOutputs(told, { ...slow }), 'television', 'in1', slow), 'television', 'in2', slow),
      [],
    ],
    [
      'slow, where the device has no better one',
      withPort(withPort(cinema, 'projector', 'in1', slow), 'projector', 'in2', slow),
      [],
    ],
    [
      'that do an older content protection than a free one',
      withPort(cinema, 'receiver', 'in1', { contentProtection: '1.4' }),
      ['port-protection shouldFix receiver.in1'],
    ],
    [
      'that do an older content protection than free ones that pass less',
      withDevice(cinema, 'receiver', {
        ports: [
          input('in1', { setMode: tmds18, contentProtection: '1.4' }),
          input('in2', { setMode: tmds18 }),
          input('in3', { highestMode: tmds9 }),
          output('out1', { setMode: tmds18 }),
          output('out2', { setMode: tmds18 }),
        ],
      }),
      [],
    ],
    [
      'of a receiver that nobody looked at, into a display that passes less',
      withDevice(withPort(cinema, 'receiver', 'out2', { setMode: null }), 'television', {
        ports: [input('in1', { highestMode: tmds9 })],
      }),
      [],
    ],
    [
      'that do older content protection, like the other end',
      withPort(withPort(cinema, 'player', 'out1', { contentProtection: '1.4' }), 'receiver', 'in1', {
        contentProtection: '1.4',
      }),
      [],
    ],
    [
      'whose content protection nobody knows',
      withPort(cinema, 'receiver', 'in1', { contentProtection: 'unknown' }),
      [],
    ],
    [
      'of a source that say audio, on the way to a display',
      withDevice(cinema, 'player', {
        ports: [output('out1', { label: 'HDMI AUDIO OUT' }), output('out2', { label: 'HDMI MAIN' })],
      }),
      ['right-port-label shouldFix player.out1'],
    ],
    [
      'of a receiver that say zone, on the way to a display',
      twoOutputs(told, { ...told, label: 'ZONE 2 OUT' }),
      ['right-port-label note receiver.out2'],
    ],
    [
      'that say audio, on the way to no display',
      chainOf(
        [
          source('player', { ports: [output('out1'), output('out2', { label: 'AUDIO' })] }),
          display('tv'),
          receiver('sound'),
        ],
        [cable('player.out1', 'tv.in1'), cable('player.out2', 'sound.in1')],
      ),
      [],
    ],
  ])('%s', (_name, chain, expected) => {
    expect(seen(chain)).toEqual(expected);
  });

  it('tells a better port to swap with from one that is needed where it is', () => {
    const spare = twoOutputs(slow, told);
    const modest = withDevice(spare, 'television', { ports: [input('in1', slow)] });
    expect(only(modest).whatToDo).toBe("Swap it with the plug in 'HDMI OUT2', which needs less.");
    expect(only(spare).whatToDo).toBe(
      'The better ones are taken by links that need them too: decide which goes first.',
    );
  });

  it('names the free port to move to', () => {
    const moved = only(withPort(cinema, 'projector', 'in1', slow));
    expect(moved.text).toBe(
      "Port 'HDMI IN1' of display 'Projector' passes 9 Gbit/s at most; 'HDMI IN2' of the same device passes more.",
    );
    expect(moved.whatToDo).toBe("Move the plug to 'HDMI IN2'.");
    const audio = withDevice(cinema, 'player', {
      ports: [output('out1', { label: 'AUDIO' }), output('out2', { label: 'MAIN' })],
    });
    expect(only(audio).whatToDo).toContain("Move the plug to 'MAIN'");
  });
});

describe('devices', () => {
  const uhd = {
    widthPx: 3840,
    heightPx: 2160,
    interlaced: false,
    refreshHz: 60,
    encoding: 'rgb',
    bitsPerComponent: 8,
  } as const;
  const limits = {
    kind: 'limits',
    maxTmdsCharacterRateMHz: 300,
    dropsFrl: false,
    drops420: false,
    dropsHdr: false,
    stereoOnly: false,
  } as const;
  const scaling = { processesPicture: true };
  const withoutProcessor = rowOf([source('player'), matrixSwitch('switch'), display('tv')]);

  it.each<[string, Chain, string[]]>([
    ['the processor processing', withDevice(cinema, 'processor', { ...scaling, outputFormat: uhd }), []],
    ['the receiver scaling too', withDevice(cinema, 'receiver', scaling), ['processing shouldFix receiver']],
    [
      'the receiver sending a format of its own',
      withDevice(cinema, 'receiver', { outputFormat: uhd }),
      ['processing shouldFix receiver'],
    ],
    ['a source scaling', withDevice(cinema, 'player', scaling), ['processing shouldFix player']],
    ['a source with a format it plays', withDevice(cinema, 'player', { outputFormat: uhd }), []],
    [
      'the projector processing behind the processor',
      withDevice(cinema, 'projector', scaling),
      ['processing shouldFix projector'],
    ],
    ['a display scaling where nothing else does', withDevice(withoutProcessor, 'tv', scaling), []],
    [
      'a switch scaling where nothing else does',
      withDevice(withoutProcessor, 'switch', scaling),
      ['processing note switch'],
    ],
    [
      'a switch scaling in front of a display that scales',
      withDevice(withDevice(withoutProcessor, 'switch', scaling), 'tv', scaling),
      ['processing note switch'],
    ],
    [
      'a source and a switch scaling without a processor',
      withDevice(withDevice(withoutProcessor, 'switch', scaling), 'player', scaling),
      ['processing shouldFix player', 'processing shouldFix switch'],
    ],
    [
      'the television on the branch beside the processor processing',
      withDevice(cinema, 'television', scaling),
      [],
    ],
    [
      'the receiver limiting the EDID',
      withDevice(cinema, 'receiver', { edidHandling: limits }),
      ['edid-management shouldFix receiver'],
    ],
    [
      'the receiver with an EDID of its own',
      withDevice(cinema, 'receiver', { edidHandling: { kind: 'replaces', edidHex: null } }),
      ['edid-management shouldFix receiver'],
    ],
    ['the processor limiting the EDID', withDevice(cinema, 'processor', { edidHandling: limits }), []],
    [
      'an extender box over nobody knows what',
      rowOf([source('player'), extender('box'), display('tv')]),
      ['twisted-pair-extender note box'],
    ],
    [
      'an extender box with its twisted pair noted',
      withLink(rowOf([source('player'), extender('box'), display('tv')]), 'boxout1-tvin1', {
        construction: 'twistedPairExtender',
        lengthM: 20,
      }),
      ['twisted-pair-extender shouldFix boxout1-tvin1'],
    ],
  ])('%s', (_name, chain, expected) => {
    expect(seen(chain)).toEqual(expected);
  });

  it('say which device processes beside them', () => {
    expect(only(withDevice(cinema, 'receiver', scaling)).text).toBe(
      "Receiver 'Receiver' scales or processes the picture; with processor 'Cinema processor' on the way only that one should.",
    );
    const both = withDevice(withDevice(withoutProcessor, 'switch', scaling), 'player', scaling);
    expect(auditChain(both, plain).map(({ text }) => text)).toEqual([
      "Source 'Disc player' scales or processes the picture, and so does switch 'Switch'.",
      "Switch 'Switch' scales or processes the picture, and so does source 'Disc player'.",
    ]);
  });
});

describe('a second display', () => {
  const triage = { duringTriage: true };

  it('is ordinary outside triage', () => {
    expect(seen(cinema, { duringTriage: false })).toEqual([]);
    expect(seen(cinema, { displayId: 'projector' })).toEqual([]);
  });

  it('is a finding during triage, at the device that feeds both', () => {
    expect(seen(cinema, triage)).toEqual(['parallel-display shouldFix receiver']);
    expect(only(cinema, triage).text).toBe(
      "Receiver 'Receiver' feeds display 'Projector' and display 'Television' in parallel.",
    );
  });

  it('is named with the cable to unplug where the faulty display is known', () => {
    const found = only(cinema, { ...triage, displayId: 'projector' });
    expect(found.place).toEqual({ kind: 'link', linkId: 'L5' });
    expect(found.whatToDo).toBe(
      "Unplug the cable from Receiver 'HDMI OUT2' to Television 'HDMI IN1' at Receiver while you look for the fault.",
    );
    expect(only(cinema, { ...triage, displayId: 'television' }).place).toEqual({
      kind: 'link',
      linkId: 'L3',
    });
    expect(seen(cinema, { ...triage, displayId: 'gone' })).toEqual(['parallel-display shouldFix receiver']);
  });

  it('is no dead end without a display', () => {
    const zone = chainOf(
      [...cinema.devices.filter(({ id }) => id !== 'television'), receiver('zone', { name: 'Zone' })],
      [...cinema.links.filter(({ id }) => id !== 'L5'), cable('receiver.out2', 'zone.in1')],
    );
    expect(seen(zone, { ...triage, displayId: 'projector' })).toEqual([]);
    expect(seen(zone, triage)).toEqual([]);
  });

  it('is none where a device feeds one display by two ways, or sits below the fork', () => {
    const twoWays = chainOf(
      [source('player'), splitter('split'), display('tv')],
      [cable('player.out1', 'split.in1'), cable('split.out1', 'tv.in1'), cable('split.out2', 'tv.in2')],
    );
    expect(seen(twoWays, triage)).toEqual([]);
    const deep = chainOf(
      [source('player'), processor('processor'), splitter('split'), display('a'), display('b')],
      [
        cable('player.out1', 'processor.in1'),
        cable('processor.out1', 'split.in1'),
        cable('split.out1', 'a.in1'),
        cable('split.out2', 'b.in1'),
      ],
    );
    expect(seen(deep, triage)).toEqual(['parallel-display shouldFix split']);
  });
});

describe('firmware', () => {
  const at = (firmware: string | null, model: string | null = 'CP-20'): Chain =>
    withDevice(cinema, 'processor', { model, firmware });
  const level = (minimum: string, model = 'CP-20') => ({ minimumFirmware: [{ model, minimum }] });

  it.each<[string, Chain, Partial<AuditOptions>, string[]]>([
    ['below the level', at('3.0'), level('3.10'), ['firmware-level mustFix processor']],
    ['at the level', at('v1.8'), level('1.8'), []],
    ['above the level', at('1.8.1'), level('1.8'), []],
    ['not read', at(null), level('1.8'), ['firmware-level note processor']],
    ['of another scheme', at('2025-03-01'), level('1.8'), ['firmware-level note processor']],
    ['of a model without a level', at('1.0', 'CP-30'), level('1.8'), []],
    [
      'of a model written another way',
      at('1.0', 'cp 20'),
      level('1.8'),
      ['firmware-level mustFix processor'],
    ],
    ['of no known model', at('1.0', null), level('1.8'), []],
  ])('%s', (_name, chain, options, expected) => {
    expect(seen(chain, options)).toEqual(expected);
  });

  it('says what the organisation asks for, and that an update is for good', () => {
    expect(only(at('3.0'), level('3.10'))).toMatchObject({
      text: "Firmware 3.0 of processor 'Cinema processor' is below 3.10, the lowest your organisation accepts for model CP-20.",
      source: 'level set by the organisation',
      caution: expect.stringContaining("can't be undone"),
    });
  });
});

describe('a symptom', () => {
  it('makes what explains it urgent, and nothing else', () => {
    const chain = withDevice(withLink(cinema, 'L1', { lengthM: 1 }), 'receiver', {
      edidHandling: { kind: 'replaces', edidHex: null },
    });
    expect(seen(chain)).toEqual(['length-short shouldFix L1', 'edid-management shouldFix receiver']);
    expect(seen(chain, { symptom: 'noHdrOrWrongColour' })).toEqual([
      'edid-management mustFix receiver',
      'length-short shouldFix L1',
    ]);
  });

  it('never makes more of a note', () => {
    const zone = withDevice(cinema, 'receiver', {
      ports: [
        ...receiver('receiver').ports.filter(({ direction }) => direction === 'input'),
        output('out1', { setMode: tmds18 }),
        output('out2', { setMode: tmds18, label: 'ZONE 2' }),
      ],
    });
    expect(seen(zone, { symptom: 'noPicture' })).toEqual(['right-port-label note receiver.out2']);
  });
});

describe('cautions', () => {
  const caution = (chain: Chain): string => only(chain).caution ?? '';

  it('warn of the light of optical cables and projectors, of ladders, and of mains in racks', () => {
    const text = caution(withLink(cinema, 'L4', { direction: 'reversed' }));
    for (const word of ['never look into its end', 'lens', 'ladder', 'mains', 'licensed'])
      expect(text).toContain(word);
  });

  it('defer to local codes for cables in walls, and warn of cables across floors', () => {
    const old = { lengthM: 12, category: 'premiumHighSpeed' } as const;
    const inWall = caution(withLink(cinema, 'L3', { ...old, route: 'inWall' }));
    expect(inWall).toContain('fire rating that local codes ask for');
    expect(inWall).not.toContain('floor');
    const free = caution(withLink(cinema, 'L3', old));
    expect(free).toContain('A cable across a floor trips people');
    expect(free).not.toContain('wall');
  });

  it('keep to what the work is: no floor for a short cable, no rack between source and display', () => {
    expect(caution(withLink(cinema, 'L3', { lengthM: 1 }))).not.toContain('floor');
    const direct = rowOf([source('player'), display('tv')], { certified: false });
    expect(caution(direct)).toContain('ladder');
    expect(caution(direct)).not.toContain('mains');
  });

  it('warn of the light of the optical cable that is to come', () => {
    expect(caution(withLink(cinema, 'L3', { lengthM: 12 }))).toContain('never look into its end');
  });

  it('are left out where the work is done in a menu', () => {
    expect(only(withPort(cinema, 'receiver', 'in1', { setMode: tmds9 })).caution).toBeNull();
  });
});

describe('findings from elsewhere', () => {
  it('are sorted in by severity and place', () => {
    const budget: Finding = {
      rule: 'link-budget',
      severity: 'mustFix',
      place: { kind: 'link', linkId: 'L3' },
      placeName: 'the cable',
      text: 'This link needs 17.82 Gbit/s, the cable is good for 10.2: 43 % short.',
      whatToDo: 'Replace it.',
      source: 'HDMI 2.0',
      caution: null,
    };
    const chain = withLink(
      withLink(withLink(cinema, 'L1', { lengthM: 1 }), 'L4', { direction: 'reversed' }),
      'L2',
      {
        sinkEnd: end({ seated: 'no' }),
      },
    );
    expect(seen(chain, { linkFindings: [budget] })).toEqual([
      'seating mustFix L2',
      'link-budget mustFix L3',
      'direction mustFix L4',
      'length-short shouldFix L1',
    ]);
  });
});

describe('any chain', () => {
  const levels = [
    { model: 'AB-100', minimum: '2.0' },
    { model: 'CD-20', minimum: '2025-01-01' },
  ];
  const options = fc.record({
    minimumFirmware: fc.constantFrom([], levels),
    duringTriage: fc.boolean(),
    displayId: fc.constantFrom(undefined, 'd2', 'd4'),
    symptom: fc.constantFrom(undefined, 'noPicture' as const, 'noHdrOrWrongColour' as const),
  });

  it('gives findings that fit the contract, name real places and real rules, and come in order', () => {
    fc.assert(
      fc.property(arbitraryChain(), options, (chain, chosen) => {
        const findings = auditChain(chain, chosen);
        const rank = signalRank(chain);
        const order = findings.map(
          ({ severity, place }) => [findingSeverities.indexOf(severity), rank(place)] as const,
        );
        const misplaced = order.filter(([severity, along], at) => {
          const [before, alongBefore] = order[at - 1] ?? [0, 0];
          return before > severity || (before === severity && alongBefore > along);
        });
        expect(misplaced).toEqual([]);
        expect(finding.array().parse(findings)).toEqual(findings);
        const rules = new Set(auditRules.map(({ id }) => id));
        const wrong = findings.filter(
          ({ rule, place, placeName: name, text, whatToDo }) =>
            !rules.has(rule) ||
            !placeExists(chain, place) ||
            name !== placeName(chain, place) ||
            !/^[A-Z].*[.]$/.test(text) ||
            !/^[A-Z].*[.]$/.test(whatToDo) ||
            /undefined|null|NaN|\[object/.test(text + whatToDo),
        );
        expect(wrong).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });

  it('raises no alarm over what nobody knows', () => {
    const unknown = (chain: Chain): Chain => ({
      ...chain,
      devices: chain.devices.map((device) => ({
        ...device,
        firmware: null,
        processesPicture: false,
        edidHandling: { kind: 'passesOn' },
        ports: device.ports.map((port) => ({
          ...port,
          highestMode: tmds18,
          setMode: null,
          contentProtection: 'unknown',
          fiveVoltMa: null,
        })),
      })),
      links: chain.links.map((link) => ({
        ...link,
        construction: 'passiveCopper',
        category: 'unknown',
        certified: false,
        lengthM: 3,
        direction: 'unknown',
        factoryFittedEnds: null,
        sourceEnd: { needsPower: true, powered: 'unknown', seated: 'unknown' },
        sinkEnd: { needsPower: true, powered: 'unknown', seated: 'unknown' },
      })),
    });
    fc.assert(
      fc.property(arbitraryChain(), (chain) => {
        const findings = auditChain(unknown(chain), { minimumFirmware: levels });
        expect(findings.length).toBeGreaterThan(0);
        expect(findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
      }),
    );
  });

  it('says the same whatever the order of the document', () => {
    fc.assert(
      fc.property(arbitraryChain(), options, (chain, chosen) => {
        const turned = { ...chain, devices: [...chain.devices].reverse(), links: [...chain.links].reverse() };
        const said = (of: Chain): string[] =>
          auditChain(of, chosen)
            .map(({ rule, severity, place }) => `${rule} ${severity} ${placeText(place)}`)
            .sort();
        expect(said(turned)).toEqual(said(chain));
      }),
    );
  });
});

describe('the list of rules', () => {
  it('gives each rule once, with its source', () => {
    const names = auditRules.map(({ id }) => id);
    expect(new Set(names).size).toBe(names.length);
    expect(auditRules.filter(({ source: from }) => from === '')).toEqual([]);
  });
});
