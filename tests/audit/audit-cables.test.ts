import { describe, expect, it } from 'vitest';
import { usualAssumptions } from '../../shared/audit/chain-audit.ts';
import type { Chain, Link } from '../../shared/contract/chain.ts';
import { organisationDefaults } from '../../shared/contract/defaults.ts';
import {
  chainOf,
  display,
  frl48,
  homeCinema,
  input,
  opticalCable,
  output,
  rowOf,
  source,
  tmds9,
  withDevice,
  withLink,
  withPort,
} from '../chain/build-chain.ts';
import { end, only, seen } from './audit-findings.ts';

const cinema = homeCinema();

describe('cables', () => {
  const L3 = (facts: Partial<Link>): Chain => withLink(cinema, 'L3', facts);
  const L4 = (facts: Partial<Link>): Chain => withLink(cinema, 'L4', facts);
  const between9 = withPort(
    withPort(cinema, 'receiver', 'out1', { highestMode: tmds9, setMode: null }),
    'processor',
    'in1',
    { highestMode: tmds9 },
  );

  const highSpeed = (facts: Partial<Link>): Chain =>
    withLink(between9, 'L3', { category: 'highSpeed', certified: false, ...facts });

  it.each<[string, Chain, string[]]>([
    ['of category Standard', L3({ category: 'standard' }), ['certification mustFix L3']],
    ['of category High Speed, certified', L3({ category: 'highSpeed' }), ['certification mustFix L3']],
    ['of Premium High Speed without a label', L3({ certified: false }), ['certification shouldFix L3']],
    ['of Ultra High Speed, certified', L3({ category: 'ultraHighSpeed' }), []],
    ['of an unknown category', L3({ category: 'unknown', certified: false }), ['certification note L3']],
    ['1 m long, certified', L3({ lengthM: 1 }), []],
    ['1 m long', highSpeed({ lengthM: 1 }), ['length-short shouldFix L3']],
    ['1.7 m long', highSpeed({ lengthM: 1.7 }), ['length-short shouldFix L3']],
    ['1.8 m long', highSpeed({ lengthM: 1.8 }), []],
    ['6 ft long', highSpeed({ lengthM: 1.8288 }), []],
    ['7.6 m of passive copper', L3({ lengthM: 7.6 }), []],
    ['25 ft of passive copper', L3({ lengthM: 7.62 }), []],
    ['11 m of passive copper that bears a label', L3({ lengthM: 11 }), []],
    ['12 m of passive copper that bears a label', L3({ lengthM: 12 }), ['length-long shouldFix L3']],
    ['10 m of passive copper', L3({ certified: false, lengthM: 10 }), ['length-long shouldFix L3']],
    ['12 m of passive copper', L3({ certified: false, lengthM: 12 }), ['length-long mustFix L3']],
    ['12 m of active copper', L3({ lengthM: 12, construction: 'activeCopper', direction: 'asMarked' }), []],
    ['60 m of active optical', L4({ lengthM: 60 }), []],
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
    [
      'copper with ends fitted on site',
      L3({ factoryFittedEnds: false }),
      ['factory-fitted-ends shouldFix L3'],
    ],
    [
      'over twisted pair',
      L4({ construction: 'twistedPairExtender', category: 'unknown', certified: false, lengthM: 30 }),
      ['twisted-pair-extender shouldFix L4', 'certification note L4'],
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
      withLink(between9, 'L3', { certified: false, lengthM: 10 }),
      [],
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
        [opticalCable('player.out1', 'projector.in1', { id: 'L1', sinkEnd: end({}), ...facts })],
      );

    it.each<[string, Chain, string[]]>([
      ['may starve', direct({}), ['optical-on-source-power shouldFix L1']],
      ['starves by the figures', direct({ drawMa: 250 }, 55, 10), ['five-volt mustFix L1']],
      [
        'starves by the figures with what the display draws',
        direct({ drawMa: 250 }, 300, 51),
        ['five-volt mustFix L1'],
      ],
      ['is fed by the figures', direct({ drawMa: 250 }, 300), ['optical-on-source-power note L1']],
      [
        'is fed at the display',
        direct({ drawMa: 250, sinkEnd: end({ needsPower: true, powered: 'yes' }) }, 55, 10),
        ['optical-on-source-power note L1'],
      ],
      [
        'is fed by its own supply',
        direct({ sourceEnd: end({ needsPower: true, powered: 'yes' }) }),
        ['optical-on-source-power note L1'],
      ],
    ])('%s', (_name, chain, expected) => {
      expect(seen(chain)).toEqual(expected);
    });

    it('says the figures it judges by', () => {
      const { budget } = only(direct({ drawMa: 250 }, 55, 10)).text.values;
      const figures = { supply: { values: { supply: 55 } }, cable: { values: { draw: 250 } } };
      expect(budget).toMatchObject({ values: { budget: { values: figures } } });
    });
  });

  it('are judged by the numbers an organisation sets', () => {
    const long = L3({ certified: false, lengthM: 9 });
    const passiveCopperReachM = { ...organisationDefaults.budget.passiveCopperReachM, premiumHighSpeed: 10 };
    const own = { budget: { passiveCopperReachM, uncertified: 1 } };
    expect(seen(long, { assumptions: own })).toEqual([]);
    expect(seen(highSpeed({ lengthM: 3 }), { assumptions: { shortestCableM: 4 } })).toEqual([
      'length-short shouldFix L3',
    ]);
    expect(seen(L3({ category: 'highSpeed' }), { assumptions: { requiredGbps: 9 } })).toEqual([]);
    expect(usualAssumptions).toEqual({ shortestCableM: 1.8, requiredGbps: 18 });
  });

  it('between ports of 48 Gbit/s have to be certified for that where the organisation asks for it', () => {
    const fast = rowOf([
      source('player', { ports: [output('out1', { highestMode: frl48 })] }),
      display('tv', { ports: [input('in1', { highestMode: frl48 })] }),
    ]);
    expect(seen(fast)).toEqual([]);
    const asked = only(fast, { assumptions: { requiredGbps: 48 } });
    expect(asked.text).toMatchObject({ code: 'cableTestedForLess', values: { testedFor: 18, needed: 48 } });
    expect(asked.whatToDo.values).toEqual({ rates: [48] });
  });
});

