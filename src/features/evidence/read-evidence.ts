import { z } from 'zod';
import type { EvidenceItem, evidenceQuery } from '../../../shared/contract/evidence.ts';
import { id, instant } from '../../../shared/contract/primitives.ts';
import { type Context, decodeCursor, found, type Outcome, pageFrom, refused } from '../../http/index.ts';
import { evidenceItemOf, extensionOf, findEvidence, safeStem, withFile } from '../evidence-record/index.ts';
import { thumbnailType } from './prepare-file.ts';
import { noEvidence } from './withdraw.ts';

const position = z.tuple([instant, id]);

/** A ticket's evidence, newest first, withdrawn items too. */
export async function listEvidence(
  { tx, actor }: Context,
  ticketId: string,
  query: z.infer<typeof evidenceQuery>,
): Promise<Outcome<{ items: EvidenceItem[]; next: string | null }>> {
  const { orgId } = actor;
  const after = decodeCursor(query.cursor, position);
  if (after !== null && 'ok' in after) return after;
  if (
    (await tx.ticket.findUnique({ where: { orgId_id: { orgId, id: ticketId } }, select: { id: true } })) ===
    null
  ) {
    return refused('not-found', 'There is no such ticket.');
  }
  const rows = await tx.evidence.findMany({
    where: {
      orgId,
      ticketId,
      ...(query.kind === undefined ? {} : { kind: query.kind }),
      ...(after === null
        ? {}
        : { OR: [{ uploadedAt: { lt: after[0] } }, { uploadedAt: after[0], id: { lt: after[1] } }] }),
    },
    include: withFile,
    orderBy: [{ uploadedAt: 'desc' }, { id: 'desc' }],
    take: query.limit + 1,
  });
  return found(
    pageFrom(rows, query.limit, {
      positionOf: (row) => [row.uploadedAt.toISOString(), row.id],
      view: evidenceItemOf,
    }),
  );
}

export async function readEvidence(context: Context, evidenceId: string): Promise<Outcome<EvidenceItem>> {
  const row = await findEvidence(context, evidenceId);
  return row === null ? noEvidence : found(evidenceItemOf(row));
}

export type EvidenceFile = {
  readonly orgId: string;
  readonly sha256: string;
  readonly sizeBytes: number | null;
  readonly mediaType: string;
  readonly fileName: string;
};

/** The file of an item, or its thumbnail. */
export async function evidenceFile(
  context: Context,
  evidenceId: string,
  which: 'content' | 'thumbnail',
): Promise<Outcome<EvidenceFile>> {
  const row = await findEvidence(context, evidenceId);
  if (row === null) return noEvidence;
  const { orgId } = context.actor;
  const stem = safeStem(row.fileName?.replace(/\.[A-Za-z0-9]{1,8}$/, '') ?? '') || row.kind;
  if (which === 'thumbnail') {
    if (row.thumbnailSha256 === null) return refused('not-found', 'This item has no thumbnail.');
    return found({
      orgId,
      sha256: row.thumbnailSha256,
      sizeBytes: null,
      mediaType: thumbnailType,
      fileName: `${stem}-small${extensionOf(thumbnailType)}`,
    });
  }
  if (row.sha256 === null || row.file === null)
    return refused('not-found', 'This item is a reading and has no file.');
  const { mediaType, sizeBytes } = row.file;
  return found({
    orgId,
    sha256: row.sha256,
    sizeBytes: Number(sizeBytes),
    mediaType,
    fileName: `${stem}${extensionOf(mediaType)}`,
  });
}
