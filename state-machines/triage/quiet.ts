import type { TriageRecord, Watch } from '../../shared/contract/triage.ts';
import { assumedRatePerHour } from '../../shared/isolation/quiet-length.ts';
import {
  looksUntilSure,
  noFaultFoundWatchMin,
  triesUntilSure,
} from '../../shared/isolation/retest-statistics.ts';
import { counted, minutesCounted, modeOfPattern } from './counting.ts';

/**
 * Minutes, tries or looks without the fault before any change, and how many it takes until a fault that comes as it was
 * told would have shown.
 */
export type Quiet = { mode: Watch['mode']; done: number; needed: number };

/** @param watches before any change, ended ones or up to now */
export function quietOf(record: TriageRecord, watches: readonly Watch[]): Quiet {
  const { risk } = record.settings;
  const said = counted(record, watches);
  const mode = modeOfPattern(record.symptom.pattern);
  switch (mode) {
    case 'look':
      return {
        mode,
        done: said.filter((watch) => watch.mode !== 'trigger').length,
        needed: looksUntilSure(risk),
      };
    case 'trigger':
      return { mode, done: sum(said, ({ tries }) => tries), needed: triesUntilSure(risk) };
    case 'time':
      return {
        mode,
        done: sum(said, (watch) => (watch.mode === 'time' ? minutesCounted(record, watch) : 0)),
        needed: noFaultFoundWatchMin(rateToExpect(record), risk),
      };
  }
}

const sum = (watches: readonly Watch[], of: (watch: Watch) => number): number =>
  watches.reduce((total, watch) => total + of(watch), 0);

/** How often to expect it, per hour: bursts come more seldom than the client counts what is in them. */
function rateToExpect({ symptom: { perHour, pattern } }: TriageRecord): number | null {
  return pattern.kind === 'bursts' && perHour !== null ? Math.min(perHour, assumedRatePerHour) : perHour;
}
