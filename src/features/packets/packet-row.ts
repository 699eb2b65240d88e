import { findingAsToday } from '../../../shared/audit/stored-finding.ts';
import {
  type BagFile,
  bagFile,
  type CaseFile,
  caseFile as caseFileForm,
} from '../../../shared/contract/packet.ts';
import { logFindingAsToday } from '../../../shared/logs/index.ts';
import { type Message, message, storedMessage } from '../../../shared/message/index.ts';
import { edidFactsAsToday } from '../../../shared/signal/edid/index.ts';
import { missingAsToday, recordAsToday } from '../../../state-machines/index.ts';
import { NewerDataError } from '../../database/index.ts';
import { type Context, refused } from '../../http/index.ts';
import { changesOf } from '../chains/index.ts';

export const noPacket = refused('not-found', message('noSuchPacket'));

export const filesOf = (row: { readonly files: unknown }): BagFile[] => bagFile.array().parse(row.files);
export const newsOf = (row: { readonly news: unknown }): Message[] => newsAsToday(row.news);
/** Version 1 kept sentences. */
const newsAsToday = (stored: unknown): Message[] => (stored as (string | Message)[]).map(storedMessage);

/** A case file of version 1 named no language: it was English. */
type Stored = Omit<CaseFile, 'caseFileVersion' | 'language'> & {
  readonly caseFileVersion: number;
  readonly language?: CaseFile['language'];
};
const newestKnown = caseFileForm.shape.caseFileVersion.value;

/**
 * The case as it was when the packet was made, read as today's; what the packet's own files hold stays as it is.
 *
 * @throws NewerDataError
 */
export function caseFileIn(row: { readonly caseFile: unknown }): CaseFile {
  const stored = row.caseFile as Stored;
  const {
    caseFileVersion: found,
    language = 'en',
    prerequisites,
    chain,
    triage,
    missing,
    logs = [],
  } = stored;
  if (found > newestKnown)
    throw new NewerDataError(`the case file of packet ${stored.packet.id}`, { found, known: newestKnown });
  return caseFileForm.parse({
    ...stored,
    caseFileVersion: newestKnown,
    language,
    news: newsAsToday(stored.news),
    prerequisites: { ...prerequisites, findings: prerequisites.findings.map(findingAsToday) },
    chain: {
      ...chain,
      versions: chain.versions.map((version) => ({ ...version, changes: changesOf(version) })),
      sinceAsFound: chain.sinceAsFound.map(storedMessage),
    },
    missing: missing.map(missingAsToday),
    evidence: stored.evidence.map((item) => ({
      ...item,
      facts: item.facts === null ? null : edidFactsAsToday(item.facts),
    })),
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
