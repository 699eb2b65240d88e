import { type AuditPurpose, fullAudit } from '../../../shared/audit/full-audit.ts';
import { chainDiff } from '../../../shared/chain/diff.ts';
import { findDevice } from '../../../shared/chain/graph.ts';
import type { Chain, Finding } from '../../../shared/contract/chain.ts';
import type { ChainVersionRef } from '../../../shared/contract/site.ts';
import { type Message, message } from '../../../shared/message/index.ts';
import { type Context, found, type Outcome, refused } from '../../http/index.ts';
import { firmwareLevels, readSettings } from '../organisation/index.ts';
import { hasSite, noSite } from '../sites/index.ts';
import { noChain, readChain } from './chains.ts';
import { versionsOf } from './versions.read.ts';

type ChainRef = { id: string; siteId: string; name: string; version: number };
/** The chains of a site, by name. */
export async function listChains(context: Context, siteId: string): Promise<Outcome<{ items: ChainRef[] }>> {
  const { tx, actor } = context;
  if (!(await hasSite(context, siteId))) return noSite;
  const rows = await tx.chain.findMany({
    where: { orgId: actor.orgId, siteId },
    select: { id: true, siteId: true, name: true, version: true },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
  });
  return found({ items: rows });
}

/** All versions, newest first. */
export async function listVersions(
  context: Context,
  chainId: string,
): Promise<Outcome<{ items: ChainVersionRef[] }>> {
  const items = await versionsOf(context, chainId);
  return items.length === 0 ? noChain : found({ items });
}

/** What differs between two versions. */
export async function compareVersions(
  context: Context,
  chainId: string,
  { from, to }: { from: number; to: number },
): Promise<Outcome<{ from: number; to: number; changes: Message[] }>> {
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
    return refused('not-found', message('chainLacksDisplay', { deviceId: purpose.displayId }));
  return found({ version: document.body.version, findings: await findingsFor(context, chain, purpose) });
}

/** The findings of the prerequisite audit, by the organisation's own limits and firmware levels. */
export async function findingsFor(context: Context, chain: Chain, purpose: AuditPurpose): Promise<Finding[]> {
  const [settings, levels] = await Promise.all([readSettings(context), firmwareLevels(context)]);
  return fullAudit(chain, purpose, settings, levels);
}
