export type { ApplicableChange } from './triage/changes/described.ts';
export {
  completeCommand,
  figuresIn,
  type KnownFacts,
  needsOf,
  putsPartsIn,
  type Sender,
} from './triage/complete-command.ts';
export { completeness } from './triage/completeness.ts';
export {
  allowedCommands,
  applicableChanges,
  type Decision,
  decide,
} from './triage/decide.ts';
export { checkedBeforeLeaving, describeEvent } from './triage/describe-event.ts';
export { describeKept } from './triage/describe-look.ts';
export { dueOf } from './triage/due.ts';
export type {
  Actor,
  AuditKnown,
  CompleteCommand,
  CompleteCommandOf,
  EventOf,
  Outcomes,
  TriageEvent,
  TriageEventType,
} from './triage/events.ts';
export {
  EventNotTaken,
  evolve,
  openTriage,
  replay,
  stateName,
  type TriageSnapshot,
} from './triage/evolve.ts';
export { chainAsSeen, meetingPoint, menuQualitiesAt, readingsAsFound } from './triage/looks.ts';
export { MACHINE_VERSION, triageMachine } from './triage/machine.ts';
export type { Opening } from './triage/opening.ts';
export { perhapsTwoFaults } from './triage/perhaps-two.ts';
export type { PlanRequest } from './triage/plan/asked.ts';
export { caseOf } from './triage/plan/case-of.ts';
export { factsOfLogs } from './triage/plan/facts-of-logs.ts';
export { filledIn, standInFor } from './triage/plan/fill-in.ts';
export { factsOfEdids, type Known, knownOfChain } from './triage/plan/known.ts';
export { isOfOnePart } from './triage/plan/shown-part.ts';
export { planByPhone, planTicket } from './triage/plan/ticket-plan.ts';
export {
  baselineWatches,
  changesOfRound,
  minutesOf,
  occurrencesIn,
  occurrencesOf,
  openChange,
  runningWatch,
  standingReports,
  standingSides,
} from './triage/record.ts';
export { baselineFor, watchRecordOf } from './triage/retest.ts';
export { judgementSoFar } from './triage/rules/changes.ts';
export { whyNoProof } from './triage/rules/culprit.ts';
export type { Refusal, RefusalType } from './triage/rules/refusal.ts';
export { commandRoles } from './triage/rules/roles.ts';
export { type Segment, segmentOf } from './triage/segment.ts';
export { type Trace, type TraceCase, traceOf } from './triage/trace.ts';
export { levelsReadUnattended, reportedIn } from './triage/unattended.ts';
export {
  asToday,
  EventOfNewerVersion,
  isReadable,
  logAsToday,
  newestReadable,
  openingAsToday,
  replayStored,
  type Stored,
} from './triage/versions/index.ts';
export { recordAsToday } from './triage/versions/record.ts';
export { allowedAsToday, missingAsToday } from './triage/versions/said.ts';
export { type Way, waysOf } from './triage/ways.ts';
