import { z } from 'zod';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { pastCaseQuery } from '../../../shared/contract/past-case.ts';
import { MACHINE_VERSION } from '../../../state-machines/index.ts';
import type { Prisma } from '../../database/index.ts';
import { type Context, decodeCursor, literalLike, pageFrom, type Refused } from '../../http/index.ts';
import { searchWords, type WordForms } from '../../http/search-words.ts';
import { pastWithWord } from '../ticket-record/index.ts';
import { anyOf, atPlacesWithWord, nowhere } from './at-places.read.ts';

type Query = z.infer<typeof pastCaseQuery>;
export type PastPage = { ids: string[]; next: string | null };

/** Where a page ended, and whether it holds what was meant rather than what was typed. */
const position = z.object({
  closedAt: z.iso.datetime(),
  number: z.int().min(0).max(2_147_483_647),
  typos: z.boolean(),
});
type Position = z.infer<typeof position>;

/**
 * Snapshots of an earlier version are left out until they are brought up to date, which a job does at start: only the
 * database looks into them here.
 */
const closed = ({ actor }: Context): Prisma.TicketWhereInput => ({
  orgId: actor.orgId,
  state: 'closed',
  machineVersion: MACHINE_VERSION,
});
const newestFirst: Prisma.TicketOrderByWithRelationInput[] = [{ closedAt: 'desc' }, { number: 'desc' }];

/** A page of closed tickets, newest first, in which every word is found; where none is, those that a slip hides. */
export async function findPast(
  context: Context,
  { q = '', symptom, cursor, limit }: Query,
): Promise<PastPage | Refused> {
  const from = decodeCursor(cursor, position);
  if (from !== null && 'ok' in from) return from;
  const page = (typos: boolean) => pageOf(context, { q, symptom, limit, from, typos });
  if (from !== null) return page(from.typos);
  const exact = await page(false);
  return exact.ids.length > 0 || q === '' ? exact : page(true);
}

type Wanted = Pick<Query, 'symptom' | 'limit'> & { q: string; from: Position | null; typos: boolean };
async function pageOf(context: Context, { q, symptom, limit, from, typos }: Wanted): Promise<PastPage> {
  const words = await Promise.all(searchWords(q, { typos }).map((forms) => withWord(context, forms)));
  if (words.includes(nowhere)) return { ids: [], next: null };
  const rows = await context.tx.ticket.findMany({
    where: {
      ...closed(context),
      ...(symptom === undefined ? {} : { symptom }),
      AND: [...words, ...(from === null ? [] : [after(from)])],
    },
    select: { id: true, closedAt: true, number: true },
    orderBy: newestFirst,
    take: limit + 1,
  });
  const { items, next } = pageFrom(rows, limit, {
    positionOf: ({ closedAt, number }): Position => ({
      closedAt: closedAt?.toISOString() ?? '',
      number,
      typos,
    }),
    view: ({ id }) => id,
  });
  return { ids: items, next };
}

const after = ({ closedAt, number }: Position): Prisma.TicketWhereInput => ({
  OR: [{ closedAt: { lt: closedAt } }, { closedAt, number: { lt: number } }],
});

async function withWord(context: Context, forms: WordForms): Promise<Prisma.TicketWhereInput> {
  const [atPlaces, past] = await Promise.all([
    atPlacesWithWord(context, forms),
    pastWithWord(context, forms),
  ]);
  if (past === null) return anyOf([...atPlaces, ...forms.map((form) => ({ pastText: { contains: form } }))]);
  return anyOf([...atPlaces, ...(past.length === 0 ? [] : [{ id: { in: [...past] } }])]);
}

/** Assumed: of more cases than this that share symptom or a model, the older ones say little of what is installed today. */
const mostAlike = 200;

/** Closed tickets that may be like a case: of its symptom, or with a device of a model that it has; newest first. */
export async function maybeAlike(
  context: Context,
  { symptom, chain, exceptId }: { symptom: string; chain: Chain | null; exceptId: string },
): Promise<string[]> {
  const models = [...new Set((chain?.devices ?? []).flatMap(({ model }) => model ?? []))];
  const rows = await context.tx.ticket.findMany({
    where: {
      ...closed(context),
      id: { not: exceptId },
      OR: [
        { symptom },
        ...models.map((model) => ({
          pastText: { contains: literalLike(JSON.stringify(model).toLowerCase()) },
        })),
      ],
    },
    select: { id: true },
    orderBy: newestFirst,
    take: mostAlike,
  });
  return rows.map(({ id }) => id);
}
