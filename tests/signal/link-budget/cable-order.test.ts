import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Link } from '../../../shared/contract/chain.ts';
import { knownCategories, linkConstructions } from '../../../shared/contract/chain-names.ts';
import { organisationDefaults } from '../../../shared/contract/defaults.ts';
import { cableCapacity } from '../../../shared/signal/link-budget/cable.ts';
import { frlGbps } from '../../../shared/signal/link-budget/capacity.ts';
import { laneAt, reachAt, reachOf } from '../../../shared/signal/link-budget/reach.ts';
import { cable } from '../../chain/build-chain.ts';

const hdmi = linkConstructions.filter((each) => each !== 'twistedPairExtender');
const facts = fc.record({
  construction: fc.constantFrom(...linkConstructions),
  category: fc.constantFrom(...knownCategories),
  certified: fc.boolean(),
  lengthM: fc.double({ min: 0.2, max: 200, noNaN: true }),
  factoryFittedEnds: fc.constantFrom(true, false, null),
  gaugeAwg: fc.option(fc.integer({ min: 22, max: 32 }), { nil: undefined }),
  couplers: fc.option(fc.nat(3), { nil: undefined }),
  rated: fc.option(
    fc.record({
      gbps: fc.constantFrom(10.2, 18, 24, 48),
      lengthM: fc.option(fc.integer({ min: 5, max: 60 })),
    }),
    { nil: undefined },
  ),
});
/** An organisation's own figures, in whatever order they lie. */
const reaches = fc.record({
  standard: fc.double({ min: 1, max: 60, noNaN: true }),
  highSpeed: fc.double({ min: 1, max: 60, noNaN: true }),
  premiumHighSpeed: fc.double({ min: 1, max: 60, noNaN: true }),
  ultraHighSpeed: fc.double({ min: 1, max: 60, noNaN: true }),
});
const assumptions = fc.option(reaches, { nil: undefined }).map((own) => ({
  ...organisationDefaults.budget,
  ...(own === undefined ? {} : { passiveCopperReachM: own }),
}));

type Facts = { [Fact in keyof Link]?: Link[Fact] | undefined };
const capacity = (link: Facts, own = organisationDefaults.budget as Parameters<typeof cableCapacity>[1]) =>
  cableCapacity(cable('a.out', 'b.in', link as Partial<Link>), own);

/** Neither of what it may pass nor of what is counted on does the worse cable have more. */
function expectNoMore(worse: Facts, better: Facts, own: Parameters<typeof cableCapacity>[1]) {
  const [less, more] = [capacity(worse, own), capacity(better, own)];
  for (const which of ['rated', 'sure'] as const) {
    expect(less[which].tmdsMHz).toBeLessThanOrEqual(more[which].tmdsMHz + 1e-6);
    expect(frlGbps(less[which].frl)).toBeLessThanOrEqual(frlGbps(more[which].frl));
  }
}
const runs = { numRuns: 500 };

describe('what a cable passes', () => {
  it('is never more than it may', () => {
    fc.assert(
      fc.property(facts, assumptions, (link, own) => {
        const { sure, rated } = capacity(link, own);
        expect(sure.tmdsMHz).toBeLessThanOrEqual(rated.tmdsMHz);
        expect(frlGbps(sure.frl)).toBeLessThanOrEqual(frlGbps(rated.frl));
      }),
      runs,
    );
  });

  it('is never more when it is longer', () => {
    fc.assert(
      fc.property(facts, assumptions, fc.double({ min: 0, max: 50, noNaN: true }), (link, own, more) => {
        expectNoMore({ ...link, lengthM: link.lengthM + more }, link, own);
      }),
      runs,
    );
  });

  it('is never less of a higher category', () => {
    fc.assert(
      fc.property(facts, assumptions, fc.constantFrom(...knownCategories), (link, own, category) => {
        const [lower = category, higher = category] = [link.category, category].sort(
          (a, b) => knownCategories.indexOf(a) - knownCategories.indexOf(b),
        );
        expectNoMore({ ...link, category: lower }, { ...link, category: higher }, own);
      }),
      runs,
    );
  });

  it('is never less once its label was seen', () => {
    fc.assert(
      fc.property(facts, assumptions, (link, own) => {
        expectNoMore({ ...link, certified: false }, { ...link, certified: true }, own);
      }),
      runs,
    );
  });

  it('is never less of a better construction', () => {
    fc.assert(
      fc.property(facts, assumptions, fc.constantFrom(...hdmi), (link, own, construction) => {
        // A joint costs electronics more than it costs copper, and a maker's figure is of one construction.
        const plain = { ...link, couplers: 0, rated: undefined };
        if (link.construction === 'twistedPairExtender') return;
        const [worse = construction, better = construction] = [link.construction, construction].sort(
          (a, b) => hdmi.indexOf(a) - hdmi.indexOf(b),
        );
        expectNoMore({ ...plain, construction: worse }, { ...plain, construction: better }, own);
      }),
      runs,
    );
  });
});

describe('the reach of a construction', () => {
  it('never grows with the rate, and is the rate at a length the other way round', () => {
    const lane = fc.double({ min: 0.25, max: 12, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...hdmi), assumptions, lane, lane, (construction, own, a, b) => {
        const reach = reachOf({ construction }, own);
        const [slow, fast] = [Math.min(a, b), Math.max(a, b)];
        expect(reachAt(reach, fast)).toBeLessThanOrEqual(reachAt(reach, slow) + 1e-9);
        // The length is rounded to a tenth of a metre before it is judged.
        const within = Math.floor(reachAt(reach, fast) * 10) / 10;
        expect(laneAt(reach, within)).toBeGreaterThanOrEqual(fast - 1e-9);
      }),
      runs,
    );
  });
});
