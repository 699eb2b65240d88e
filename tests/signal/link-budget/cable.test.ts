import { describe, expect, it } from 'vitest';
import type { Link } from '../../../shared/contract/chain.ts';
import { organisationDefaults } from '../../../shared/contract/defaults.ts';
import { cableCapacity } from '../../../shared/signal/link-budget/cable.ts';
import { cable, opticalCable } from '../../chain/build-chain.ts';

const capacity = (facts: Partial<Link>) =>
  cableCapacity(cable('a.out', 'b.in', facts), organisationDefaults.budget);
const frl = (lanes: 3 | 4, gbpsPerLane: 3 | 6 | 8 | 10 | 12) => ({ lanes, gbpsPerLane });

describe('what a cable is good for', () => {
  // HDMI compliance programme: 74.25 MHz, 340 MHz, 18 Gbit/s, 48 Gbit/s.
  it.each([
    ['standard', 74.25, null],
    ['highSpeed', 340, frl(3, 3)],
    ['premiumHighSpeed', 600, frl(3, 6)],
    ['ultraHighSpeed', 600, frl(4, 12)],
  ] as const)('of category %s, certified and short, is %f MHz', (category, tmdsMHz, rate) => {
    expect(capacity({ category })).toEqual({
      rated: { tmdsMHz, frl: rate },
      sure: { tmdsMHz, frl: rate },
      doubts: [],
    });
  });

  it('is counted down until somebody saw its label', () => {
    const found = capacity({ category: 'ultraHighSpeed', certified: false });
    expect(found.rated).toEqual({ tmdsMHz: 600, frl: frl(4, 12) });
    expect(found.sure).toEqual({ tmdsMHz: 600, frl: frl(4, 8) });
    expect(capacity({ certified: false }).sure).toEqual({ tmdsMHz: 480, frl: frl(3, 3) });
    expect(found.doubts).toEqual([{ code: 'doubtCertification', values: {} }]);
  });

  it('is counted as High Speed while its category is not known, though it may turn out to be anything', () => {
    const found = capacity({ category: 'unknown', certified: false });
    expect(found.sure.tmdsMHz).toBe(340);
    expect(found.rated).toEqual({ tmdsMHz: 600, frl: frl(4, 12) });
    expect(found.doubts).toEqual([{ code: 'doubtCategory', values: {} }]);
  });

  it('falls with the length past its reach, whatever the category', () => {
    const long = (facts: Partial<Link>) => capacity({ certified: false, ...facts });
    for (const category of ['premiumHighSpeed', 'ultraHighSpeed'] as const) {
      expect(long({ category, lengthM: 10 }).sure.tmdsMHz).toBeCloseTo(340, 9);
      expect(long({ category, lengthM: 15 }).sure.tmdsMHz).toBeCloseTo(74.25, 9);
      expect(long({ category, lengthM: 30 }).sure.tmdsMHz).toBeCloseTo(74.25 / 4, 9);
    }
    expect(long({ lengthM: 15 }).doubts).toMatchObject([
      { code: 'doubtCertification' },
      { code: 'doubtLength', values: { length: 15 } },
    ]);
    expect(long({ lengthM: 15, construction: 'activeCopper' }).sure.tmdsMHz).toBe(480);
    expect(long({ lengthM: 60, construction: 'activeOptical' }).sure.tmdsMHz).toBe(480);
  });

  it('reaches further with a label that was seen, and keeps its rate by that label', () => {
    expect(capacity({ lengthM: 11 }).sure.tmdsMHz).toBe(600);
    expect(capacity({ lengthM: 12 }).sure.tmdsMHz).toBeLessThan(600);
    expect(capacity({ lengthM: 12 }).rated.tmdsMHz).toBe(600);
    expect(capacity({ lengthM: 12, certified: false }).rated.tmdsMHz).toBeLessThan(600);
  });

  it('goes by its gauge: a thinner wire reaches less far', () => {
    const at = (gaugeAwg: number) => capacity({ certified: false, lengthM: 7, gaugeAwg }).sure.tmdsMHz;
    expect(at(30)).toBeLessThan(at(26));
    expect(at(24)).toBe(at(26));
  });

  it('counts ends fitted on site and couplers on top of what else there is', () => {
    const found = capacity({ certified: false, factoryFittedEnds: false, couplers: 2 });
    expect(found.sure.tmdsMHz).toBeCloseTo(600 * 0.8 * 0.8 * 0.8 ** 2, 9);
    expect(found.doubts).toHaveLength(3);
    expect(capacity({ construction: 'activeOptical', couplers: 1 }).sure.tmdsMHz).toBe(0);
  });

  it('is nothing for a directional cable the wrong way round, or without its power', () => {
    const reversed = cableCapacity(
      opticalCable('a.out', 'b.in', { direction: 'reversed' }),
      organisationDefaults.budget,
    );
    expect(reversed.sure).toEqual({ tmdsMHz: 0, frl: null });
    expect(reversed.rated.tmdsMHz).toBe(0);
    expect(reversed.doubts).toEqual([{ code: 'doubtReversed', values: {} }]);
    const unpowered = cableCapacity(
      opticalCable('a.out', 'b.in', { sinkEnd: { needsPower: true, powered: 'no', seated: 'yes' } }),
      organisationDefaults.budget,
    );
    expect(unpowered.sure.tmdsMHz).toBe(0);
    expect(capacity({ direction: 'reversed' }).sure.tmdsMHz).toBe(600);
  });

  it('is what its maker says of an extender, what most of them pass without that, and nothing past its reach', () => {
    const extender = (facts: Partial<Link>) =>
      capacity({ construction: 'twistedPairExtender', category: 'unknown', lengthM: 40, ...facts });
    expect(extender({})).toMatchObject({
      sure: { tmdsMHz: 340, frl: null },
      rated: { tmdsMHz: 600, frl: null },
      doubts: [{ code: 'doubtExtender' }],
    });
    expect(extender({ category: 'premiumHighSpeed' }).sure).toEqual({ tmdsMHz: 600, frl: null });
    expect(extender({ rated: { gbps: 18, lengthM: 50 } }).sure).toEqual({ tmdsMHz: 600, frl: null });
    expect(extender({ rated: { gbps: 18, lengthM: 30 } }).rated.tmdsMHz).toBeLessThan(74.25);
    expect(extender({ lengthM: 150 }).rated.tmdsMHz).toBeLessThan(74.25);
  });

  it('is what its maker says of active copper, as far as that', () => {
    const facts = { construction: 'activeCopper', category: 'unknown', certified: false } as const;
    const rated = { gbps: 18, lengthM: 15 };
    expect(capacity({ ...facts, rated, lengthM: 15 }).sure.tmdsMHz).toBe(600);
    expect(capacity({ ...facts, rated, lengthM: 17 }).sure.tmdsMHz).toBeLessThan(594);
    const short = { gbps: 18, lengthM: 5 };
    expect(capacity({ ...facts, rated: short, lengthM: 8 }).sure.tmdsMHz).toBeLessThan(594);
  });

  it('follows what an organisation assumes', () => {
    const link = cable('a.out', 'b.in', { certified: false });
    expect(cableCapacity(link, { ...organisationDefaults.budget, uncertified: 0.7 }).sure.tmdsMHz).toBe(420);
  });
});
