import type { Ticket, TicketUpdate } from '../../../shared/contract/ticket.ts';
import type { Prisma } from '../../database/index.ts';
import {
  type Context,
  found,
  mismatch,
  type Outcome,
  type Refused,
  refused,
  type Update,
} from '../../http/index.ts';
import { recordFact, withoutContact } from './record-fact.ts';
import { lockTicket, noTicket, ticketView } from './ticket-row.ts';

/** Why a ticket can't go to that member; null when it can. */
export async function refusalOfAssignee(
  { tx, actor }: Context,
  assigneeId: string | null,
): Promise<Refused | null> {
  if (assigneeId === null) return null;
  const member = await tx.member.findUnique({ where: { orgId_id: { orgId: actor.orgId, id: assigneeId } } });
  if (member === null) return refused('not-found', 'There is no such member.');
  if (!member.active) return refused('unknown-reference', `${member.name} is not active any more.`);
  if (member.role === 'technician' || member.role === 'admin') return null;
  return refused('unknown-reference', `${member.name} is no technician.`);
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
  const merged = { ...(row.intake as Prisma.JsonObject), ...(intake as Prisma.InputJsonObject) };
  return recordFact(context, row, {
    type: 'update',
    payload: { ...update, intake: withoutContact(intake) },
    columns: { ...columns, intake: merged as Prisma.InputJsonObject },
  });
}
