import type { LinkCategory } from '../../contract/chain.ts';

/** What the budget takes for granted where no standard and no label says it. Every figure can be set. */
export type BudgetAssumptions = {
  /** Metres up to which a passive copper cable of a category is counted in full. */
  passiveCopperReachM: Record<LinkCategory, number>;
  /** How many times further an active copper cable reaches. */
  activeCopperReach: number;
  activeOpticalReachM: number;
  /** Share of the category's rate that a cable is counted with whose label nobody has seen. */
  uncertified: number;
  /** The same for ends fitted on site. */
  siteFittedEnds: number;
  /** What a cable of unknown category is counted as. */
  unknownCategory: Exclude<LinkCategory, 'unknown'>;
  /** What an extender over twisted pair is counted with, whatever is printed on it, MHz. */
  extenderTmdsMHz: number;
};
