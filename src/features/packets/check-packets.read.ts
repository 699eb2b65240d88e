import type { TenantTransaction } from '../../database/index.ts';
import type { Condition } from '../../evidence-store/index.ts';
import { filesOf } from './packet-row.ts';

export type PacketFault = {
  readonly ticket: number;
  readonly version: number;
  readonly path: string;
  readonly is: 'damaged' | 'missing';
};

/** Reads every file of every packet of a tenant, and tells which are not what was packed. */
export async function checkPackets(
  inTenant: <T>(work: (tx: TenantTransaction) => Promise<T>) => Promise<T>,
  orgId: string,
  conditionOf: (sha256: string) => Promise<Condition>,
): Promise<{ readonly packets: number; readonly faults: PacketFault[] }> {
  const rows = await inTenant((tx) =>
    tx.packet.findMany({
      where: { orgId },
      select: { version: true, files: true, ticket: { select: { number: true } } },
      orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    }),
  );
  const faults: PacketFault[] = [];
  for (const { version, files, ticket } of rows)
    for (const { path, sha256 } of filesOf({ files })) {
      const condition = await conditionOf(sha256);
      if (condition !== 'whole') faults.push({ ticket: ticket.number, version, path, is: condition });
    }
  return { packets: rows.length, faults };
}
