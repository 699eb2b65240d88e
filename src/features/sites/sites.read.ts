import { z } from 'zod';
import type { SiteSummary, siteSearch } from '../../../shared/contract/site.ts';
import type { Prisma } from '../../database/index.ts';
import { type Context, decodeCursor, found, type Outcome, pageFrom, searchWords } from '../../http/index.ts';
import type { WordForms } from '../../http/search-words.ts';
import { placesWithWord } from './places-with-text.read.ts';
import { noSite, siteView } from './site-view.ts';

type SitePage = { items: SiteSummary[]; next: string | null };

const withChains = {
  chains: { select: { id: true, name: true, version: true }, orderBy: { name: 'asc' } },
} as const;
const position = z.tuple([z.string(), z.string()]);

/**
 * Sites in the order of their clients' names, by words of client, address, telephone number, or serial, model and cable
 * of a chain. Where none has them as they are typed, those that have them but for one slip in each.
 */
export async function searchSites(
  context: Context,
  query: z.infer<typeof siteSearch>,
): Promise<Outcome<SitePage>> {
  const { tx, actor } = context;
  const after = decodeCursor(query.cursor, position);
  if (after !== null && 'ok' in after) return after;
  const find = async (words: Prisma.SiteWhereInput[]) => {
    if (words.includes(nowhere)) return [];
    return tx.site.findMany({
      where: { AND: [{ orgId: actor.orgId }, ...words, ...(after === null ? [] : [behind(after)])] },
      include: withChains,
      orderBy: [{ clientName: 'asc' }, { id: 'asc' }],
      take: query.limit + 1,
    });
  };
  const { q } = query;
  const exact = await find(q ? await matches(context, q, false) : []);
  const rows = exact.length === 0 && q ? await find(await matches(context, q, true)) : exact;
  return found(
    pageFrom(rows, query.limit, {
      positionOf: (row) => [row.clientName, row.id],
      view: (row) => ({ ...siteView(row), chains: row.chains }),
    }),
  );
}

const behind = ([clientName, id]: z.infer<typeof position>): Prisma.SiteWhereInput => ({
  OR: [{ clientName: { gt: clientName } }, { clientName, id: { gt: id } }],
});

/** What no site fits; it is not asked for. */
const nowhere: Prisma.SiteWhereInput = { OR: [] };

/** Every word is in the site's own text or in that of one of its chains. */
const matches = (context: Context, query: string, typos: boolean): Promise<Prisma.SiteWhereInput[]> =>
  Promise.all(searchWords(query, { typos }).map((forms) => withWord(context, forms)));

async function withWord(context: Context, forms: WordForms): Promise<Prisma.SiteWhereInput> {
  const places = await placesWithWord(context, forms);
  if (places !== null) {
    const { siteIds, chainIds } = places;
    if (siteIds.length + chainIds.length === 0) return nowhere;
    return { OR: [{ id: { in: [...siteIds] } }, { chains: { some: { id: { in: [...chainIds] } } } }] };
  }
  const inText = forms.map((form) => ({ searchText: { contains: form } }));
  return { OR: [...inText, { chains: { some: { OR: inText } } }] };
}

export async function readSite({ tx, actor }: Context, id: string): Promise<Outcome<SiteSummary>> {
  const row = await tx.site.findUnique({
    where: { orgId_id: { orgId: actor.orgId, id } },
    include: withChains,
  });
  return row === null ? noSite : found({ ...siteView(row), chains: row.chains });
}
