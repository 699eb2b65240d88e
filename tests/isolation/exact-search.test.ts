import { describe, expect, it } from 'vitest';
import type { Candidate } from '../../shared/isolation/candidates.ts';
import type { Decision, Option } from '../../shared/isolation/decision.ts';
import { searchExactly } from '../../shared/isolation/exact-search.ts';
import { randomFrom } from '../support/random.ts';

const candidate = (id: string): Candidate => ({
  id,
  action: { kind: 'menu', deviceId: id },
  setupMin: 0,
  restoreMin: 0,
  kit: [],
  people: 1,
  riskMin: 0,
});

/** Three components of two classes each, some tests of random outcome; every second one can be gone on with. */
function decisionFrom(seed: number, tests: number): Decision {
  const random = randomFrom(seed);
  const weights = Array.from({ length: 6 }, () => 0.05 + random());
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const options: Option[] = [];
  const add = (id: string, after: number, resumeMin: number) =>
    options.push({
      candidate: candidate(id),
      first: Float64Array.from(weights, () => (random() < 0.5 ? 0.02 : 0.95)),
      firstMin: 5 + 60 * random(),
      secondMin: 5 + 30 * random(),
      handlingMin: 0,
      isRepair: false,
      exposure: 1,
      after,
      resumeMin,
    });
  for (let test = 0; test < tests; test += 1) {
    add(`${test}`, -1, test === 0 ? 12 : 0);
    if (test % 2 === 0) add(`${test}`, options.length - 1, 20);
  }
  return {
    chances: Float64Array.from(weights, (weight) => weight / total),
    groupOf: Int32Array.from([0, 0, 1, 1, 2, 2]),
    groups: ['a', 'b', 'c'],
    options,
    nameAt: 0.95,
    escalationMin: 200,
  };
}

/** Minutes from here on at best: every order of every test tried, beliefs by Bayes' rule, nothing remembered or cut. */
function leastMin(
  decision: Decision,
  chances: number[],
  outcomes: ReadonlyMap<number, boolean>,
  inPlace: number,
): number {
  const sums = decision.groups.map((_, group) =>
    chances.reduce((sum, chance, at) => sum + (decision.groupOf[at] === group ? chance : 0), 0),
  );
  if (Math.max(...sums) >= decision.nameAt) return 0;
  const through = decision.options.map((_, index) =>
    minutesThrough(decision, chances, outcomes, inPlace, index),
  );
  return Math.min(decision.escalationMin, ...through);
}

function minutesThrough(
  decision: Decision,
  chances: number[],
  outcomes: ReadonlyMap<number, boolean>,
  inPlace: number,
  index: number,
): number {
  const option = decision.options[index];
  if (option === undefined || outcomes.has(index)) return Number.POSITIVE_INFINITY;
  if (option.after !== -1 && outcomes.get(option.after) !== true) return Number.POSITIVE_INFINITY;
  const stays = inPlace === index || (option.after !== -1 && inPlace === option.after);
  return [true, false].reduce((sum, isFirst) => {
    const joint = chances.map((chance, at) => {
      const first = option.first[at] ?? 0;
      return chance * (isFirst ? first : 1 - first);
    });
    const weight = joint.reduce((all, each) => all + each, 0);
    const minutes = (stays ? 0 : option.resumeMin) + (isFirst ? option.firstMin : option.secondMin);
    const after = new Map([...outcomes, [index, isFirst] as const]);
    const then = leastMin(
      decision,
      joint.map((each) => each / weight),
      after,
      isFirst ? index : -2,
    );
    return sum + weight * (minutes + then);
  }, 0);
}

describe('the exact search', () => {
  it.each([1, 2, 3, 4, 5, 6])('finds what trying every order of every test finds, decision %i', (seed) => {
    const decision = decisionFrom(seed, 3);
    const found = searchExactly(decision, 3);
    // the first test is in place: going on with it straight away costs no set-up
    const values = decision.options.map((_, index) =>
      minutesThrough(decision, [...decision.chances], new Map(), 0, index),
    );
    const open = values.filter(Number.isFinite).toSorted((a, b) => a - b);
    expect(found?.ranked).toHaveLength(open.length);
    for (const [at, { expectedMin }] of (found?.ranked ?? []).entries())
      expect(expectedMin).toBeCloseTo(open[at] ?? Number.NaN, 9);
  });

  it('declines more tests than it was asked for', () => {
    expect(searchExactly(decisionFrom(1, 3), 2)).toBeNull();
  });
});
