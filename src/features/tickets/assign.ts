import type { Ticket, TicketUpdate } from '../../../shared/contract/ticket.ts';
import { message } from '../../../shared/message/index.ts';
import {
  type Context,
  found,
  mismatch,
  type Outcome,
  type Refused,
  refused,
  type Update,
} from '../../http/index.ts';
import { readMember } from '../people/index.ts';
import { lockTicket, noTicket, withIntake } from '../ticket-record/index.ts';
import { recordFact } from './record-fact.ts';
import { ticketView } from './ticket-view.ts';
import { withoutContact } from './without-contact.ts';

/** Why a ticket can't go to that member; null when it can. */
export async function refusalOfAssignee(
  context: Context,
  assigneeId: string | null,
): Promise<Refused | null> {
  if (assigneeId === null) return null;
  const member = await readMember(context, assigneeId);
  if (!member.ok) return member;
  const { active, name, role } = member.body;
  if (!active) return refused('unknown-reference', message('assigneeInactive', { member: name }));
  if (role === 'technician' || role === 'admin') return null;
  return refused('unknown-reference', message('assigneeNoTechnician', { member: name }));
}

export async function assignTicket(
  context: Context,
  ticketId: string,
  assigneeId: string | null,
): Promise<Outcome<Ticket>> {
  const { actor, services } = context;
  const row = await lockTicket(context, ticketId);
  if (row === null) return noTicket;
  const refusal = await refusalOfAssignee(context, assigneeId);
  if (refusal !== null) return refusal;
  if (row.assigneeId === assigneeId) return found(ticketView(row, actor, services.now()));
  return recordFact(context, row, { type: 'assign', payload: { assigneeId }, columns: { assigneeId } });
}

/** A technician takes a ticket that is with nobody or with somebody else. */
export async function takeOverTicket(context: Context, ticketId: string): Promise<Outcome<Ticket>> {
  const { actor, services } = context;
  const row = await lockTicket(context, ticketId);
  if (row === null) return noTicket;
  if (row.assigneeId === actor.memberId) return found(ticketView(row, actor, services.now()));
  const assigneeId = actor.memberId;
  const payload = { assigneeId, from: row.assigneeId };
  return recordFact(context, row, { type: 'takeOver', payload, columns: { assigneeId } });
}

/** Changes what triage does not decide: priority, visit, assignee and the dispatcher's notes. */
export async function updateTicket(
  context: Context,
  ticketId: string,
  { ifMatch, input: update }: Update<TicketUpdate>,
): Promise<Outcome<Ticket>> {
  const { actor, services } = context;
  const row = await lockTicket(context, ticketId);
  if (row === null) return noTicket;
  const refusal =
    mismatch(ifMatch, ticketView(row, actor, services.now())) ??
    (update.assigneeId === row.assigneeId ? null : await refusalOfAssignee(context, update.assigneeId));
  if (refusal !== null) return refusal;
  const { intake, ...columns } = update;
  return recordFact(context, row, {
    type: 'update',
    payload: { ...update, intake: withoutContact(intake) },
    columns: { ...columns, intake: withIntake(row, intake) },
  });
}
