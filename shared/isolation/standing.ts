import type { Case } from './case.ts';
import { type FaultTable, faultTable } from './fault-table.ts';
import { type FaultModel, faultModelOf } from './hypotheses.ts';
import { posteriorOf } from './posterior.ts';

/** The model of a case and what is believed after its results: what the plan and its explanation both start from. */
export type Standing = {
  model: FaultModel;
  /** Chance of each hypothesis of the model, 0..1. */
  chances: readonly number[];
};

/** Where a case stands. @param table the organisation's figures; the built-in ones when left out */
export function standingOf(facts: Case, table: FaultTable = faultTable): Standing {
  const model = faultModelOf(facts, table);
  return { model, chances: posteriorOf(model) };
}
