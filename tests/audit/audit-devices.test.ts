import { describe, expect, it } from 'vitest';
import { type AuditOptions, auditChain } from '../../shared/audit/chain-audit.ts';
import type { Chain } from '../../shared/contract/chain.ts';
import {
  cable,
  chainOf,
  display,
  extender,
  homeCinema,
  matrixSwitch,
  processor,
  receiver,
  rowOf,
  source,
  splitter,
  withDevice,
  withLink,
} from '../chain/build-chain.ts';
import { only, plain, seen } from './audit-findings.ts';

const cinema = homeCinema();

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
        sourceEnd: { needsPower: true, powered: 'yes', seated: 'yes' },
      }),
      ['twisted-pair-extender shouldFix boxout1-tvin1'],
    ],
  ])('%s', (_name, chain, expected) => {
    expect(seen(chain)).toEqual(expected);
  });

  it('say which device processes beside them', () => {
    expect(only(withDevice(cinema, 'receiver', scaling)).text).toMatchObject({
      code: 'processesBesideProcessor',
      values: { device: { deviceId: 'receiver' }, processor: { deviceId: 'processor' } },
    });
    const both = withDevice(withDevice(withoutProcessor, 'switch', scaling), 'player', scaling);
    expect(auditChain(both, plain).map(({ text }) => text)).toMatchObject([
      { values: { device: { deviceId: 'player' }, other: { deviceId: 'switch' } } },
      { values: { device: { deviceId: 'switch' }, other: { deviceId: 'player' } } },
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
    expect(only(cinema, triage).text).toMatchObject({
      code: 'feedsInParallel',
      values: { displays: [{ deviceId: 'projector' }, { deviceId: 'television' }] },
    });
  });

  it('is named with the cable to unplug where the faulty display is known', () => {
    const found = only(cinema, { ...triage, displayId: 'projector' });
    expect(found.place).toEqual({ kind: 'link', linkId: 'L5' });
    expect(found.whatToDo).toMatchObject({
      code: 'unplugForTheSearch',
      values: { cable: { linkId: 'L5' }, at: { deviceId: 'receiver' } },
    });
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
      text: {
        code: 'firmwareBelowLevel',
        values: { device: { deviceId: 'processor' }, firmware: '3.0', minimum: '3.10', model: 'CP-20' },
      },
      source: { code: 'levelOfOrganisation' },
      cautions: [{ code: 'cautionFirmwareUpdate' }],
    });
  });
});
