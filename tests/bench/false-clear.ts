import { judgeRetest, requiredQuietWatchMin } from '../../shared/isolation/retest-statistics.ts';
import { randomFrom } from '../support/random.ts';

/** What became of retests of a change that did nothing, at one rate of the fault. */
export type FalseClear = {
  perHour: number;
  retests: number;
  /** Share called cleared while the fault was there, with the watch that the statistics ask for. */
  byNeed: number;
  /** The same with ten minutes of watching, and "not seen" taken for "cleared". */
  byTenMinutes: number;
  meanWatchMin: number;
};

/**
 * Retests of a fault that is still there. The baseline ends at its third occurrence, or after `mostBaselineMin` with
 * what was seen by then; nothing seen is nothing to retest.
 */
export function falseClearsAt(perHour: number, retests: number, mostBaselineMin: number): FalseClear {
  const random = randomFrom(Math.round(perHour * 1000));
  const gap = () => (-Math.log(1 - random()) / perHour) * 60;
  let [judged, fooled, fooledByTen, watched] = [0, 0, 0, 0];
  for (let done = 0; done < retests; done += 1) {
    const baseline = { mode: 'time' as const, minutes: 0, occurrences: 0 };
    while (baseline.occurrences < 3 && baseline.minutes < mostBaselineMin) {
      const next = gap();
      if (baseline.minutes + next > mostBaselineMin) baseline.minutes = mostBaselineMin;
      else {
        baseline.minutes += next;
        baseline.occurrences += 1;
      }
    }
    const need = requiredQuietWatchMin(baseline.occurrences, baseline.minutes, 0.05);
    if (need === null) continue;
    judged += 1;
    const until = gap();
    const seen = until < need;
    watched += Math.min(until, need);
    const retest = { mode: 'time' as const, minutes: seen ? until : need, occurrences: seen ? 1 : 0 };
    if (judgeRetest(baseline, retest, { risk: 0.05 }).verdict === 'cleared') fooled += 1;
    if (until > 10) fooledByTen += 1;
  }
  return {
    perHour,
    retests: judged,
    byNeed: fooled / judged,
    byTenMinutes: fooledByTen / judged,
    meanWatchMin: watched / judged,
  };
}
