import type { Link } from '../../../shared/contract/chain.ts';
import { chainOf, display, opticalCable, source, tmds18, withPort } from '../../chain/build-chain.ts';
import { end } from '../audit-findings.ts';
import { consoleAndPlayer, fastPair, hd60, pair, uhd30, uhd60, wanting } from './build.ts';
import type { Row } from './row.ts';

const optical = (facts: Partial<Link> = {}): Partial<Link> => ({
  construction: 'activeOptical',
  category: 'ultraHighSpeed',
  lengthM: 15,
  direction: 'asMarked',
  sourceEnd: end({ needsPower: true, powered: 'yes' }),
  ...facts,
});
/** What any optical cable on a playback source is told, fed or not: it stays the first to suspect. */
const opticalOnSource = 'optical-on-source-power note L: opticalFromSourceFed > checkSupplyAtSource';
const twistedPair = (facts: Partial<Link> = {}): Partial<Link> => ({
  construction: 'twistedPairExtender',
  category: 'premiumHighSpeed',
  lengthM: 30,
  sourceEnd: end({ needsPower: true, powered: 'yes' }),
  ...facts,
});
const bestAvoided = 'twisted-pair-extender shouldFix L: twistedPairBestAvoided > replaceTwistedPair';
/** An optical cable straight from a source, with what the record has of the 5 V line, mA. */
const starving = (drawMa: number | null, supplyMa: number | null) =>
  withPort(
    withPort(
      wanting(
        chainOf(
          [source('player'), display('tv')],
          [opticalCable('player.out1', 'tv.in1', { id: 'L', drawMa, sinkEnd: end({}) })],
        ),
        uhd60,
      ),
      'player',
      'out1',
      { fiveVoltMa: supplyMa, setMode: tmds18 },
    ),
    'tv',
    'in1',
    { fiveVoltMa: 10 },
  );

