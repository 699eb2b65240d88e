import { type AuditPurpose, fullAudit } from '../../../shared/audit/full-audit.ts';
import { chainDiff } from '../../../shared/chain/diff.ts';
import { findDevice } from '../../../shared/chain/graph.ts';
import type { Chain, Finding } from '../../../shared/contract/chain.ts';
import { type Context, found, type Outcome, refused } from '../../http/index.ts';
import { firmwareLevels, readSettings } from '../organisation/index.ts';
import { noChain, readChain } from './chains.ts';

type ChainRef = { id: string; siteId: string; name: string; version: number };
type VersionRef = {
  version: number;
  changedBy: string;
  changedByName: string;
  changedAt: string;
  changes: string[];
};

/** The chains of a site, by name. */
export async function listChains(
  { tx, actor }: Context,
  siteId: string,
): Promise<Outcome<{ items: ChainRef[] }>> {
  const site = await tx.site.findUnique({
    where: { orgId_id: { orgId: actor.orgId, id: siteId } },
    select: { id: true },
  });
  if (site === null) return refused('not-found', 'There is no such site.');
  const rows = await tx.chain.findMany({
    where: { orgId: actor.orgId, siteId },
    select: { id: true, siteId: true, name: true, version: true },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
  });
  return found({ items: rows });
}

/** All versions, newest first. */
export async function listVersions(
  { tx, actor }: Context,
  chainId: string,
): Promise<Outcome<{ items: VersionRef[] }>> {
  const rows = await tx.chainVersion.findMany({
    where: { orgId: actor.orgId, chainId },
    select: {
      version: true,
      changedBy: true,
      changedAt: true,
      changes: true,
      member: { select: { name: true } },
    },
    orderBy: { version: 'desc' },
  });
  if (rows.length === 0) return noChain;
  const items = rows.map(({ member, changedAt, changes, ...row }) => ({
    ...row,
    changedByName: member.name,
    changedAt: changedAt.toISOString(),
    changes: changes as string[],
  }));
  return found({ items });
}

/** What differs between two versions, in sentences. */
export async function compareVersions(
  context: Context,
  chainId: string,
  { from, to }: { from: number; to: number },
): Promise<Outcome<{ from: number; to: number; changes: string[] }>> {
  const before = await readChain(context, chainId, from);
  const after = await readChain(context, chainId, to);
  if (!before.ok) return before;
  if (!after.ok) return after;
  return found({
    from,
    to,
    changes: chainDiff(before.body.chain, after.body.chain).map((change) => change.sentence),
  });
}

/** The prerequisite audit of one version of a chain, by the organisation's own limits and firmware levels. */
export async function auditVersion(
  context: Context,
  chainId: string,
  { version, ...purpose }: AuditPurpose & { version?: number | undefined },
): Promise<Outcome<{ version: number; findings: Finding[] }>> {
  const document = await readChain(context, chainId, version);
  if (!document.ok) return document;
  const { chain } = document.body;
  if (purpose.displayId !== undefined && findDevice(chain, purpose.displayId)?.role !== 'display')
    return refused('not-found', `The chain has no display ${purpose.displayId}.`);
  return found({ version: document.body.version, findings: await findingsFor(context, chain, purpose) });
}

/** The findings of the prerequisite audit, by the organisation's own limits and firmware levels. */
export async function findingsFor(context: Context, chain: Chain, purpose: AuditPurpose): Promise<Finding[]> {
  return fullAudit(chain, purpose, await readSettings(context), await firmwareLevels(context));
}
