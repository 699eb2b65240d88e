import { type EvidenceItem, type EvidenceRef, evidenceTie } from '../../../shared/contract/evidence.ts';
import { type LogReading, readingAsToday } from '../../../shared/logs/index.ts';
import { edidFactsAsToday } from '../../../shared/signal/edid/index.ts';
import type { Prisma } from '../../database/index.ts';
import type { Context } from '../../http/index.ts';

/** What a row of evidence is read with. */
export const withFile = { file: { select: { mediaType: true, sizeBytes: true } } } as const;
export type EvidenceRow = Prisma.EvidenceGetPayload<{ include: typeof withFile }>;

/** A row of evidence as the API and packets show it. */
export const evidenceItemOf = (row: EvidenceRow): EvidenceItem => ({
  id: row.id,
  kind: row.kind as EvidenceItem['kind'],
  sha256: row.sha256,
  tie: evidenceTie.parse(row.tie),
  span: row.span as EvidenceItem['span'],
  reading: row.reading as EvidenceItem['reading'],
  at: row.takenAt.toISOString(),
  by: row.memberId,
  withdrawn: row.withdrawn as EvidenceItem['withdrawn'],
  ticketId: row.ticketId,
  description: row.description,
  fileName: row.fileName,
  mediaType: row.file?.mediaType ?? null,
  sizeBytes: row.file === null ? null : Number(row.file.sizeBytes),
  originalSha256: row.originalSha256,
  hasThumbnail: row.thumbnailSha256 !== null,
  facts: factsOf(row),
  uploadedAt: row.uploadedAt.toISOString(),
});

/** What was read out of a file; of a log and of an EDID, as this version says it. */
function factsOf({ facts }: Pick<EvidenceRow, 'facts'>): EvidenceItem['facts'] {
  const read = facts as (EvidenceItem['facts'] & { log?: LogReading }) | null;
  if (read === null) return null;
  return read.log === undefined ? edidFactsAsToday(read) : { ...read, log: readingAsToday(read.log) };
}

/** What was read out of a log on arrival; null where nothing was. */
export const logReadingOf = ({ facts }: Pick<EvidenceItem, 'facts'>): LogReading | null =>
  (facts as { log?: LogReading } | null)?.log ?? null;

/** The bytes of an EDID as they were read on arrival, in hexadecimal; null where there were none. */
export function edidHexOf({ facts }: Pick<EvidenceItem, 'facts'>): string | null {
  const hex = facts?.edidHex;
  return typeof hex === 'string' ? hex : null;
}

/** An item of evidence by its id; null where the caller's organisation has none under it. */
export const findEvidence = ({ tx, actor }: Context, id: string): Promise<EvidenceRow | null> =>
  tx.evidence.findUnique({ where: { orgId_id: { orgId: actor.orgId, id } }, include: withFile });

/** All evidence of a ticket in the order in which the ticket's machine took it, which no later item changes. */
export async function evidenceOf(
  { tx, actor }: Context,
  ticketId: string,
  refs: readonly EvidenceRef[],
): Promise<EvidenceRow[]> {
  const rows = await tx.evidence.findMany({ where: { orgId: actor.orgId, ticketId }, include: withFile });
  const byId = new Map(rows.map((row) => [row.id, row]));
  return refs.flatMap(({ id }) => byId.get(id) ?? []);
}

/** A ticket's evidence of one kind in the order in which it was taken, withdrawn items too. */
export async function evidenceOfKind(
  { tx, actor }: Context,
  ticketId: string,
  kind: EvidenceItem['kind'],
): Promise<EvidenceItem[]> {
  const rows = await tx.evidence.findMany({
    where: { orgId: actor.orgId, ticketId, kind },
    include: withFile,
    orderBy: { takenAt: 'asc' },
  });
  return rows.map(evidenceItemOf);
}
