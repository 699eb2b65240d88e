export type { ApplicableChange } from './triage/changes/applicable.ts';
export { changeCatalogue, changeLabel } from './triage/changes/catalogue.ts';
export { completeness } from './triage/completeness.ts';
export {
  allowedCommands,
  applicableChanges,
  type Decision,
  decide,
  openTriage,
  replay,
  stateName,
  type TriageSnapshot,
} from './triage/decide.ts';
export { describeEvent } from './triage/describe-event.ts';
export type { Actor, AuditFacts, EventOf, TriageEvent, TriageEventType } from './triage/events.ts';
export { MACHINE_VERSION, triageMachine } from './triage/machine.ts';
export type { Opening } from './triage/opening.ts';
export { factsOfEdids, factsOfLogs, type Known, knownOfChain } from './triage/plan/known.ts';
export { type PlanRequest, planByPhone, planTicket } from './triage/plan/ticket-plan.ts';
export { openChange, runningWatch } from './triage/record.ts';
export { baselineFor, watchRecordOf } from './triage/retest.ts';
export { judgementSoFar } from './triage/rules/changes.ts';
export type { Refusal, RefusalType } from './triage/rules/refusal.ts';
export { commandRoles } from './triage/rules/roles.ts';
export { type Segment, segmentOf } from './triage/segment.ts';
export { type Way, waysOf } from './triage/ways.ts';
