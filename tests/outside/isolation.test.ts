import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Place } from '../../shared/contract/chain.ts';
import { type Case, plainCase, type Result } from '../../shared/isolation/case.ts';
import { faultTable } from '../../shared/isolation/fault-table.ts';
import { faultModelOf } from '../../shared/isolation/hypotheses.ts';
import { effectAt, effectsOf } from '../../shared/isolation/likelihood.ts';
import { menuStaysChance } from '../../shared/isolation/menu-stays.ts';
import { posteriorOf } from '../../shared/isolation/posterior.ts';
import { expectedRepairMin, orderRepairs, type Repair } from '../../shared/isolation/repair-order.ts';
import { display, receiver, rowOf, source } from '../chain/build-chain.ts';
import { untoldPattern } from '../support/untold-pattern.ts';

describe('the order of repairs', () => {
  // Kadane and Simon 1977, Annals of Statistics 5:237: probability over cost is the best order without precedence.
  it('costs the least of all orders that there are', () => {
    const repairs = fc
      .array(
        fc.record({
          weight: fc.double({ min: 0.01, max: 1, noNaN: true }),
          minutes: fc.integer({ min: 1, max: 90 }),
        }),
        { minLength: 1, maxLength: 6 },
      )
      .chain((drawn) =>
        fc.double({ min: 0, max: 1, noNaN: true }).map((uncured) => {
          const total = drawn.reduce((sum, { weight }) => sum + weight, uncured);
          return drawn.map(({ weight, minutes }, at): Repair => {
            return { id: `r${at}`, probability: weight / total, minutes };
          });
        }),
      );
    fc.assert(
      fc.property(repairs, (all) => {
        const least = Math.min(...ordersOf(all).map(expectedRepairMin));
        expect(orderRepairs(all).expectedMin).toBeCloseTo(least, 9);
      }),
      { numRuns: 200 },
    );
  });

  it('is the worked case: half the chance for a fifth of the minutes goes first', () => {
    const { order, expectedMin, uncured } = orderRepairs([
      { id: 'replace', probability: 0.6, minutes: 50 },
      { id: 'reseat', probability: 0.3, minutes: 10 },
    ]);
    expect(order.map(({ id }) => id)).toEqual(['reseat', 'replace']);
    // 0.3 × 10 + 0.6 × 60 + 0.1 × 60
    expect(expectedMin).toBeCloseTo(45, 12);
    expect(uncured).toBeCloseTo(0.1, 12);
  });
});

function ordersOf<Item>(items: readonly Item[]): Item[][] {
  if (items.length === 0) return [[]];
  return items.flatMap((item, at) => ordersOf(items.toSpliced(at, 1)).map((rest) => [item, ...rest]));
}

/**
 * The joint table written out: every hypothesis × every course that each test can have taken × every behaviour of
 * each menu × the rate of the fault on a fine grid. Slow and plain; shares with the product what each change does (effectsOf) and
 * nothing of how that is summed up.
 */
function enumerate(facts: Case, results: readonly Result[]): number[] {
  const model = faultModelOf(facts, faultTable);
  const { baseline } = facts;
  if (baseline?.mode !== 'time') throw new Error('The joint table is written out for faults in time.');
  const slip = 0.02;
  const joint = model.hypotheses.map((hypothesis, at) => {
    const tests = groupedTests(results);
    const menus = groupedMenus(results);
    let total = 0;
    for (const [lambda, density] of gammaGrid(baseline.occurrences, baseline.minutes)) {
      let product = density;
      for (const { test, target, during, afterwards } of tests) {
        const { because, coincidence } = effectAt(effectsOf(model, { test, target }), at);
        const courses = [
          { chance: because, gone: true, comesBack: true },
          { chance: (1 - because) * coincidence, gone: true, comesBack: false },
          { chance: (1 - because) * (1 - coincidence), gone: false, comesBack: true },
        ];
        product *= courses.reduce((sum, course) => {
          const seen = during.reduce(
            (chance, watch) => chance * watchChance(watch, course.gone ? 0 : lambda),
            1,
          );
          const back = afterwards.reduce(
            (chance, watch) => chance * watchChance(watch, course.comesBack ? lambda : 0),
            1,
          );
          return sum + course.chance * seen * back;
        }, 0);
      }
      for (const [deviceId, answers] of menus) {
        const stays = menuStaysChance(model, deviceId, hypothesis);
        product *= [true, false].reduce((sum, behaves) => {
          const read = answers.map((stayed) => (stayed === behaves ? 1 - slip : slip));
          return sum + (behaves ? stays : 1 - stays) * read.reduce((chance, each) => chance * each, 1);
        }, 0);
      }
      total += product;
    }
    return (model.prior[at] ?? 0) * total;
  });
  const sum = joint.reduce((all, each) => all + each, 0);
  return joint.map((each) => each / sum);
}

