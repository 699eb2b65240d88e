import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fullAudit } from '../../shared/audit/full-audit.ts';
import { downstreamOf } from '../../shared/chain/graph.ts';
import { namedLink } from '../../shared/chain/named-place.ts';
import type { Chain, Finding } from '../../shared/contract/chain.ts';
import { hdrKinds, pictureFeatures } from '../../shared/contract/chain-names.ts';
import { chainBudget, linkFaults, type WantedOnLink } from '../../shared/signal/link-budget/index.ts';
import { arbitraryChain } from '../chain/arbitrary-chain.ts';
import { homeCinema, tmds9, withLink, withPort } from '../chain/build-chain.ts';
import { edid9, edid18, edid48, edid1080, format, uhd60, uhd120 } from '../signal/link-budget/chains.ts';
import { placeText } from './audit-findings.ts';
import { consoleAndPlayer } from './chains/build.ts';

/** Rules that speak of what the signal needs of a link; others speak of prerequisites whatever is wanted. */
const ofCapacity = [
  'certification',
  'length-long',
  'couplers',
  'port-mode',
  'lower-rate-port',
  'link-budget',
];
const wanted = fc.subarray(
  [
    uhd60,
    uhd120,
    format(1080, 60, 'rgb', 8),
    format(2160, 30, 'rgb', 8),
    format(2160, 60, 'rgb', 10),
    format(2160, 60, 'ycbcr420', 10),
    format(2160, 24, 'rgb', 12),
    format(4320, 60, 'ycbcr420', 10),
    { ...format(2160, 24, 'ycbcr422', 12), dynamicRange: 'hdr10' as const },
    { ...uhd60, dynamicRange: 'st2094-40' as const, features: ['vrr' as const] },
  ],
  { minLength: 1, maxLength: 3 },
);
const edid = fc.constantFrom(null, edid9, edid18, edid48, edid1080);

/** What devices are recorded to pass, in turn, the last of each round unknown. */
const passes = fc.array(
  fc.record(
    {
      dynamicRanges: fc.subarray([...hdrKinds]),
      features: fc.subarray([...pictureFeatures]),
      deepestBits: fc.constantFrom(8 as const, 10 as const, 12 as const),
      toneMaps: fc.boolean(),
    },
    { requiredKeys: [] },
  ),
  { maxLength: 2 },
);

/** Chains without sense, and two that have some with a few things changed. */
const chains: fc.Arbitrary<Chain> = fc
  .tuple(
    fc.oneof(arbitraryChain(), fc.constant(homeCinema()), fc.constant(consoleAndPlayer())),
    wanted,
    fc.array(
      fc.record({
        link: fc.constantFrom('L1', 'L2', 'L3', 'L4', 'L5'),
        facts: fc.record({
          construction: fc.constantFrom(
            'passiveCopper',
            'activeCopper',
            'activeOptical',
            'twistedPairExtender',
          ),
          category: fc.constantFrom('standard', 'highSpeed', 'premiumHighSpeed', 'ultraHighSpeed', 'unknown'),
          certified: fc.boolean(),
          lengthM: fc.double({ min: 0.5, max: 130, noNaN: true }),
          factoryFittedEnds: fc.constantFrom(true, false, null),
          couplers: fc.constantFrom(0, 1),
          direction: fc.constantFrom('asMarked', 'reversed'),
        }),
      }),
      { maxLength: 2 },
    ),
    edid,
    fc.boolean(),
    passes,
  )
  .map(([base, wantedFormats, changes, edidHex, isLow, facts]) => {
    const changed = changes.reduce((of, { link, facts }) => withLink(of, link, facts as never), base);
    const seen = withPort(changed, 'projector', 'in1', { edidHex });
    const set = isLow ? withPort(seen, 'receiver', 'in1', { setMode: tmds9 }) : seen;
    return {
      ...set,
      wantedFormats,
      devices: set.devices.map((device, at) => {
        const known = facts[at % (facts.length + 1)];
        return known === undefined ? device : { ...device, passes: known };
      }),
    };
  });

const linkOf = (chain: Chain, { place }: Finding): string | undefined =>
  place.kind === 'link'
    ? place.linkId
    : chain.links.find(
        ({ from, to }) =>
          place.kind === 'port' &&
          [from, to].some(({ deviceId, portId }) => deviceId === place.deviceId && portId === place.portId),
      )?.id;

/** Links that a finding names besides its place: one picture that doesn't go is told once for all of them. */
function alsoNamed(chain: Chain, { text }: Finding): string[] {
  if (text.code !== 'alsoOnLinks') return [];
  const named = text.values.links as unknown[];
  const names = new Set(named.map((link) => JSON.stringify(link)));
  return chain.links.filter((link) => names.has(JSON.stringify(namedLink(chain, link)))).map(({ id }) => id);
}