/** Chains whose cables are right or faulty. Remedies are the trade's usual ones (common practice, no source). */
export const cableRows: Row[] = [
  ['3 m of certified copper', pair(), []],
  ['1 m of certified copper: it passed its test as it is', pair({ lengthM: 1 }), []],
  [
    '1 m of copper without a label',
    pair({ lengthM: 1, certified: false }),
    [
      'certification shouldFix L: cableCertificationUnseen > findCertificationLabel',
      'length-short shouldFix L: cableTooShort > replaceByLongerCable',
    ],
  ],
  ['7 m of copper certified for 48 Gbit/s, for 18', pair({ category: 'ultraHighSpeed', lengthM: 7 }), []],
  ['7 m of copper certified for 48 Gbit/s, for 40', fastPair({ lengthM: 7 }), []],
  [
    '12 m of copper that is said to be certified for 48 Gbit/s: no such cable is made',
    fastPair({ lengthM: 12 }),
    ['length-long shouldFix L: cableLongForItsLabel > scanLabelAgain'],
  ],
  [
    'Premium that nobody has seen the label of, at its full rate',
    pair({ certified: false }),
    ['certification shouldFix L: cableCertificationUnseen > findCertificationLabel'],
  ],
  ['the same where 1080p is all that is wanted', pair({ certified: false }, hd60), []],
  [
    '2 m of High Speed, which has no label, at 297 MHz',
    pair({ category: 'highSpeed', certified: false, lengthM: 2 }, uhd30),
    [],
  ],
  [
    '2 m of High Speed at 594 MHz',
    pair({ category: 'highSpeed', certified: false, lengthM: 2 }),
    ['certification mustFix L: cableTestedForLess > replaceByCertifiedCable'],
  ],
  [
    '12 m of High Speed in a wall at 594 MHz: no passive copper will do',
    pair({ category: 'highSpeed', certified: false, lengthM: 12, route: 'inWall' }),
    ['certification mustFix L: cableTestedForLess > moveSourceNearer'],
  ],
  ['10 m of passive copper with 1080p only', pair({ certified: false, lengthM: 10 }, hd60), []],
  [
    '10 m of passive copper without a label at 594 MHz',
    pair({ certified: false, lengthM: 10 }),
    ['length-long shouldFix L: cableTooLongFor > moveSourceNearer'],
  ],
  [
    '15 m of passive copper without a label at 594 MHz',
    pair({ certified: false, lengthM: 15 }),
    ['length-long mustFix L: cableTooLongFor > moveSourceNearer'],
  ],
  [
    '12 m of certified active copper',
    pair({ construction: 'activeCopper', direction: 'asMarked', lengthM: 12 }),
    [],
  ],
  [
    '12 m of active copper that its maker rates for 18 Gbit/s at 15 m',
    pair({
      construction: 'activeCopper',
      direction: 'asMarked',
      category: 'unknown',
      certified: false,
      lengthM: 12,
      rated: { gbps: 18, lengthM: 15 },
    }),
    [],
  ],
  [
    '2 m of unknown category',
    pair({ category: 'unknown', certified: false, lengthM: 2 }),
    ['certification note L: cableCategoryUnknown > lookForCertificationLabel'],
  ],
  [
    'copper with ends fitted on site',
    pair({ factoryFittedEnds: false }),
    ['factory-fitted-ends shouldFix L: cableEndsFittedOnSite > replaceByCertifiedCable'],
  ],
  [
    'two copper cables on a coupler',
    pair({ couplers: 1 }),
    ['couplers shouldFix L: cableOnCouplers > layInOnePiece'],
  ],
  [
    'thin copper, AWG 30, of 6 m',
    pair({ certified: false, category: 'ultraHighSpeed', lengthM: 6, gaugeAwg: 30 }),
    ['length-long shouldFix L: cableTooLongFor > replaceByCertifiedCable'],
  ],
  ['15 m of optical, fed', pair(optical()), [opticalOnSource]],
  [
    'optical, fed at the sink',
    pair(optical({ sourceEnd: end({}), sinkEnd: end({ needsPower: true, powered: 'yes' }) })),
    [opticalOnSource],
  ],
  [
    'optical the wrong way round: it is turned, not replaced',
    pair(optical({ direction: 'reversed' })),
    ['direction mustFix L: cableReversed > turnCableRound', opticalOnSource],
  ],
  [
    'optical without the power it asks for: it is fed, not replaced',
    pair(optical({ sourceEnd: end({}), sinkEnd: end({ needsPower: true, powered: 'no' }) })),
    ['end-power mustFix L: cableEndWithoutPower > plugInSupply'],
  ],
  [
    'optical of 18 Gbit/s for 40: a faster one, since copper of that length is none',
    fastPair(optical({ category: 'premiumHighSpeed' })),
    ['certification mustFix L: cableTestedForLess > replaceByCertifiedOptical', opticalOnSource],
  ],
  [
    'optical with ends fitted on site',
    pair(optical({ factoryFittedEnds: false })),
    [
      'factory-fitted-ends shouldFix L: cableEndsFittedOnSite > replaceByFactoryFittedOptical',
      opticalOnSource,
    ],
  ],
  [
    'two optical cables on a coupler',
    pair(optical({ couplers: 1 })),
    ['couplers shouldFix L: activeCableOnCouplers > layInOnePiece', opticalOnSource],
  ],
  [
    'optical on a 5 V line that is too weak: one fault, one finding',
    starving(120, 55),
    ['five-volt mustFix L: linkUnderfed > feedOpticalAnotherWay'],
  ],
  [
    'optical on a 5 V line that nobody measured',
    starving(null, null),
    ['optical-on-source-power shouldFix L: opticalFromSource > feedOpticalAnotherWay'],
  ],
  ['30 m of twisted pair, certified for 18 Gbit/s', pair(twistedPair()), [bestAvoided]],
  [
    'twisted pair of a rate that nobody noted',
    pair(twistedPair({ category: 'unknown', certified: false })),
    [bestAvoided, 'certification note L: extenderRateUnknown > lookUpExtenderRate'],
  ],
  [
    'twisted pair rated for 10.2 Gbit/s',
    pair(twistedPair({ rated: { gbps: 10.2, lengthM: 70 }, category: 'unknown' })),
    ['certification mustFix L: extenderRatedForLess > fitFasterExtender'],
  ],
  [
    '150 m of twisted pair',
    pair(twistedPair({ lengthM: 150 })),
    ['length-long mustFix L: extenderTooLong > replaceTwistedPair'],
  ],
  [
    'twisted pair without its supply',
    pair(twistedPair({ sourceEnd: end({ needsPower: true, powered: 'no' }) })),
    ['end-power mustFix L: cableEndWithoutPower > plugInSupply', bestAvoided],
  ],
  [
    'twisted pair with a supply that nobody noted',
    pair(twistedPair({ sourceEnd: end({}) })),
    [bestAvoided, 'end-power note L: extenderSupplyUnknown > checkExtenderSupply'],
  ],
  ['a console of 2160p120 beside a disc player on a Premium cable', consoleAndPlayer(), []],
  [
    'the disc player’s cable too slow for the disc',
    consoleAndPlayer({ L1: { category: 'highSpeed' } }),
    ['certification mustFix L1: cableTestedForLess > replaceByCertifiedCable'],
  ],
  [
    'the console’s cable too slow for the console',
    consoleAndPlayer({ L2: { category: 'premiumHighSpeed' } }),
    ['certification mustFix L2: cableTestedForLess > replaceByCertifiedCable'],
  ],
  [
    'a plug that isn’t home',
    pair({ sinkEnd: end({ seated: 'no' }) }),
    ['seating mustFix L: plugNotSeated > pushPlugsHome'],
  ],
];
