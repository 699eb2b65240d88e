import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quietChance, withWatch } from '../../shared/isolation/fault-rate.ts';
import {
  requiredQuietAfter,
  requiredQuietWatchMin,
  type TimeRecord,
  twoRatesRisk,
} from '../../shared/isolation/quiet-length.ts';
import { reportedAsWatched } from '../../shared/isolation/reported.ts';
import { judgeRetest } from '../../shared/isolation/retest-statistics.ts';
import { burstsOf, expectedIndependent, independentOf } from '../../shared/isolation/rhythm.ts';
import { randomFrom } from '../support/random.ts';

const watch = fc.record({
  times: fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 1, maxLength: 60 }),
  rest: fc.double({ min: 0, max: 200, noNaN: true }),
  told: fc.constantFrom('random', 'bursts', 'warm', 'notKnown', 'always', 'trigger'),
} as const);
const recordOf = (times: readonly number[], minutes: number): TimeRecord => ({
  mode: 'time',
  minutes,
  occurrences: times.length,
  independent: independentOf(times, minutes, 'notKnown'),
});

describe('occurrences that may hang together', () => {
  it('are parted in ways whose chances add up to one, whatever the times', () => {
    fc.assert(
      fc.property(watch, ({ times, rest, told }) => {
        const chances = independentOf(times, Math.max(...times) + rest + 0.1, told);
        expect(chances.length).toBeLessThanOrEqual(times.length);
        expect(chances.every((chance) => chance >= 0 && chance <= 1)).toBe(true);
        expect(chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('count once when close together and far from the watch’s ends, and nearly each when spread evenly', () => {
    const burst = independentOf([200, 200.5, 201, 202], 240, 'notKnown');
    expect(expectedIndependent(burst)).toBeLessThan(1.1);
    const even = independentOf([60, 130, 185, 240], 240, 'random');
    expect(expectedIndependent(even)).toBeGreaterThan(3.5);
  });

  it('are fewer the closer two of them lie', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 50, noNaN: true }), (gap) => {
        const at = (apart: number) => expectedIndependent(independentOf([100, 100 + apart], 200, 'notKnown'));
        expect(at(gap * 1.2)).toBeGreaterThanOrEqual(at(gap) - 1e-9);
      }),
    );
  });

  it('take a longer retest than independent ones, never a shorter one', () => {
    fc.assert(
      fc.property(watch, ({ times, rest }) => {
        const minutes = Math.max(...times) + rest + 0.1;
        const plain = requiredQuietWatchMin(times.length, minutes, 0.05) ?? 0;
        const needed = requiredQuietAfter(recordOf(times, minutes), 0.05) ?? 0;
        expect(needed).toBeGreaterThanOrEqual(plain * (1 - 1e-9));
        const quiet = { minutes: needed, occurrences: 0 };
        expect(twoRatesRisk(recordOf(times, minutes), quiet)).toBeLessThanOrEqual(0.05 * (1 + 1e-9));
      }),
    );
  });

  it('give the ranking of suspects the same chance of a quiet spell as the verdict', () => {
    fc.assert(
      fc.property(watch, fc.double({ min: 0.5, max: 500, noNaN: true }), ({ times, rest }, quietMin) => {
        const baseline = recordOf(times, Math.max(...times) + rest + 0.1);
        const risk = judgeRetest(baseline, { mode: 'time', minutes: quietMin, occurrences: 0 });
        expect(quietChance(baseline, quietMin)).toBeCloseTo(risk.riskOfBeingFooled ?? -1, 9);
      }),
    );
  });

  it('stay one thing over two quiet watches: the second counts on from the first', () => {
    fc.assert(
      fc.property(watch, ({ times, rest }) => {
        const baseline = recordOf(times, Math.max(...times) + rest + 0.1);
        const then = withWatch(baseline, { mode: 'time', minutes: 40, occurrences: 0 });
        expect(quietChance(baseline, 40) * quietChance(then, 60)).toBeCloseTo(quietChance(baseline, 100), 9);
      }),
    );
  });

  it('are counted by bursts where there are very many', () => {
    const times = Array.from({ length: 300 }, (_, at) => Math.floor(at / 10) * 60 + (at % 10));
    expect(burstsOf(times)).toHaveLength(30);
    expect(expectedIndependent(independentOf(times, 1800, 'random'))).toBeLessThanOrEqual(30);
  });
});

type Bursts = { perHour: number; size: number; gapMin: number };

/** Moments at which a fault comes within ten watches' time. */
function comesAt({ perHour, size, gapMin }: Bursts, random: () => number): number[] {
  const after = (meanMin: number) => -Math.log(1 - random()) * meanMin;
  const times: number[] = [];
  for (let start = after(60 / perHour); start < 4800; start += after(60 / perHour)) {
    let at = start;
    do {
      times.push(at);
      at += after(gapMin);
    } while (random() > 1 / size);
  }
  return times.toSorted((a, b) => a - b);
}

/** How often a change that did nothing is called cleared, with the retest's length as the statistics ask for it. */
function falseClears(bursts: Bursts, retests: number): number {
  const random = randomFrom(20_261_129);
  let [judged, cleared] = [0, 0];
  while (judged < retests) {
    const times = comesAt(bursts, random);
    const seen = times.filter((at) => at < 480).slice(0, 3);
    if (seen.length === 0) continue;
    judged += 1;
    const minutes = seen.length === 3 ? (seen[2] ?? 0) : 480;
    const needed = requiredQuietAfter(recordOf(seen, minutes), 0.05) ?? Infinity;
    // Ten minutes for making the change, in which nobody watches.
    const next = times.find((at) => at > minutes + 10) ?? Infinity;
    if (next - minutes - 10 > needed) cleared += 1;
  }
  return cleared / judged;
}

describe('a change that did nothing', () => {
  // 4,000 retests at 5 %: two standard errors are 0.7 points.
  it.each([
    { perHour: 1, size: 3, gapMin: 2 },
    { perHour: 0.5, size: 4, gapMin: 5 },
    { perHour: 2, size: 2, gapMin: 3 },
  ])('is not called cleared more often than allowed where the fault comes in bursts: %o', (bursts) => {
    expect(falseClears(bursts, 4000)).toBeLessThan(0.067);
  });
});

describe('a rate from reports and from a watch whose occurrences may hang together', () => {
  it('is of both together, though reports count for halves', () => {
    const reported = reportedAsWatched({ days: 10, occurrences: 3 });
    const burst = { mode: 'time', minutes: 60, occurrences: 2, independent: [0.3, 0.7] } as const;
    // Reports that count for one and a half are one or two; the watch's two are one or two: two to four in all.
    expect(withWatch(reported, burst)).toEqual({
      mode: 'time',
      minutes: reported.minutes + 60,
      occurrences: 3.5,
      independent: [0, expect.any(Number), expect.any(Number), expect.any(Number)],
    });
    const { independent = [] } = withWatch(reported, burst) as TimeRecord;
    expect(independent.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1);
    expect(quietChance(withWatch(reported, burst), 600)).toBeLessThan(quietChance(reported, 600));
  });
});