const keptOutByEdid = (chain: Chain): Set<string> =>
  new Set(
    linkFaults(chain, { requiredGbps: 18 })
      .filter(({ faults }) => faults.some(({ of }) => of === 'edid'))
      .map(({ run }) => run.link.id),
  );

const linksTold = (chain: Chain, findings: readonly Finding[]): Set<string | undefined> =>
  new Set(findings.flatMap((found) => [linkOf(chain, found), ...alsoNamed(chain, found)]));

const lossyIn = (wanted: readonly WantedOnLink[]): string[] =>
  wanted.flatMap(({ losses }) => losses.map(({ deviceId }) => deviceId));

/** Devices at which something of a picture is said to get lost, or to be kept out. */
const toldAtDevices = (findings: readonly Finding[]): Set<string> =>
  new Set(
    findings
      .filter(({ rule }) => rule === 'picture-loss' || rule === 'edid-management')
      .flatMap(({ place }) => (place.kind === 'device' ? [place.deviceId] : [])),
  );

/** What an EDID keeps out is told where it comes from: at a link or a device behind. */
function isToldFrom(
  chain: Chain,
  deviceId: string,
  told: { links: ReadonlySet<string | undefined>; devices: ReadonlySet<string> },
): boolean {
  const behind = [...downstreamOf(chain, deviceId).add(deviceId)];
  return (
    behind.some((id) => told.devices.has(id)) ||
    chain.links.some(({ id, from }) => behind.includes(from.deviceId) && told.links.has(id))
  );
}

describe('audit and budget', () => {
  it('agree link by link: a fault is found exactly where a wanted format can’t be counted on', () => {
    fc.assert(
      fc.property(chains, (chain) => {
        const budget = chainBudget(chain, chain.wantedFormats);
        const faulty = linkFaults(chain, { requiredGbps: 18 });
        for (const { id, wanted } of budget.links) {
          const fits = wanted.every(({ verdict }) => verdict === 'fits');
          const faults = faulty.find(({ run }) => run.link.id === id)?.faults ?? [];
          expect([id, faults.length === 0, JSON.stringify({ faults, wanted })]).toEqual([
            id,
            fits,
            expect.anything(),
          ]);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('agree in what is told: a chain without such findings has a budget that fits, and the other way round', () => {
    fc.assert(
      fc.property(chains, (chain) => {
        const findings = fullAudit(chain, {}, {}, []);
        const told = (rules: string[], also: Finding['severity'][] = []) =>
          linksTold(
            chain,
            findings.filter(({ rule, severity }) => rules.includes(rule) && !also.includes(severity)),
          );
        // Ends, direction and supply are told whatever is wanted, and stand for the fault where there is one.
        const lossyDevices = toldAtDevices(findings);
        const standing = told([...ofCapacity, 'factory-fitted-ends', 'direction', 'end-power']);
        const urgent = told(ofCapacity, ['note']);
        const keptOut = keptOutByEdid(chain);
        const isToldBehind = (id: string, sinkId: string): boolean =>
          keptOut.has(id) && isToldFrom(chain, sinkId, { links: standing, devices: lossyDevices });
        for (const { id, to, wanted } of chainBudget(chain, chain.wantedFormats).links) {
          for (const deviceId of lossyIn(wanted)) expect(lossyDevices).toContain(deviceId);
          const isCarried = wanted.every(({ verdict }) => verdict === 'fits' || verdict === 'reduced');
          if (!isCarried && !isToldBehind(id, to.deviceId)) expect(standing).toContain(id);
          else if (wanted.every(({ verdict }) => verdict === 'fits')) expect(urgent).not.toContain(id);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('tell one fault once: nothing about one cable has to be put right twice', () => {
    const ofTheCable = [
      'certification',
      'length-long',
      'couplers',
      'factory-fitted-ends',
      'direction',
      'five-volt',
    ];
    fc.assert(
      fc.property(chains, (chain) => {
        const urgent = fullAudit(chain, {}, {}, [])
          .filter(({ rule, severity }) => severity === 'mustFix' && ofTheCable.includes(rule))
          .filter(({ place }) => place.kind === 'link');
        // A passive cable the wrong way round passes all the same, so that its rate is a fault of its own; so is a weak 5 V line.
        const ofRate = urgent
          .filter(({ rule }) => rule !== 'direction' && rule !== 'five-volt')
          .map(({ place }) => placeText(place));
        expect(new Set(ofRate).size).toBe(ofRate.length);
      }),
      { numRuns: 100 },
    );
  });
});
