import type { Chain } from '../../shared/contract/chain.ts';
import type { TicketCommand, TicketCommandType } from '../../shared/contract/commands.ts';
import type { EvidenceRef } from '../../shared/contract/evidence.ts';
import type { MemberRole } from '../../shared/contract/primitives.ts';
import type { CompletenessItem } from '../../shared/contract/triage.ts';

/** Who sends a command. */
export type Actor = { memberId: string; role: MemberRole };

/** Who sent it, and when the server (or the phone, while it is offline) took it: UTC, ISO 8601. */
type Stamp = { at: string; by: string; role: MemberRole };
type CommandOf<Type extends TicketCommandType> = Extract<TicketCommand, { type: Type }>;

/** What the prerequisite audit said when it was looked at. */
export type AuditFacts = { mustFix: number; shouldFix: number; firmwareBelowLevel: string[] };

/** What a use case adds to a command before the machine sees it. */
type Additions = {
  reviewAudit: AuditFacts;
  recordAsFound: { chain: Chain };
  startWatch: { watchId: string };
  recordOccurrence: { occurrenceId: string };
  confirmOccurrence: { occurrenceId: string };
  declareChange: { changeId: string };
  askForMore: { requests: { requestId: string; item: CompletenessItem | null; text: string }[] };
  directStep: { requestId: string };
};
type AdditionsTo<Type extends TicketCommandType> = Type extends keyof Additions ? Additions[Type] : unknown;
type Complete<Type extends TicketCommandType> = Type extends TicketCommandType
  ? Omit<CommandOf<Type>, keyof AdditionsTo<Type>> & AdditionsTo<Type> & Stamp
  : never;

export type EvidenceAdded = { type: 'evidenceAdded'; evidence: EvidenceRef; happenedAt?: string } & Stamp;
export type EvidenceWithdrawn = {
  type: 'evidenceWithdrawn';
  evidenceId: string;
  reason: string;
  happenedAt?: string;
} & Stamp;

/**
 * What the machine takes: a ticket command made complete (ids filled in, what it needs of the chain, who and when),
 * or news of the evidence store. Accepted events are the ticket's log.
 */
export type TriageEvent = Complete<TicketCommandType> | EvidenceAdded | EvidenceWithdrawn;
export type TriageEventType = TriageEvent['type'];
export type EventOf<Type extends TriageEventType> = Extract<TriageEvent, { type: Type }>;

/** When it happened: by the sender's clock where it was offline, else when it was taken. */
export const momentOf = (event: TriageEvent): string => event.happenedAt ?? event.at;
