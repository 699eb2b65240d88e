import { z } from 'zod';
import type { Ticket, TicketSummary, ticketQuery } from '../../../shared/contract/ticket.ts';
import type { Prisma } from '../../database/index.ts';
import {
  type Actor,
  type Context,
  decodeCursor,
  found,
  literalLike,
  type Outcome,
  pageFrom,
  searchWords,
} from '../../http/index.ts';
import { findTicket, noTicket, withNames, withoutSearchText } from '../ticket-record/index.ts';
import { anyOf, atPlacesWithWord, nowhere } from './at-places.read.ts';
import { summaryView, ticketView } from './ticket-view.ts';

type Query = z.infer<typeof ticketQuery>;
type TicketPage = { items: TicketSummary[]; next: string | null };

export async function readTicket(context: Context, id: string): Promise<Outcome<Ticket>> {
  const { actor, services } = context;
  const row = await findTicket(context, id);
  return row === null ? noTicket : found(ticketView(row, actor, services.now()));
}

const position = z.int().min(0).max(2_147_483_647);

/** Tickets, newest number first. */
export async function listTickets(context: Context, query: Query): Promise<Outcome<TicketPage>> {
  const { tx, actor } = context;
  const before = decodeCursor(query.cursor, position);
  if (before !== null && typeof before === 'object') return before;
  const find = async (words: Prisma.TicketWhereInput[]) => {
    if (words.includes(nowhere)) return [];
    return tx.ticket.findMany({
      where: {
        AND: [...filtersOf(query, actor), ...words, ...(before === null ? [] : [{ number: { lt: before } }])],
        orgId: actor.orgId,
      },
      omit: { ...withoutSearchText, intake: true, snapshot: true },
      include: withNames,
      orderBy: { number: 'desc' },
      take: query.limit + 1,
    });
  };
  const { q } = query;
  const exact = await find(q ? [await matching(context, q, false)] : []);
  // Typed as nobody is called: whoever is called so but for a slip.
  const rows = exact.length === 0 && q ? await find([await matching(context, q, true)]) : exact;
  return found(pageFrom(rows, query.limit, { positionOf: (row) => row.number, view: summaryView }));
}

function filtersOf(query: Query, actor: Actor): Prisma.TicketWhereInput[] {
  const { siteId, chainId, symptom, priority, visitFrom, visitTo, dueBy } = query;
  const exact = { siteId, chainId, symptom, priority };
  const equals = Object.entries(exact).flatMap(([column, value]) =>
    value === undefined ? [] : [{ [column]: value }],
  );
  const filters: Prisma.TicketWhereInput[] = [...equals];
  if (query.state !== undefined) filters.push(inState(query.state));
  if (query.assigneeId !== undefined) filters.push({ assigneeId: assigneeOf(query.assigneeId, actor) });
  if (visitFrom !== undefined) filters.push({ visitAt: { gte: visitFrom } });
  if (visitTo !== undefined) filters.push({ visitAt: { lt: visitTo } });
  if (dueBy !== undefined) filters.push({ dueBy: { lte: dueBy } });
  return filters;
}

function inState(state: string): Prisma.TicketWhereInput {
  if (state === 'open') return { state: { not: 'closed' } };
  return { OR: [{ state }, { state: { startsWith: `${literalLike(state)}.` } }] };
}

function assigneeOf(value: string, actor: Actor): string | null {
  if (value === 'none') return null;
  return value === 'me' ? actor.memberId : value;
}

/** A ticket's number, or the words that its site is found by. */
async function matching(context: Context, query: string, typos: boolean): Promise<Prisma.TicketWhereInput> {
  const words = await Promise.all(
    searchWords(query, { typos }).map(async (forms) => anyOf(await atPlacesWithWord(context, forms))),
  );
  const number = /^\d{1,9}$/.test(query) ? [{ number: Number(query) }] : [];
  if (words.includes(nowhere)) return number.length === 0 ? nowhere : { OR: number };
  return { OR: [{ AND: words }, ...number] };
}
