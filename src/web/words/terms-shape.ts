import type { DeviceRole } from '../../../shared/contract/chain.ts';
import type { TicketCommandType } from '../../../shared/contract/commands.ts';
import type { EvidenceKind } from '../../../shared/contract/evidence.ts';
import type { MemberRole } from '../../../shared/contract/primitives.ts';
import type { Site } from '../../../shared/contract/site.ts';
import type { TicketSummary } from '../../../shared/contract/ticket.ts';
import type { CompletenessItem, WhatChanged, WorkingState } from '../../../shared/contract/triage.ts';

/** What the contract's own values are called on screens. A value that gets no name is a type error. */
export type Terms = {
  roles: Record<MemberRole, string>;
  states: Record<WorkingState | 'escalated' | 'closed', string>;
  symptoms: Record<TicketSummary['symptom'], string>;
  priorities: Record<TicketSummary['priority'], string>;
  hazards: Record<Site['hazards'][number]['kind'], string>;
  devices: Record<DeviceRole, string>;
  items: Record<CompletenessItem, string>;
  evidence: Record<EvidenceKind, string>;
  changed: Record<WhatChanged['kind'], string>;
  commands: Record<TicketCommandType, string>;
  /** What is on a ticket's log beside its commands. */
  facts: Record<'open' | 'assign' | 'takeOver' | 'update' | 'evidenceAdded' | 'evidenceWithdrawn', string>;
};
