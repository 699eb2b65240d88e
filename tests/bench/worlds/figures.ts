import { readFileSync } from 'node:fs';
import type { FaultTable } from '../../../shared/isolation/fault-table.ts';

/**
 * What is true in these worlds: the planner's figures as they stood on 2026-11-30, kept apart. So figures that are typed
 * in anew in the planner move nothing here, and a planner that believes other things is wrong about these worlds.
 */
export const worldTable = JSON.parse(
  readFileSync(new URL('./figures.json', import.meta.url), 'utf8'),
) as FaultTable;

/** Figures of the worlds that the table has no place for; ours, none is from a source. */
export const worldFigures = {
  /** Occurrences an hour of a fault that comes by itself: even on a log scale between these. */
  perHour: [0.4, 8],
  /** Chance that a try fails, of a fault on a trigger. */
  perTry: [0.2, 0.95],
  triggerShare: 0.25,
  /** A technician reproduces until three times, or this many minutes or tries. */
  baseline: { wanted: 3, mostMin: 480, mostTries: 20 },
  /** Another occurrence follows in a burst with this chance, after so many minutes on average. */
  burst: { follows: 0.6, afterMin: 2 },
  warm: { afterMin: [15, 90], told: 0.5 },
  /** Spread (standard deviation) of an effect about its figure, in log odds, of each kind of change on each mode. */
  effectSpread: 0.8,
  /** Share of changes that help but only thin the fault out, and what is left of its rate. */
  thins: { share: 0.15, left: [0.15, 0.5] },
  errors: { misread: 0.05, missed: 0.05, ghost: 0.02 },
  twoFaults: 0.05,
  outside: 0.15,
  /** Chance that another source, which plays a lower rate, does not show a fault that comes of the rate. */
  lowerRateHides: 0.9,
  /** A replaced part is good. */
  repairWorks: 0.98,
  /** Nobody watches while a change is made. */
  leastChangeMin: 2,
} as const;
