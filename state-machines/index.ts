export { describeEvent } from './describe-event.ts';
export { factsOfEdids, factsOfLogs, type Known, knownOfChain } from './planning/known.ts';
export { type PlanRequest, planByPhone, planTicket } from './planning/ticket-plan.ts';
export type { ApplicableChange } from './triage/applicable-changes.ts';
export { changeCatalogue, changeLabel } from './triage/change-catalogue.ts';
export { judgementSoFar } from './triage/change-rules.ts';
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
export type { Actor, AuditFacts, EventOf, TriageEvent, TriageEventType } from './triage/events.ts';
export type { Opening } from './triage/opening.ts';
export { openChange, runningWatch } from './triage/record.ts';
export type { Refusal, RefusalType } from './triage/refusal.ts';
export { baselineFor, watchRecordOf } from './triage/retest.ts';
export { commandRoles } from './triage/roles.ts';
export { type Segment, segmentOf } from './triage/segment.ts';
export { MACHINE_VERSION, triageMachine } from './triage.ts';
