import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  howSureByNow,
  judgeRetest,
  noFaultFoundWatchMin,
  requiredQuietTries,
  requiredQuietWatchMin,
  type WatchRecord,
} from '../../shared/isolation/retest-statistics.ts';

const watched = (occurrences: number, minutes: number): WatchRecord => ({
  mode: 'time',
  minutes,
  occurrences,
});
const tried = (failures: number, tries: number): WatchRecord => ({ mode: 'trigger', tries, failures });

const codesOf = (messages: readonly { code: string }[]): string[] => messages.map(({ code }) => code);

describe('a quiet retest over time', () => {
  it('is inconclusive after the 60 min that the plug-in rate gives, and says what is left', () => {
    const judgement = judgeRetest(watched(3, 60), watched(0, 60));
    expect(judgement.verdict).toBe('inconclusive');
    expect(judgement.riskOfBeingFooled).toBeCloseTo(0.125, 12);
    expect(judgement.needed).toEqual({
      mode: 'time',
      totalWatchMin: expect.closeTo(102.865, 3),
      remainingMin: expect.closeTo(42.865, 3),
    });
    expect(codesOf(judgement.reasons)).toEqual(['quietMinutes', 'chanceAboveLimit', 'watchMore']);
    expect(judgement.reasons[2]?.values.remaining).toBeCloseTo(42.865, 3);
  });

  it('is cleared once the needed length is reached, and not a minute before', () => {
    const needed = requiredQuietWatchMin(3, 60, 0.05) ?? Number.NaN;
    expect(judgeRetest(watched(3, 60), watched(0, needed)).verdict).toBe('cleared');
    expect(judgeRetest(watched(3, 60), watched(0, needed - 1)).verdict).toBe('inconclusive');
  });

  it('never asks less than the plug-in rate would, and more for a smaller risk or a shorter baseline', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 500 }),
        fc.double({ min: 1, max: 600, noNaN: true }),
        fc.double({ min: 0.001, max: 0.4, noNaN: true }),
        (n, minutes, risk) => {
          const needed = requiredQuietWatchMin(n, minutes, risk) ?? Number.NaN;
          expect(needed).toBeGreaterThan((-Math.log(risk) * minutes) / n);
          expect(requiredQuietWatchMin(n, minutes, risk / 2)).toBeGreaterThan(needed);
          expect(requiredQuietWatchMin(2 * n, 2 * minutes, risk)).toBeLessThan(needed);
          expect(judgeRetest(watched(n, minutes), watched(0, needed * 1.000001), { risk }).verdict).toBe(
            'cleared',
          );
          expect(judgeRetest(watched(n, minutes), watched(0, needed * 0.999999), { risk }).verdict).toBe(
            'inconclusive',
          );
        },
      ),
    );
  });
});

describe('a retest in which the fault came', () => {
  it('is never cleared, whatever the figures', () => {
    const record = fc.oneof(
      fc.record({
        mode: fc.constant('time' as const),
        minutes: fc.double({ min: 0, max: 1e6, noNaN: true }),
        occurrences: fc.nat(50),
      }),
      fc
        .tuple(fc.nat(60), fc.nat(60))
        .map(([a, b]) => ({ mode: 'trigger' as const, tries: a + b, failures: a })),
    );
    fc.assert(
      fc.property(record, record, (before, after) => {
        const seen = after.mode === 'time' ? after.occurrences : after.failures;
        if (seen > 0) expect(judgeRetest(before, after).verdict).not.toBe('cleared');
      }),
    );
  });

  it('persists with a rate that clearly went down, and says how sure that is', () => {
    const judgement = judgeRetest(watched(12, 60), watched(1, 60));
    expect(judgement.verdict).toBe('persists');
    expect(judgement.riskOfBeingFooled).toBeCloseTo(14 / 2 ** 13, 12);
    expect(judgement.reasons[1]?.code).toBe('comesLessOften');
    expect(judgement.reasons[1]?.values.chance).toBeCloseTo(14 / 2 ** 13, 12);
  });

  it('persists without a word on the rate where nothing can be told', () => {
    expect(codesOf(judgeRetest(watched(3, 60), watched(2, 60)).reasons)).toContain('rateNotComparable');
  });

  it('warns when the fault comes more often than before', () => {
    const judgement = judgeRetest(watched(1, 60), watched(9, 30));
    expect(codesOf(judgement.reasons)).toContain('comesMoreOften');
    expect(codesOf(judgement.warnings)).toEqual(['moreOftenWithChange']);
  });
});

