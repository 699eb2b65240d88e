import { z } from 'zod';
import type { SiteInput, siteSearch, siteSummary } from '../../../shared/contract/site.ts';
import type { Prisma } from '../../database/index.ts';
import {
  type Context,
  created,
  decodeCursor,
  found,
  literalLike,
  mismatch,
  type Outcome,
  pageFrom,
  refused,
  type Update,
} from '../../http/index.ts';
import { searchForms, searchTextOf, siteView } from './site-view.ts';

const noSite = refused('not-found', 'There is no such site.');

type SiteSummary = z.infer<typeof siteSummary>;
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

export async function addSite(
  { tx, actor, services }: Context,
  input: SiteInput,
): Promise<Outcome<SiteSummary>> {
  const now = services.now();
  const row = await tx.site.create({
    data: { ...columnsOf(input), orgId: actor.orgId, id: services.newId(), createdAt: now, updatedAt: now },
  });
  return created({ ...siteView(row), chains: [] }, `/sites/${row.id}`);
}

export async function updateSite(
  context: Context,
  id: string,
  { ifMatch, input }: Update<SiteInput>,
): Promise<Outcome<SiteSummary>> {
  const { tx, actor, services } = context;
  await tx.$queryRaw`select id from site where org_id = ${actor.orgId}::uuid and id = ${id}::uuid for update`;
  const current = await readSite(context, id);
  if (!current.ok) return current;
  const conflict = mismatch(ifMatch, current.body);
  if (conflict !== null) return conflict;
  await tx.site.update({
    where: { orgId_id: { orgId: actor.orgId, id } },
    data: { ...columnsOf(input), version: { increment: 1 }, updatedAt: services.now() },
  });
  return readSite(context, id);
}

const columnsOf = (input: SiteInput) => ({
  document: input as Prisma.InputJsonObject,
  clientName: input.client,
  searchText: searchTextOf(input),
});