describe('cautions', () => {
  const cautions = (chain: Chain): string[] => only(chain).cautions.map(({ code }) => code);

  it('warn of the light of optical cables and projectors, of ladders, and of mains in racks', () => {
    expect(cautions(withLink(cinema, 'L4', { direction: 'reversed' }))).toEqual([
      'cautionOpticalLight',
      'cautionDisplay',
      'cautionMains',
    ]);
  });

  it('defer to local codes for cables in walls, and warn of cables across floors', () => {
    const old = { lengthM: 12, category: 'premiumHighSpeed', certified: false } as const;
    const inWall = cautions(withLink(cinema, 'L3', { ...old, route: 'inWall' }));
    expect(inWall).toContain('cautionCableInWall');
    expect(inWall).not.toContain('cautionCableAcrossFloor');
    const free = cautions(withLink(cinema, 'L3', old));
    expect(free).toContain('cautionCableAcrossFloor');
    expect(free).not.toContain('cautionCableInWall');
  });

  it('keep to what the work is: no floor for a short cable, no rack between source and display', () => {
    expect(cautions(withLink(cinema, 'L3', { lengthM: 2, certified: false }))).not.toContain(
      'cautionCableAcrossFloor',
    );
    const direct = rowOf([source('player'), display('tv')], { certified: false });
    expect(cautions(direct)).toContain('cautionDisplay');
    expect(cautions(direct)).not.toContain('cautionMains');
  });

  it('warn of the light of the optical cable that is to come', () => {
    expect(cautions(withLink(cinema, 'L3', { lengthM: 12, certified: false }))).toContain(
      'cautionOpticalLight',
    );
  });

  it('are left out where the work is done in a menu', () => {
    expect(cautions(withPort(cinema, 'receiver', 'in1', { setMode: tmds9 }))).toEqual([]);
  });
});
