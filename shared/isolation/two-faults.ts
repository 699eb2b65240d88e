import { faultTable } from './fault-table.ts';
import { figureOf } from './figures.ts';

/**
 * Chance that there are two faults of which a change put one right, given that the fault came as rarely with it as it
 * did. With one fault alone that is a coincidence of the chance given; with two, the other one goes on by itself.
 *
 * @param fooled chance (0..1) of a retest as quiet as this one if nothing had changed
 */
export function chanceOfTwoFaults(fooled: number): number {
  const before = figureOf(faultTable.planning.twoFaults, 'chance');
  return before / (before + (1 - before) * fooled);
}
