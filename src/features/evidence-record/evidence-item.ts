import type { EvidenceItem, EvidenceRef } from '../../../shared/contract/evidence.ts';
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
  tie: row.tie as EvidenceItem['tie'],
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
  facts: row.facts as EvidenceItem['facts'],
  uploadedAt: row.uploadedAt.toISOString(),
});

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
