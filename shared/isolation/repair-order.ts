/** A repair that is simply tried: it cures the fault with this chance (0..1), and takes this many minutes. */
export type Repair<Id = string> = { id: Id; probability: number; minutes: number };
export type RepairOrder<Id = string> = {
  order: Repair<Id>[];
  /** Minutes until the cure on average, one repair after the other; a fault that none cures costs them all. */
  expectedMin: number;
  /** Chance that none of them cures it, 0..1. */
  uncured: number;
};

/**
 * The order in which to try repairs when nothing is left that would only inform: by probability over minutes, the
 * highest first, which costs the least on average when one repair at most is the right one and each shows at once
 * whether it was (Kadane and Simon 1977, Annals of Statistics 5:237; Mitten 1960). Equal ratios keep their order.
 *
 * @param repairs probabilities that add up to 1 at most; minutes above 0
 */
export function orderRepairs<Id>(repairs: readonly Repair<Id>[]): RepairOrder<Id> {
  const order = repairs.toSorted((a, b) => b.probability * a.minutes - a.probability * b.minutes);
  return { order, expectedMin: expectedRepairMin(order), uncured: uncuredBy(order) };
}

/** Minutes until the cure on average when repairs are tried in this order. */
export function expectedRepairMin(order: readonly Repair<unknown>[]): number {
  let spent = 0;
  let expected = 0;
  for (const { probability, minutes } of order) {
    spent += minutes;
    expected += probability * spent;
  }
  return expected + uncuredBy(order) * spent;
}

const uncuredBy = (repairs: readonly Repair<unknown>[]): number =>
  Math.max(0, 1 - repairs.reduce((sum, { probability }) => sum + probability, 0));
