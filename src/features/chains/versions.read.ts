import type { ChainVersionRef } from '../../../shared/contract/site.ts';
import type { Context } from '../../http/index.ts';
import { changesOf } from './chain-row.ts';

/** All versions of a chain with who made each, newest first; none where there is no such chain. */
export async function versionsOf({ tx, actor }: Context, chainId: string): Promise<ChainVersionRef[]> {
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
  return rows.map(({ member, ...row }) => ({
    version: row.version,
    changedBy: row.changedBy,
    changedByName: member.name,
    changedAt: row.changedAt.toISOString(),
    changes: changesOf(row),
  }));
}
