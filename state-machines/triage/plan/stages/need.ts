import type { TriageRecord, Watch } from '../../../../shared/contract/triage.ts';
import {
  noFaultFoundWatchMin,
  type RetestNeed,
  requiredQuietTries,
  requiredQuietWatchMin,
} from '../../../../shared/isolation/index.ts';
import { minutesOf } from '../../record.ts';
import { baselineOf } from '../case-of.ts';
import { type Left, triesInVain } from './watching.ts';

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

/**
 * Minutes that are left to watch where no length of quiet would settle it: as long as it takes for a fault as frequent as
 * reported to show. More of it would tell no more.
 */
export function leftAnyway({ symptom, settings }: TriageRecord, watches: readonly Watch[]): number {
  const watchedMin = watches.reduce((sum, watch) => sum + minutesOf(watch), 0);
  const tries = watches.reduce((sum, watch) => sum + watch.tries, 0);
  return tries >= triesInVain
    ? 0
    : Math.max(0, noFaultFoundWatchMin(symptom.perHour, settings.risk) - watchedMin);
}

export const leftOf = (need: RetestNeed): Left =>
  need.mode === 'time' ? { minutes: need.remainingMin } : { minutes: null, tries: need.remainingTries };
