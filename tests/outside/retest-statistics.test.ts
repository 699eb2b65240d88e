import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { chiSquaredUpperTailEven, lnFactorial } from '../../shared/isolation/exact-tails.ts';
import { twoRatesRisk, twoTrialsRisk } from '../../shared/isolation/quiet-length.ts';
import {
  noFaultFoundWatchMin,
  requiredQuietTries,
  requiredQuietWatchMin,
} from '../../shared/isolation/retest-statistics.ts';

describe('Fisher’s exact test', () => {
  // R. A. Fisher, The Design of Experiments (1935), ch. II: four cups of each kind, all eight told right.
  it('gives 1/70 for the lady who tells all eight cups of tea right', () => {
    const all = twoTrialsRisk({ tries: 4, failures: 4 }, { tries: 4, failures: 0 });
    expect(all).toBeCloseTo(1 / 70, 14);
  });

  // Same place: one pair exchanged or better is 17 of the 70 ways.
  it('gives 17/70 for one pair exchanged', () => {
    expect(twoTrialsRisk({ tries: 4, failures: 3 }, { tries: 4, failures: 1 })).toBeCloseTo(17 / 70, 14);
  });

  it('agrees with the hypergeometric distribution of jStat 1.9.6 over small tables', () => {
    let compared = 0;
    for (let tries = 1; tries <= 12; tries += 1)
      for (let failures = 0; failures <= tries; failures += 1)
        for (let more = 1; more <= 12; more += 1)
          for (let failed = 0; failed <= Math.min(more, 4); failed += 1) {
            const ours = twoTrialsRisk({ tries, failures }, { tries: more, failures: failed });
            const theirs = jStat.hypgeom.cdf(failed, tries + more, failures + failed, more);
            expect(Math.abs(ours - theirs)).toBeLessThan(1e-9);
            compared += 1;
          }
    expect(compared).toBeGreaterThan(3000);
  });
});

describe('the conditional test of two Poisson rates', () => {
  // Przyborowski and Wilenski 1940: given the sum, the count in one period is binomial. jStat reaches the tail by
  // the incomplete beta function's continued fraction, ours by summing terms;
  // it stops its fraction at about 1e-8.
  it('agrees with the binomial and beta distributions of jStat 1.9.6', () => {
    let compared = 0;
    for (const n of [1, 2, 3, 5, 8, 13, 40, 150])
      for (const k of [0, 1, 2, 7, 60])
        for (const [before, after] of [
          [60, 102.9],
          [30, 45.5],
          [600, 20],
          [10, 500],
        ] as const) {
          const ours = twoRatesRisk({ minutes: before, occurrences: n }, { minutes: after, occurrences: k });
          const share = after / (before + after);
          expect(ours).toBeCloseTo(jStat.binomial.cdf(k, n + k, share), 7);
          expect(ours).toBeCloseTo(jStat.beta.cdf(1 - share, n, k + 1), 7);
          compared += 1;
        }
    expect(compared).toBe(160);
  });

  it('asks 102.9 quiet minutes after 3 occurrences in 60 at 5 %, where the library’s tail is 5 %', () => {
    const needed = requiredQuietWatchMin(3, 60, 0.05) ?? Number.NaN;
    expect(needed).toBeCloseTo(102.865, 3);
    expect(jStat.binomial.cdf(0, 3, needed / (60 + needed))).toBeCloseTo(0.05, 9);
  });
});

describe('the rule of three', () => {
  // Hanley and Lippman-Hand 1983, JAMA 249:1743: nothing in n leaves a rate of up to 3/n with 95 % confidence.
  it('is the limit of the required watch when the baseline is long and its rate well known', () => {
    const ratePerMin = 0.05;
    const limit = 3 / ratePerMin;
    const watches = [20, 200, 2000, 20_000].map(
      (n) => requiredQuietWatchMin(n, n / ratePerMin, 0.05) ?? Number.NaN,
    );
    expect(watches).toEqual([...watches].sort((a, b) => b - a));
    expect(Math.abs((watches.at(-1) ?? Number.NaN) / limit - 1)).toBeLessThan(0.002);
  });

  it('is the limit of the required tries when a long baseline failed rarely', () => {
    const tries = requiredQuietTries(2_000, 200_000, 0.05) ?? Number.NaN;
    expect(Math.abs(tries / 300 - 1)).toBeLessThan(0.01);
  });

  it('is the watch behind “no fault found” for a reported rate', () => {
    expect(Math.abs(noFaultFoundWatchMin(2, 0.05) / 90 - 1)).toBeLessThan(0.002);
  });
});

describe('special functions', () => {
  it('agree with jStat 1.9.6', () => {
    for (const n of [0, 1, 2, 10, 23, 24, 25, 100, 5000])
      expect(Math.abs(lnFactorial(n) - jStat.factorialln(n))).toBeLessThan(1e-9 * Math.max(1, n));
    for (const x of [0.5, 3, 9.9, 18.3, 40])
      expect(chiSquaredUpperTailEven(x, 10)).toBeCloseTo(1 - jStat.chisquare.cdf(x, 10), 10);
  });

  // Abramowitz and Stegun 1964, table 26.8: chi-squared of 10 degrees exceeds 18.307 with 5 %.
  it('match the printed table', () => {
    expect(chiSquaredUpperTailEven(18.307, 10)).toBeCloseTo(0.05, 5);
  });
});
