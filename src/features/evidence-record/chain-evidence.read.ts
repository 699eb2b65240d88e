import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import type { Context } from '../../http/index.ts';
import { evidenceItemOf, withFile } from './evidence-item.ts';

/** Evidence of one kind from all tickets at a chain, in the order in which it was taken, withdrawn items too. */
export async function evidenceAtChain(
  { tx, actor }: Context,
  chainId: string,
  kind: EvidenceItem['kind'],
): Promise<EvidenceItem[]> {
  const rows = await tx.evidence.findMany({
    where: { orgId: actor.orgId, kind, ticket: { chainId } },
    include: withFile,
    orderBy: { takenAt: 'asc' },
  });
  return rows.map(evidenceItemOf);
}
