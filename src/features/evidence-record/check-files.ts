import type { TenantTransaction } from '../../database/index.ts';
import type { Condition } from '../../evidence-store/index.ts';

export type FileFault = { readonly sha256: string; readonly is: 'damaged' | 'missing' };

/** Reads every file that a tenant's evidence has, and tells which are not what was kept. */
export async function* checkFiles(
  inTenant: <T>(work: (tx: TenantTransaction) => Promise<T>) => Promise<T>,
  orgId: string,
  conditionOf: (sha256: string) => Promise<Condition>,
): AsyncGenerator<{ readonly files: number; readonly faults: FileFault[] }> {
  const batchSize = 200;
  for (let after = ''; ; ) {
    const from = after;
    const rows = await inTenant((tx) =>
      tx.storedFile.findMany({
        where: { orgId, sha256: { gt: from } },
        select: { sha256: true },
        orderBy: { sha256: 'asc' },
        take: batchSize,
      }),
    );
    const last = rows.at(-1);
    if (last === undefined) return;
    const faults: FileFault[] = [];
    for (const { sha256 } of rows) {
      const condition = await conditionOf(sha256);
      if (condition !== 'whole') faults.push({ sha256, is: condition });
    }
    after = last.sha256;
    yield { files: rows.length, faults };
  }
}
