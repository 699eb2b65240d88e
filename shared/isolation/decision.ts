import type { Candidate } from './candidates.ts';
import type { FaultTable } from './fault-table.ts';
import { figureOf } from './figures.ts';
import type { WatchRecord } from './quiet-length.ts';

/**
 * One thing that can be done, as the planner sees it: two outcomes. The first is quiet (or the menu stayed), the
 * second that the fault came (or the menu vanished).
 */
export type Option = {
  candidate: Candidate;
  /** Chance of the first outcome under each class of hypotheses. */
  first: Float64Array;
  /** Minutes that each outcome takes on average, all told. */
  firstMin: number;
  secondMin: number;
  /** Minutes of handling in that: setting up, putting back, and what its risk is worth; 0 for what is in place. */
  handlingMin: number;
  /** It may stay, and most likely mends what is wrong. */
  isRepair: boolean;
  /** Minutes or tries to watch at most. */
  exposure: number;
  /**
   * Minutes of watching, by outcome, where nobody sits through them: it is left in over days, whose worth is in the minutes
   * above. Left out where it is watched.
   */
  leftIn?: { quietMin: number; seenMin: number };
  /** -1; or the index of the option that this one goes on from, once that came out first. */
  after: number;
  /** Minutes to set up again what this one goes on from, or what is in place now, once something else was done. */
  resumeMin: number;
};

/** Minutes of watching in each outcome of an option, on average. */
export const watchedIn = ({
  firstMin,
  secondMin,
  handlingMin,
  leftIn,
}: Pick<Option, 'firstMin' | 'secondMin' | 'handlingMin' | 'leftIn'>) =>
  leftIn ?? { quietMin: firstMin - handlingMin, seenMin: secondMin - handlingMin };

/** The choice to be made, in a form that can be searched: hypotheses that no option tells apart are one class. */
export type Decision = {
  /** Chance of each class; adds up to 1. */
  chances: Float64Array;
  /** For each class, the number of its component. */
  groupOf: Int32Array;
  /** Components by number. */
  groups: readonly string[];
  options: readonly Option[];
  /** The chance of a component at which it is named the culprit. */
  nameAt: number;
  escalationMin: number;
};

export type Terms = {
  /** The watch that retests are judged against. */
  baseline: WatchRecord;
  /** Chance taken, per retest, of calling a fault cleared that is still there. */
  risk: number;
  minutesPerTry: number;
  /** The chance at which a suspect counts as the culprit, 0..1. */
  stopAt: number;
  /**
   * The factor by which the odds from before the first test may be wrong: the level has to be reached even if they
   * were, since the figures behind them are assumed. 1 trusts them.
   */
  priorDoubt: number;
  /** Minutes that handing the case to second line is worth. */
  escalationMin: number;
  /** Id of the candidate that is in place now: watching on costs no set-up. */
  inPlace: string | null;
  /** Ids of candidates that are looked at however little they tell: what is in place, and what only may come next. */
  wanted: readonly string[];
};

/** The terms that are figures of the table. */
export const termsIn = ({ planning }: FaultTable) => ({
  minutesPerTry: figureOf(planning.oneTry, 'minutes'),
  stopAt: figureOf(planning.naming, 'stopAt'),
  priorDoubt: figureOf(planning.naming, 'priorDoubt'),
  escalationMin: figureOf(planning.escalation, 'minutes'),
});

/** The chance at which a suspect is named, with the doubt about the prior taken in: 0.95 and a factor of 3 make 0.983. */
export function namingChance({ stopAt, priorDoubt }: Pick<Terms, 'stopAt' | 'priorDoubt'>): number {
  const odds = (stopAt / (1 - stopAt)) * priorDoubt;
  return odds / (1 + odds);
}