type Watched = { minutes: number; occurrences: number };
type TestCourse = {
  test: Extract<Result, { kind: 'test' }>['test'];
  target: Place;
  during: Watched[];
  afterwards: Watched[];
};

/** Likelihood of a watch at a rate, up to a factor that no hypothesis changes. */
function watchChance({ minutes, occurrences }: Watched, lambda: number): number {
  return lambda === 0 ? (occurrences === 0 ? 1 : 0) : lambda ** occurrences * Math.exp(-lambda * minutes);
}

/** Gamma(shape n, rate T) on midpoints, unnormalised. */
function gammaGrid(n: number, minutes: number): [number, number][] {
  const steps = 4000;
  const highest = (n + 12 * Math.sqrt(n) + 30) / minutes;
  return Array.from({ length: steps }, (_, at) => {
    const lambda = ((at + 0.5) / steps) * highest;
    return [lambda, lambda ** (n - 1) * Math.exp(-lambda * minutes)];
  });
}

function groupedTests(results: readonly Result[]): TestCourse[] {
  const found = new Map<string, TestCourse>();
  for (const result of results) {
    if (result.kind !== 'test' && result.kind !== 'putBack') continue;
    const { test, target, watch } = result;
    if (watch.mode !== 'time') continue;
    const key = JSON.stringify([test, target]);
    const course = found.get(key) ?? { test, target, during: [], afterwards: [] };
    (result.kind === 'test' ? course.during : course.afterwards).push(watch);
    found.set(key, course);
  }
  return [...found.values()];
}

function groupedMenus(results: readonly Result[]): Map<string, boolean[]> {
  const found = new Map<string, boolean[]>();
  for (const result of results)
    if (result.kind === 'menu')
      found.set(result.deviceId, [...(found.get(result.deviceId) ?? []), result.answer === 'stayed']);
  return found;
}

describe('the posterior', () => {
  const chain = rowOf([source('player'), receiver('receiver'), display('projector')], {});
  const [L1, L2] = chain.links.map(({ id }): Place => ({ kind: 'link', linkId: id }));
  const facts: Case = {
    ...plainCase(chain, { kind: 'dropOuts', perHour: 3, lastsS: 2, ...untoldPattern }),
    baseline: { mode: 'time', minutes: 60, occurrences: 3 },
  };
  const watch = (minutes: number, occurrences: number) => ({ mode: 'time' as const, minutes, occurrences });
  const deviceAt = (deviceId: string): Place => ({ kind: 'device', deviceId });
  const first: Place = L1 ?? { kind: 'chain' };
  const second: Place = L2 ?? { kind: 'chain' };

  it.each<[string, Result[]]>([
    ['nothing', []],
    ['a short quiet retest', [{ kind: 'test', test: 'replaceCable', target: first, watch: watch(20, 0) }]],
    [
      'two quiet retests of parts of which one only can be at fault',
      [
        { kind: 'test', test: 'replaceCable', target: first, watch: watch(103, 0) },
        { kind: 'test', test: 'replaceCable', target: second, watch: watch(103, 0) },
      ],
    ],
    [
      'a menu that stayed twice, once not, and a fault that came in two watches of one change',
      [
        { kind: 'menu', deviceId: 'receiver', answer: 'stayed' },
        { kind: 'menu', deviceId: 'receiver', answer: 'stayed' },
        { kind: 'test', test: 'bypassDevice', target: deviceAt('receiver'), watch: watch(30, 0) },
        { kind: 'test', test: 'bypassDevice', target: deviceAt('receiver'), watch: watch(12, 1) },
        { kind: 'menu', deviceId: 'receiver', answer: 'vanished' },
      ],
    ],
    [
      'a change that cleared it, and the fault back without it',
      [
        { kind: 'test', test: 'temporaryCable', target: second, watch: watch(110, 0) },
        { kind: 'putBack', test: 'temporaryCable', target: second, watch: watch(18, 1) },
      ],
    ],
    [
      'a change that cleared it, and the fault away without it too',
      [
        { kind: 'test', test: 'reseat', target: first, watch: watch(110, 0) },
        { kind: 'putBack', test: 'reseat', target: first, watch: watch(80, 0) },
        { kind: 'test', test: 'reseat', target: second, watch: watch(25, 0) },
      ],
    ],
  ])('after %s is that of the joint table written out', (_name, results) => {
    const ours = posteriorOf(faultModelOf(facts, faultTable), results);
    const table = enumerate(facts, results);
    expect(ours).toHaveLength(table.length);
    for (const [at, chance] of ours.entries()) expect(chance).toBeCloseTo(table[at] ?? Number.NaN, 5);
  });
});
