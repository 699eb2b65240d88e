import type { NewTicket, Ticket } from '../../../shared/contract/ticket.ts';
import { MACHINE_VERSION, openTriage } from '../../../state-machines/index.ts';
import type { Prisma } from '../../database/index.ts';
import { type Context, created, type Outcome, type Refused, refused } from '../../http/index.ts';
import { readSettings } from '../organisation/index.ts';
import { refusalOfAssignee } from './assign.ts';
import { appendToLog } from './log.ts';
import { withoutContact } from './record-fact.ts';
import { columnsOf, findTicket, noTicket, ticketView } from './ticket-row.ts';

/** Opens a ticket during a call. Open tickets at the same chain have to be seen first. */
export async function openTicket(context: Context, input: NewTicket): Promise<Outcome<Ticket>> {
  const { tx, actor, services } = context;
  const { orgId } = actor;
  const chain = await tx.chain.findUnique({ where: { orgId_id: { orgId, id: input.chainId } } });
  if (chain === null || chain.siteId !== input.siteId) {
    return refused('not-found', 'There is no such chain at that site.');
  }
  const refusal =
    (await unseenDuplicates(context, input)) ?? (await refusalOfAssignee(context, input.assigneeId));
  if (refusal !== null) return refusal;

  const id = services.newId();
  const at = services.now();
  const { risk, reopenDays } = await readSettings(context);
  const settings = { risk, reopenDays };
  const { symptom, whatChanged } = input.intake;
  const opening = { ticketId: id, settings, symptom, whatChanged, at: at.toISOString(), by: actor.memberId };
  const number = await nextNumber(context);
  const { seenDuplicates, ...facts } = input;
  await tx.ticket.create({
    data: {
      ...columnsOf(openTriage(opening)),
      orgId,
      id,
      number,
      siteId: input.siteId,
      chainId: input.chainId,
      intake: input.intake as Prisma.InputJsonObject,
      symptom: symptom.kind,
      priority: input.priority,
      assigneeId: input.assigneeId,
      visitAt: input.visitAt,
      sequence: 1,
      openedAt: at,
      updatedAt: at,
    },
  });
  await appendToLog(context, {
    ticketId: id,
    sequence: 1,
    type: 'open',
    payload: { ...facts, intake: withoutContact(input.intake), number, settings },
    at: at.toISOString(),
    machineVersion: MACHINE_VERSION,
  });
  const row = await findTicket(context, id);
  return row === null ? noTicket : created(ticketView(row, actor, services.now()), `/tickets/${id}`);
}

async function unseenDuplicates({ tx, actor }: Context, input: NewTicket): Promise<Refused | null> {
  const open = await tx.ticket.findMany({
    where: { orgId: actor.orgId, chainId: input.chainId, state: { not: 'closed' } },
    select: { id: true, number: true, state: true },
    orderBy: { number: 'asc' },
  });
  const unseen = open.filter((ticket) => !input.seenDuplicates.includes(ticket.id));
  if (unseen.length === 0) return null;
  const numbers = unseen.map((ticket) => `no. ${ticket.number}`).join(', ');
  return refused(
    'possible-duplicate',
    `Open at the same chain: ${numbers}. If this is another fault, send the ids in seenDuplicates.`,
    { openTickets: unseen },
  );
}

/** The next running number of the organisation; the row's lock makes openings wait for each other. */
async function nextNumber({ tx, actor }: Context): Promise<number> {
  const { nextTicketNumber } = await tx.organisation.update({
    where: { orgId: actor.orgId },
    data: { nextTicketNumber: { increment: 1 } },
    select: { nextTicketNumber: true },
  });
  return nextTicketNumber - 1;
}
