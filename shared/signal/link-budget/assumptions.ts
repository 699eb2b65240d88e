import type { LinkCategory } from '../../contract/chain.ts';

type KnownCategory = Exclude<LinkCategory, 'unknown'>;

/** What the budget takes for granted where no standard and no label says it. Every figure can be set. */
export type BudgetAssumptions = {
  /** Metres up to which passive copper is counted on at the rate that each category is tested for, whatever its own category. */
  passiveCopperReachM: Record<KnownCategory, number>;
  /** How many times further an active copper cable reaches. */
  activeCopperReach: number;
  activeOpticalReachM: number;
  /** How many times further than it is counted on a cable may still pass the rate, or bear a label that can be believed. */
  farthestReach: number;
  /** Share of the category's rate that a cable is counted with whose label nobody has seen. */
  uncertified: number;
  /** The same for ends fitted on site. */
  siteFittedEnds: number;
  /** The same for each coupler or wall plate that joins copper. */
  perCoupler: number;
  /** What a cable of unknown category is counted as. */
  unknownCategory: KnownCategory;
  /** What an extender over twisted pair is counted with whose rate isn't known, MHz. */
  extenderTmdsMHz: number;
  /** Metres of twisted pair that an extender reaches where its maker's figure isn't known. */
  twistedPairReachM: number;
};
