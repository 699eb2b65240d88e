import { describe, expect, it } from 'vitest';
import type { Decision, Option } from '../../shared/isolation/decision.ts';
import type { TestKind } from '../../shared/isolation/effect-table.ts';
import { isReversible, reversibleFirst } from '../../shared/isolation/reversible-first.ts';

const option = (test: TestKind, first: number[], minutes: number): Option => ({
  candidate: {
    id: test,
    action: { kind: 'test', test, target: { kind: 'device', deviceId: 'processor' } },
    setupMin: minutes,
    restoreMin: 0,
    kit: [],
    people: 1,
    riskMin: 0,
  },
  first: Float64Array.from(first),
  firstMin: minutes,
  secondMin: minutes,
  handlingMin: minutes,
  isRepair: false,
  exposure: 1,
  after: -1,
  resumeMin: 0,
});
const decisionWith = (options: Option[]): Decision => ({
  chances: Float64Array.from([0.4, 0.3, 0.3]),
  groupOf: Int32Array.from([0, 1, 2]),
  groups: ['processor', 'receiver', 'player'],
  options,
  nameAt: 0.95,
  escalationMin: 960,
});
const idsOf = (ranked: readonly { option: Option }[]) =>
  ranked.map(({ option: { candidate } }) => candidate.id);

/** An update that parts the processor from the rest, and something else, by what it costs and tells. */
function orderOf(other: Option, [updateMin, otherMin]: [number, number], isRanked = true): string[] {
  const update = option('updateFirmware', [0.9, 0.1, 0.1], 40);
  const all = [
    { option: update, expectedMin: updateMin },
    { option: other, expectedMin: otherMin },
  ];
  const ranked = isRanked ? all : all.slice(0, 1);
  return idsOf(
    reversibleFirst(decisionWith([update, other]), ranked, (among) =>
      all.filter(({ option: each }) => among(each)),
    ),
  );
}

describe('what can’t be undone', () => {
  it('is an update of firmware, and no bypass', () => {
    expect(isReversible(option('updateFirmware', [1, 0, 0], 1))).toBe(false);
    expect(isReversible(option('bypassDevice', [1, 0, 0], 1))).toBe(true);
  });

  it('gives way to what is nearly as good, whatever that tells', () => {
    const other = option('reseat', [0.5, 0.9, 0.1], 5);
    expect(orderOf(other, [100, 112])).toEqual(['reseat', 'updateFirmware']);
    expect(orderOf(other, [100, 130])).toEqual(['updateFirmware', 'reseat']);
  });

  it('gives way to what tells the same suspects apart, at up to three times the minutes, ranked or not', () => {
    const same = (minutes: number) => option('bypassDevice', [0.95, 0.05, 0.1], minutes);
    expect(orderOf(same(110), [100, 300])).toEqual(['bypassDevice', 'updateFirmware']);
    expect(orderOf(same(110), [100, 300], false)).toEqual(['bypassDevice', 'updateFirmware']);
    expect(orderOf(same(130), [100, 300])).toEqual(['updateFirmware', 'bypassDevice']);
  });
});
