import type { TriageRecord } from '../../../../shared/contract/triage.ts';
import {
  type RetestNeed,
  requiredQuietTries,
  requiredQuietWatchMin,
} from '../../../../shared/isolation/index.ts';
import { baselineOf } from '../case-of.ts';

/** What a quiet retest takes in all, by the watches before any change; null where they give no measure. */
export function fullNeed(record: TriageRecord): RetestNeed | null {
  const baseline = baselineOf(record);
  const { risk } = record.settings;
  if (baseline?.mode === 'time') {
    const totalWatchMin = requiredQuietWatchMin(baseline.occurrences, baseline.minutes, risk);
    return totalWatchMin === null ? null : { mode: 'time', totalWatchMin, remainingMin: totalWatchMin };
  }
  const totalTries = baseline === null ? null : requiredQuietTries(baseline.failures, baseline.tries, risk);
  return totalTries === null ? null : { mode: 'trigger', totalTries, remainingTries: totalTries };
}

/** Minutes that are left of it; null where tries are counted, or nothing is known. */
export const minutesIn = (need: RetestNeed | null): number | null =>
  need?.mode === 'time' ? need.remainingMin : null;
