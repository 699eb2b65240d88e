import { findingAsToday } from '../../../shared/audit/stored-finding.ts';
import {
  type BagFile,
  bagFile,
  type CaseFile,
  caseFile as caseFileForm,
} from '../../../shared/contract/packet.ts';
import { logFindingAsToday } from '../../../shared/logs/index.ts';
import { message, storedMessage } from '../../../shared/message/index.ts';
import { missingAsToday, recordAsToday } from '../../../state-machines/index.ts';
import { type Context, refused } from '../../http/index.ts';
import { changesOf } from '../chains/index.ts';

export const noPacket = refused('not-found', message('noSuchPacket'));

export const filesOf = (row: { readonly files: unknown }): BagFile[] => bagFile.array().parse(row.files);
export const newsOf = (row: { readonly news: unknown }): string[] => row.news as string[];
/** The case as it was when the packet was made, read as today's; what the packet's own files hold stays as it is. */
export function caseFileIn(row: { readonly caseFile: unknown }): CaseFile {
  const stored = row.caseFile as CaseFile;
  const { prerequisites, chain, triage, missing, logs = [] } = stored;
  return caseFileForm.parse({
    ...stored,
    prerequisites: { ...prerequisites, findings: prerequisites.findings.map(findingAsToday) },
    chain: {
      ...chain,
      versions: chain.versions.map((version) => ({ ...version, changes: changesOf(version) })),
      sinceAsFound: chain.sinceAsFound.map(storedMessage),
    },
    missing: missing.map(missingAsToday),
    logs: logs.map(logFindingAsToday),
    triage: recordAsToday(triage),
  });
}

export const hasPacket = async ({ tx, actor }: Context, id: string): Promise<boolean> =>
  (await tx.packet.count({ where: { orgId: actor.orgId, id } })) > 0;

export type PacketBefore = {
  readonly id: string;
  readonly version: number;
  readonly at: string;
  readonly by: string;
  readonly caseFile: CaseFile;
};

/** The packets that a ticket has so far, oldest first. */
export async function packetsBefore({ tx, actor }: Context, ticketId: string): Promise<PacketBefore[]> {
  const rows = await tx.packet.findMany({
    where: { orgId: actor.orgId, ticketId },
    orderBy: { version: 'asc' },
  });
  return rows.map((row) => ({
    id: row.id,
    version: row.version,
    at: row.createdAt.toISOString(),
    by: row.createdBy,
    caseFile: caseFileIn(row),
  }));
}
