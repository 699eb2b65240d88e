import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import type { NewTicket, Ticket } from '../../../shared/contract/ticket.ts';
import { message } from '../../../shared/message/index.ts';
import { figuresIn, openTriage } from '../../../state-machines/index.ts';
import type { Prisma } from '../../database/index.ts';
import { type Context, created, type Outcome, type Refused, refused } from '../../http/index.ts';
import { siteOfChain } from '../chains/index.ts';
import { organisationNow, takeTicketNumber } from '../organisation/index.ts';
import { columnsOf, findTicket, insertTicket, noTicket, openTicketsAt } from '../ticket-record/index.ts';
import { refusalOfAssignee } from './assign.ts';
import { refusalOfForgedErasure } from './forged-erasure.ts';
import { ticketView } from './ticket-view.ts';
import { withoutContact } from './without-contact.ts';

/** Opens a ticket during a call. Open tickets at the same chain have to be seen first. */
export async function openTicket(context: Context, input: NewTicket): Promise<Outcome<Ticket>> {
  const { actor, services } = context;
  if ((await siteOfChain(context, input.chainId)) !== input.siteId) {
    return refused('not-found', message('chainNotAtSite'));
  }
  const refusal =
    refusalOfForgedErasure(input, null) ??
    (await unseenDuplicates(context, input)) ??
    (await refusalOfAssignee(context, input.assigneeId));
  if (refusal !== null) return refusal;

  const id = services.newId();
  const at = services.now();
  const settings = figuresIn(await organisationNow(context));
  const { symptom, whatChanged } = input.intake;
  const opening = { ticketId: id, settings, symptom, whatChanged, at: at.toISOString(), by: actor.memberId };
  const number = await takeTicketNumber(context);
  const { seenDuplicates, ...facts } = input;
  await insertTicket(context, {
    type: 'open',
    payload: { ...facts, intake: withoutContact(input.intake), number, settings },
    at,
    columns: {
      ...columnsOf(openTriage(opening)),
      id,
      number,
      siteId: input.siteId,
      chainId: input.chainId,
      intake: input.intake as Prisma.InputJsonObject,
      symptom: symptom.kind,
      priority: input.priority,
      assigneeId: input.assigneeId,
      visitAt: input.visitAt,
      visitMin: input.visitMin,
    },
  });
  const row = await findTicket(context, id);
  return row === null
    ? noTicket
    : created(ticketView(row, actor, services.now()), addressOf(addresses.ticket, { id }));
}

async function unseenDuplicates(context: Context, input: NewTicket): Promise<Refused | null> {
  const open = await openTicketsAt(context, input.chainId);
  const unseen = open.filter((ticket) => !input.seenDuplicates.includes(ticket.id));
  if (unseen.length === 0) return null;
  const said = message('openTicketsAtChain', { numbers: unseen.map((ticket) => ticket.number) });
  return refused('possible-duplicate', said, { openTickets: unseen });
}
