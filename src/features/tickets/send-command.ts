import type { TicketCommand } from '../../../shared/contract/commands.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import type { ChangeRecord } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/index.ts';
import { commandRoles } from '../../../state-machines/index.ts';
import {
  type Actor,
  type Context,
  found,
  mismatch,
  type Outcome,
  type Refused,
  refused,
  type Update,
} from '../../http/index.ts';
import { describeAsLeft, lockChain } from '../chains/index.ts';
import { buildPacket } from '../packets/index.ts';
import {
  type LockedTicket,
  lockTicket,
  noTicket,
  openChangeElsewhere,
  type TicketRow,
} from '../ticket-record/index.ts';
import { accept } from './append-event.ts';
import { completeFrom } from './complete-command.ts';
import { allowedNow, takeOver, takesOverFirst, ticketView } from './ticket-view.ts';

/**
 * One step of a ticket. If-Match is optional here: the machine, not the version, decides what is allowed now; a
 * client that wants to act only on what it saw sends it. Every refusal says what would be allowed.
 */
export async function sendCommand(
  context: Context,
  ticketId: string,
  sent: Update<TicketCommand>,
): Promise<Outcome<Ticket>> {
  const { actor, services } = context;
  const row = await lockTicket(context, ticketId);
  if (row === null) return noTicket;
  const outcome = await takeStep(context, row, sent);
  if (outcome.ok || outcome.facts.allowedNow !== undefined) return outcome;
  return { ...outcome, facts: { ...outcome.facts, allowedNow: allowedNow(row, actor, services.now()) } };
}

async function takeStep(
  context: Context,
  row: LockedTicket,
  { ifMatch, input: command }: Update<TicketCommand>,
): Promise<Outcome<Ticket>> {
  const { actor, services } = context;
  const ticketId = row.id;
  const refusal =
    refusalOfSender(row, actor, command) ??
    (ifMatch === undefined ? null : mismatch(ifMatch, ticketView(row, actor, services.now()))) ??
    (command.type === 'declareChange' || command.type === 'enterLateChange'
      ? await changeElsewhere(context, row)
      : null);
  if (refusal !== null) return refusal;

  const completed = await completeFrom(context, row, command);
  if (!completed.ok) return completed;
  const accepted = await accept(context, row, completed.command);
  if (!accepted.ok) return accepted;
  if (completed.command.type === 'finishRemedy' && completed.command.chain !== undefined) {
    const described = await describeAsLeft(context, row.chainId, completed.command.chain);
    if (!described.ok) return described;
  }
  const sent = accepted.after.context.escalations.length;
  if (sent > accepted.before.context.escalations.length) {
    await buildPacket(context, { ticketId, version: sent, at: completed.command.at });
  }
  return found(ticketView(accepted.row, actor, services.now()));
}

function refusalOfSender(row: TicketRow, actor: Actor, { type }: TicketCommand): Refused | null {
  const roles = commandRoles[type];
  if (!roles.includes(actor.role)) {
    return refused('role-not-allowed', message('roleNotAllowed', { role: actor.role, allowed: roles }));
  }
  if (!takesOverFirst(row, actor, type)) return null;
  const holder = row.assignee;
  const said =
    holder === null ? message('ticketWithNobody') : message('ticketWithSomebody', { holder: holder.name });
  return refused('not-assigned', said, { allowedNow: [takeOver] });
}

/** One change at a time holds for the chain, not only for the ticket. */
async function changeElsewhere(context: Context, row: TicketRow): Promise<Refused | null> {
  await lockChain(context, row.chainId);
  const open = await openChangeElsewhere(context, row);
  if (open === null) return null;
  const said = message('changeOpenElsewhere', {
    ticketNumber: open.ticket.number,
    change: open.kind as ChangeRecord['kind'],
  });
  return refused('chain-change-open', said, { openTickets: [open.ticket] });
}
