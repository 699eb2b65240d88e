/**
 * Isolation: what can still be wrong, which test is worth doing next, and when a retest means something. Pure and
 * deterministic; the same code runs on the server and, offline, on a phone.
 */

export { isSteady } from './assumed-baseline.ts';
export { type ChangeOption, type Circumstances, menuKey } from './candidates.ts';
export {
  type Case,
  type FindingInput,
  type HeadroomInput,
  plainCase,
  type Result,
  type Trust,
} from './case.ts';
export type { ClientReach } from './client-reach.ts';
export type { FactFromLogs, FactKind } from './effect-table.ts';
export { exposureOf, seenIn } from './fault-rate.ts';
export { type FaultTable, faultTable } from './fault-table.ts';
export { type KitItem, kitMessage } from './kit.ts';
export { liesOverPicture, menuTells } from './menu-symptoms.ts';
export {
  leftInAtMostDays,
  perDayOf,
  type RareFault,
  visitAtMostMin,
  type WayOverDays,
  waysOverDays,
} from './over-days.ts';
export {
  type Figure,
  listFigures,
  type OverrideFault,
  type Overrides,
  tableOf,
  withOverrides,
} from './overrides.ts';
export { onlyWithSaid, patternSaid } from './pattern.ts';
export { type Plan, type PlanInput, type PlanTerms, planNext } from './plan.ts';
export { type PlannedTest, testSentences } from './plan-wording.ts';
export { type Contribution, type Suspect, suspectsOf } from './posterior.ts';
export { provingChange } from './prove.ts';
export { assumedRatePerHour, goodBaseline, requiredQuiet } from './quiet-length.ts';
export { type PackedItem, planRemotely, type RemotePlan } from './remote.ts';
export { expectedRepairMin, orderRepairs, type Repair, type RepairOrder } from './repair-order.ts';
export { type PlannedRepair, type RepairPlan, repairsOf } from './repairs.ts';
export {
  amountsOf,
  howSureByNow,
  judgeRetest,
  looksUntilSure,
  noFaultFoundWatchMin,
  type RetestJudgement,
  type RetestNeed,
  type RetestOptions,
  requiredQuietTries,
  requiredQuietWatchMin,
  type SureByNow,
  triesUntilSure,
  type WatchRecord,
} from './retest-statistics.ts';
export { type Standing, standingOf } from './standing.ts';
export { testKey } from './test-record.ts';
export { type PartsAsked, partsWithin } from './within-budget.ts';
export { mostWork, unitsPerAsk, WorkMeter, workLimits } from './work.ts';
