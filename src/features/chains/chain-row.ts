import { type Chain, chain as chainForm } from '../../../shared/contract/chain.ts';
import { type Message, storedMessage } from '../../../shared/message/index.ts';
import type { Context } from '../../http/index.ts';

export const documentOf = (row: { readonly document: unknown }): Chain => chainForm.parse(row.document);
/** What changed since the version before; version 1 stored a sentence each. */
export const changesOf = (row: { readonly changes: unknown }): Message[] =>
  (row.changes as (string | Message)[]).map(storedMessage);

/** A version of a chain with all that is in it. */
export type ChainVersionDocument = {
  readonly version: number;
  readonly changedAt: string;
  readonly changedBy: string;
  readonly changes: Message[];
  readonly chain: Chain;
};

/** Every version of a chain, oldest first. */
export async function versionDocumentsOf(
  { tx, actor }: Context,
  chainId: string,
): Promise<ChainVersionDocument[]> {
  const rows = await tx.chainVersion.findMany({
    where: { orgId: actor.orgId, chainId },
    orderBy: { version: 'asc' },
  });
  return rows.map((row) => ({
    version: row.version,
    changedAt: row.changedAt.toISOString(),
    changedBy: row.changedBy,
    changes: changesOf(row),
    chain: documentOf(row),
  }));
}
