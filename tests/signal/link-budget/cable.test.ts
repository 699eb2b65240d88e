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
    expect(found.sure).toEqual({ tmdsMHz: 480, frl: frl(4, 8) });
    expect(found.doubts).toEqual([{ code: 'doubtCertification', values: {} }]);
  });

  it('is counted as High Speed while its category is not known, though it may turn out to be anything', () => {
    const found = capacity({ category: 'unknown', certified: false });
    expect(found.sure.tmdsMHz).toBe(340);
    expect(found.rated).toEqual({ tmdsMHz: 600, frl: frl(4, 12) });
    expect(found.doubts).toEqual([{ code: 'doubtCategory', values: {} }]);
  });

  it('falls with the square of the length past its reach', () => {
    const twice = capacity({ lengthM: 15.2 });
    expect(twice.sure.tmdsMHz).toBeCloseTo(150, 9);
    expect(twice.rated.tmdsMHz).toBe(600);
    expect(twice.doubts).toEqual([{ code: 'doubtLength', values: { length: 15.2, counted: 7.6 } }]);
    expect(capacity({ lengthM: 15.2, construction: 'activeCopper' }).doubts).toEqual([]);
    expect(capacity({ lengthM: 60, construction: 'activeOptical' }).doubts).toEqual([]);
  });

  it('counts several doubts one on top of the other', () => {
    const found = capacity({ certified: false, factoryFittedEnds: false, lengthM: 15.2 });
    expect(found.sure.tmdsMHz).toBeCloseTo(600 * 0.8 * 0.8 * 0.25, 9);
    expect(found.doubts).toHaveLength(3);
  });

  it('is nothing for a directional cable the wrong way round, or without its power', () => {
    const reversed = cableCapacity(
      opticalCable('a.out', 'b.in', { direction: 'reversed' }),
      organisationDefaults.budget,
    );
    expect(reversed.sure).toEqual({ tmdsMHz: 0, frl: null });
    expect(reversed.doubts).toEqual([{ code: 'doubtReversed', values: {} }]);
    const unpowered = cableCapacity(
      opticalCable('a.out', 'b.in', { sinkEnd: { needsPower: true, powered: 'no', seated: 'yes' } }),
      organisationDefaults.budget,
    );
    expect(unpowered.sure.tmdsMHz).toBe(0);
    expect(capacity({ direction: 'reversed' }).sure.tmdsMHz).toBe(600);
  });

  it('is what most of them pass for an extender, whatever its label', () => {
    const found = capacity({ construction: 'twistedPairExtender', category: 'ultraHighSpeed', lengthM: 40 });
    expect(found.sure).toEqual({ tmdsMHz: 340, frl: null });
  });

  it('follows what an organisation assumes', () => {
    const link = cable('a.out', 'b.in', { certified: false });
    expect(cableCapacity(link, { ...organisationDefaults.budget, uncertified: 0.5 }).sure.tmdsMHz).toBe(300);
  });
});
