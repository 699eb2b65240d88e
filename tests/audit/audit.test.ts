import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { auditChain, auditRules } from '../../shared/audit/chain-audit.ts';
import { placeExists, signalRank } from '../../shared/chain/graph.ts';
import { namedPlace } from '../../shared/chain/named-place.ts';
import { type Chain, type Finding, finding, findingSeverities } from '../../shared/contract/chain.ts';
import { message } from '../../shared/message/index.ts';
import { arbitraryChain } from '../chain/arbitrary-chain.ts';
import { homeCinema, output, receiver, tmds18, withDevice, withLink } from '../chain/build-chain.ts';
import { end, placeText, seen } from './audit-findings.ts';

const cinema = homeCinema();

describe('a home cinema in good order', () => {
  it('has nothing to tell', () => {
    expect(seen(cinema)).toEqual([]);
  });
});

describe('a symptom', () => {
  it('makes what explains it urgent, and nothing else', () => {
    const chain = withDevice(withLink(cinema, 'L1', { certified: false }), 'receiver', {
      edidHandling: { kind: 'replaces', edidHex: null },
    });
    expect(seen(chain)).toEqual(['certification shouldFix L1', 'edid-management shouldFix receiver']);
    expect(seen(chain, { symptom: 'noHdr' })).toEqual([
      'edid-management mustFix receiver',
      'certification shouldFix L1',
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

describe('findings from elsewhere', () => {
  it('are sorted in by severity and place', () => {
    const budget: Finding = {
      rule: 'link-budget',
      severity: 'mustFix',
      place: { kind: 'link', linkId: 'L3' },
      placeName: message('asWritten', { sentence: 'the cable' }),
      text: message('cableIsGoodFor', { rate: 10.2 }),
      whatToDo: message('fitAnotherCable'),
      source: message('computedCapacity'),
      cautions: [],
    };
    const chain = withLink(
      withLink(withLink(cinema, 'L1', { certified: false }), 'L4', { direction: 'reversed' }),
      'L2',
      {
        sinkEnd: end({ seated: 'no' }),
      },
    );
    expect(seen(chain, { linkFindings: [budget] })).toEqual([
      'seating mustFix L2',
      'link-budget mustFix L3',
      'direction mustFix L4',
      'certification shouldFix L1',
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
    symptom: fc.constantFrom(undefined, 'noPicture' as const, 'noHdr' as const),
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
          ({ rule, place, placeName }) =>
            !rules.has(rule) ||
            !placeExists(chain, place) ||
            !isDeepStrictEqual(placeName.values.place, namedPlace(chain, place)),
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
  it('gives each rule once', () => {
    const names = auditRules.map(({ id }) => id);
    expect(new Set(names).size).toBe(names.length);
  });
});
