import type { Prisma } from '../../database/index.ts';
import type { Context } from '../../http/index.ts';
import type { WordForms } from '../../http/search-words.ts';
import { placesWithWord } from '../sites/index.ts';

/** What no ticket fits; it is not asked for. */
export const nowhere: Prisma.TicketWhereInput = { OR: [] };

/** Tickets that fit in any of these ways. */
export const anyOf = (ways: Prisma.TicketWhereInput[]): Prisma.TicketWhereInput =>
  ways.length === 0 ? nowhere : { OR: ways };

/** The ways in which a ticket is at a site or a chain that a word is found in, in any of its forms; none where there is none. */
export async function atPlacesWithWord(
  context: Context,
  forms: WordForms,
): Promise<Prisma.TicketWhereInput[]> {
  const places = await placesWithWord(context, forms);
  if (places === null) {
    const text = { OR: forms.map((form) => ({ searchText: { contains: form } })) };
    return [{ site: text }, { chain: text }];
  }
  const { siteIds, chainIds } = places;
  return [
    ...(siteIds.length === 0 ? [] : [{ siteId: { in: [...siteIds] } }]),
    ...(chainIds.length === 0 ? [] : [{ chainId: { in: [...chainIds] } }]),
  ];
}
