import { z } from 'zod';
import type { SiteSummary, siteSearch } from '../../../shared/contract/site.ts';
import type { Prisma } from '../../database/index.ts';
import { type Context, decodeCursor, found, literalLike, type Outcome, pageFrom } from '../../http/index.ts';
import { digitsOf, noSite, siteView } from './site-view.ts';

type SitePage = { items: SiteSummary[]; next: string | null };

const withChains = {
  chains: { select: { id: true, name: true, version: true }, orderBy: { name: 'asc' } },
} as const;
const position = z.tuple([z.string(), z.string()]);

/** Sites in the order of their clients' names, by any part of client, address, telephone number or device serial. */
export async function searchSites(
  { tx, actor }: Context,
  query: z.infer<typeof siteSearch>,
): Promise<Outcome<SitePage>> {
  const after = decodeCursor(query.cursor, position);
  if (after !== null && 'ok' in after) return after;
  const conditions: Prisma.SiteWhereInput[] = [{ orgId: actor.orgId }];
  if (query.q) conditions.push(matches(query.q));
  if (after !== null) {
    conditions.push({
      OR: [{ clientName: { gt: after[0] } }, { clientName: after[0], id: { gt: after[1] } }],
    });
  }
  const rows = await tx.site.findMany({
    where: { AND: conditions },
    include: withChains,
    orderBy: [{ clientName: 'asc' }, { id: 'asc' }],
    take: query.limit + 1,
  });
  return found(
    pageFrom(rows, query.limit, {
      positionOf: (row) => [row.clientName, row.id],
      view: (row) => ({ ...siteView(row), chains: row.chains }),
    }),
  );
}

/** The forms in which a search word may stand in the text: as typed, and as digits when it looks like a number. */
function searchForms(query: string): string[] {
  const typed = query.toLowerCase();
  const digits = digitsOf(query);
  const looksLikeNumber = digits.length >= 3 && /^[\d\s()+./-]+$/.test(query);
  return looksLikeNumber && digits !== typed ? [typed, digits] : [typed];
}

function matches(query: string): Prisma.SiteWhereInput {
  const inText = searchForms(query).map((form) => ({ searchText: { contains: literalLike(form) } }));
  const serial = { searchText: { contains: literalLike(query.toLowerCase()) } };
  return { OR: [...inText, { chains: { some: serial } }] };
}

export async function readSite({ tx, actor }: Context, id: string): Promise<Outcome<SiteSummary>> {
  const row = await tx.site.findUnique({
    where: { orgId_id: { orgId: actor.orgId, id } },
    include: withChains,
  });
  return row === null ? noSite : found({ ...siteView(row), chains: row.chains });
}
