import type { deviceRoles, linkCategories, linkConstructions } from '../contract/chain-names.ts';
import type { TicketCommandType } from '../contract/commands.ts';
import type { edidTopics } from '../contract/edid-names.ts';
import type { EvidenceKind } from '../contract/evidence.ts';
import type { logEventKinds } from '../contract/log-findings.ts';
import type { conversions, hdrKinds, signalFields } from '../contract/look-names.ts';
import type { MemberRole } from '../contract/primitives.ts';
import type { Site } from '../contract/site.ts';
import type { TicketSummary } from '../contract/ticket.ts';
import type { CompletenessItem, WorkingState } from '../contract/triage.ts';
import type {
  actingParties,
  checkAnswers,
  choiceWays,
  followUpOutcomes,
  lateFindings,
  onlyWithKinds,
  patternTriggers,
  symptomKinds,
  waitingKinds,
  whatChangedKinds,
} from '../contract/triage-names.ts';

type OneOf<List extends readonly string[]> = List[number];

/**
 * What the contract's own values are called, as a label says it: on screens, and inside sentences (`say.term`). A
 * value that gets no name is a type error. Each list is a kind of value that a message can hold.
 */
export type MessageTerms = {
  memberRole: Record<MemberRole, string>;
  state: Record<WorkingState | 'substitute.retest' | 'waiting' | 'escalated' | 'closed', string>;
  symptom: Record<OneOf<typeof symptomKinds>, string>;
  /** As a sentence goes on with it: `It comes …`. */
  patternTrigger: Record<OneOf<typeof patternTriggers>, string>;
  onlyWith: Record<OneOf<typeof onlyWithKinds>, string>;
  priority: Record<TicketSummary['priority'], string>;
  hazard: Record<Site['hazards'][number]['kind'], string>;
  role: Record<OneOf<typeof deviceRoles>, string>;
  construction: Record<OneOf<typeof linkConstructions>, string>;
  category: Record<OneOf<typeof linkCategories>, string>;
  logEvent: Record<OneOf<typeof logEventKinds>, string>;
  edidTopic: Record<OneOf<typeof edidTopics>, string>;
  completenessItem: Record<CompletenessItem, string>;
  evidenceKind: Record<EvidenceKind, string>;
  whatChanged: Record<OneOf<typeof whatChangedKinds>, string>;
  hdrKind: Record<OneOf<typeof hdrKinds>, string>;
  conversion: Record<OneOf<typeof conversions>, string>;
  signalField: Record<OneOf<typeof signalFields>, string>;
  choiceWay: Record<OneOf<typeof choiceWays>, string>;
  followUpOutcome: Record<OneOf<typeof followUpOutcomes>, string>;
  checkAnswer: Record<OneOf<typeof checkAnswers>, string>;
  lateFinding: Record<OneOf<typeof lateFindings>, string>;
  waitingKind: Record<OneOf<typeof waitingKinds>, string>;
  actingParty: Record<OneOf<typeof actingParties>, string>;
  command: Record<TicketCommandType, string>;
  /** What is on a ticket's log beside its commands. */
  fact: Record<'open' | 'assign' | 'takeOver' | 'update' | 'evidenceAdded' | 'evidenceWithdrawn', string>;
};
export type TermList = keyof MessageTerms;
