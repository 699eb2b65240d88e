import { type Chain, chain as chainForm } from '../../../shared/contract/chain.ts';
import { type CaseFile, caseFile as caseFileForm } from '../../../shared/contract/packet.ts';
import type { TenantTransaction } from '../../database/index.ts';
import type { LoggedEvent } from './event-log.ts';

/** A version of a chain with all that is in it. */
export type ChainVersionDocument = {
  readonly version: number;
  readonly changedAt: string;
  readonly changedBy: string;
  readonly changes: string[];
  readonly chain: Chain;
};

/** Every version of a chain, oldest first. */
export async function chainVersionsOf(
  tx: TenantTransaction,
  orgId: string,
  chainId: string,
): Promise<ChainVersionDocument[]> {
  const rows = await tx.chainVersion.findMany({ where: { orgId, chainId }, orderBy: { version: 'asc' } });
  return rows.map((row) => ({
    version: row.version,
    changedAt: row.changedAt.toISOString(),
    changedBy: row.changedBy,
    changes: row.changes as string[],
    chain: chainForm.parse(row.document),
  }));
}

/** A ticket's log as it was hashed, oldest first. */
export async function loggedEventsOf(
  tx: TenantTransaction,
  orgId: string,
  ticketId: string,
): Promise<LoggedEvent[]> {
  const rows = await tx.ticketEvent.findMany({ where: { orgId, ticketId }, orderBy: { sequence: 'asc' } });
  return rows.map((row) => ({
    ticketId,
    sequence: row.sequence,
    type: row.type,
    payload: row.payload,
    actorId: row.actorId,
    at: row.at.toISOString(),
    machineVersion: row.machineVersion,
    previousHash: row.previousHash,
    hash: row.hash,
  }));
}

export type PacketBefore = {
  readonly id: string;
  readonly version: number;
  readonly at: string;
  readonly by: string;
  readonly caseFile: CaseFile;
};

/** The packets that a ticket has so far, oldest first. */
export async function packetsBefore(
  tx: TenantTransaction,
  orgId: string,
  ticketId: string,
): Promise<PacketBefore[]> {
  const rows = await tx.packet.findMany({ where: { orgId, ticketId }, orderBy: { version: 'asc' } });
  return rows.map((row) => ({
    id: row.id,
    version: row.version,
    at: row.createdAt.toISOString(),
    by: row.createdBy,
    caseFile: caseFileForm.parse(row.caseFile),
  }));
}
