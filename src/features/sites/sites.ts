import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import type { SiteInput, SiteSummary } from '../../../shared/contract/site.ts';
import type { Prisma } from '../../database/index.ts';
import { type Context, created, mismatch, type Outcome, type Update } from '../../http/index.ts';
import { searchTextOf, siteView } from './site-view.ts';
import { readSite } from './sites.read.ts';

export const hasSite = async ({ tx, actor }: Context, id: string): Promise<boolean> =>
  (await tx.site.count({ where: { orgId: actor.orgId, id } })) > 0;

export async function addSite(
  { tx, actor, services }: Context,
  input: SiteInput,
): Promise<Outcome<SiteSummary>> {
  const now = services.now();
  const row = await tx.site.create({
    data: { ...columnsOf(input), orgId: actor.orgId, id: services.newId(), createdAt: now, updatedAt: now },
  });
  return created({ ...siteView(row), chains: [] }, addressOf(addresses.site, { id: row.id }));
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