describe('a retest on a trigger', () => {
  it('clears 3 of 3 after 3 good tries at 5 % (1 in 20), not after 2', () => {
    expect(requiredQuietTries(3, 3, 0.05)).toBe(3);
    expect(judgeRetest(tried(3, 3), tried(0, 3))).toMatchObject({
      verdict: 'cleared',
      needed: { remainingTries: 0 },
    });
    expect(judgeRetest(tried(3, 3), tried(0, 2))).toMatchObject({
      verdict: 'inconclusive',
      needed: { totalTries: 3, remainingTries: 1 },
    });
  });

  it('asks for the smallest number of tries that meets the risk', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 30 }),
        fc.nat(30),
        fc.double({ min: 0.001, max: 0.4, noNaN: true }),
        (failures, good, risk) => {
          const needed = requiredQuietTries(failures, failures + good, risk) ?? Number.NaN;
          const judge = (tries: number) =>
            judgeRetest(tried(failures, failures + good), tried(0, tries), { risk });
          expect(judge(needed).verdict).toBe('cleared');
          if (needed > 1) expect(judge(needed - 1).verdict).toBe('inconclusive');
        },
      ),
    );
  });

  it('persists with any failure', () => {
    expect(judgeRetest(tried(9, 10), tried(1, 40)).verdict).toBe('persists');
  });
});

describe('what can’t be judged', () => {
  it.each([
    ['a baseline of none', watched(0, 60), watched(0, 600)],
    ['a trigger baseline of none', tried(0, 10), tried(0, 100)],
    ['different modes', watched(3, 60), tried(0, 50)],
    ['no length of the baseline', watched(3, 0), watched(0, 50)],
    ['no minutes', watched(3, Number.NaN), watched(0, 50)],
    ['more failures than tries', tried(4, 3), tried(0, 50)],
    ['broken counts', watched(2.5, 60), watched(0, 50)],
  ])('%s is inconclusive, with a reason and no risk', (_name, before, after) => {
    const judgement = judgeRetest(before, after);
    expect(judgement).toMatchObject({ verdict: 'inconclusive', riskOfBeingFooled: null, needed: null });
    expect(judgement.reasons).toHaveLength(1);
  });

  it('is inconclusive with another trigger, but a failure is a failure', () => {
    expect(judgeRetest(tried(3, 3), tried(0, 9), { sameTrigger: false }).verdict).toBe('inconclusive');
    expect(judgeRetest(tried(3, 3), tried(1, 9), { sameTrigger: false }).verdict).toBe('persists');
  });

  it('says that the fault is there when it comes in the retest only', () => {
    expect(judgeRetest(watched(0, 60), watched(2, 60)).verdict).toBe('persists');
  });

  it('has no required length without occurrences', () => {
    expect(requiredQuietWatchMin(0, 60, 0.05)).toBeNull();
    expect(requiredQuietTries(0, 10, 0.05)).toBeNull();
    expect(requiredQuietWatchMin(3, 60, 0)).toBeNull();
  });
});

describe('how sure by now', () => {
  it('grows with quiet minutes and says what is left', () => {
    const at = (minutes: number) => howSureByNow(watched(3, 60), watched(0, minutes));
    expect(at(0).sure).toBe(0);
    expect(at(60).sure).toBeCloseTo(0.875, 12);
    expect(at(60).sentence.code).toBe('sureSoFarWatch');
    expect(at(60).sentence.values.remaining).toBeCloseTo(42.865, 3);
    expect(at(103).progress).toBe(1);
    expect(at(103).sentence.code).toBe('sureEnough');
  });

  it('ends when the fault comes', () => {
    const now = howSureByNow(watched(3, 60), watched(1, 20));
    expect(now).toMatchObject({ sure: null, needed: null, progress: null });
    expect(now.sentence.code).toBe('stillThereInTime');
  });
});

describe('no fault found', () => {
  it('needs a watch after the reported rate, or after an assumed one when none was reported', () => {
    expect(noFaultFoundWatchMin(1, 0.05)).toBeCloseTo(179.74, 2);
    expect(noFaultFoundWatchMin(null, 0.05)).toBeCloseTo(359.49, 2);
    expect(noFaultFoundWatchMin(1, 0.01)).toBeGreaterThan(noFaultFoundWatchMin(1, 0.05));
  });
});
