import type { TicketCommandType } from '../../../shared/contract/commands.ts';
import type { MemberRole } from '../../../shared/contract/primitives.ts';
import type { AllowedCommand } from '../../../shared/contract/problem.ts';
import type { Ticket, TicketSummary } from '../../../shared/contract/ticket.ts';
import { message } from '../../../shared/message/index.ts';
import { allowedCommands, commandRoles, completeness } from '../../../state-machines/index.ts';
import type { Actor } from '../../http/index.ts';
import { dueIn, intakeOf, type TicketHead, type TicketRow } from '../ticket-record/index.ts';

export const summaryView = (row: TicketHead): TicketSummary => ({
  id: row.id,
  number: row.number,
  siteId: row.siteId,
  chainId: row.chainId,
  client: row.site.clientName,
  chainName: row.chain.name,
  symptom: row.symptom as TicketSummary['symptom'],
  priority: row.priority as TicketSummary['priority'],
  state: row.state,
  assigneeId: row.assigneeId,
  assigneeName: row.assignee?.name ?? null,
  visitAt: row.visitAt?.toISOString() ?? null,
  visitMin: row.visitMin,
  openedAt: row.openedAt.toISOString(),
  updatedAt: row.updatedAt.toISOString(),
  closedAt: row.closedAt?.toISOString() ?? null,
  due: dueIn(row),
});

/** Taking over has an address of its own and is listed with the commands, since it comes before them. */
export const takeOver: AllowedCommand = {
  type: 'takeOver',
  label: message('factLabel', { fact: 'takeOver' }),
};

/** Technicians send what is for neither dispatcher nor second line only to tickets that are with them. */
export function takesOverFirst(row: TicketRow, actor: Actor, type: TicketCommandType): boolean {
  const roles: readonly MemberRole[] = commandRoles[type];
  const isForAssignee = !roles.includes('dispatcher') && !roles.includes('support');
  return isForAssignee && actor.role === 'technician' && row.assigneeId !== actor.memberId;
}

/** What this member may send to the ticket now, as far as that doesn't hang on what is sent with it. */
export function allowedNow(row: TicketRow, actor: Actor, now: Date): AllowedCommand[] {
  const allowed = allowedCommands(row.snapshot, actor.role, now.toISOString());
  const direct = allowed.filter(({ type }) => !takesOverFirst(row, actor, type as TicketCommandType));
  return direct.length === allowed.length ? allowed : [...direct, takeOver];
}

/** A ticket as one member sees it: with what they may do to it now. */
export function ticketView(row: TicketRow, actor: Actor, now: Date): Ticket {
  const snapshot = row.snapshot;
  return {
    ...summaryView(row),
    intake: intakeOf(row),
    sequence: row.sequence,
    triage: snapshot.context,
    allowedNow: allowedNow(row, actor, now),
    missing: completeness(snapshot.context),
  };
}
