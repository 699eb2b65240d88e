import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import { message } from '../../../shared/message/index.ts';
import { type Context, found, type Outcome, refused } from '../../http/index.ts';
import { evidenceItemOf, extensionOf, findEvidence, safeStem } from '../evidence-record/index.ts';
import { thumbnailType } from './prepare-file.ts';
import { noEvidence } from './withdraw.ts';

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
    if (row.thumbnailSha256 === null) return refused('not-found', message('noThumbnail'));
    return found({
      orgId,
      sha256: row.thumbnailSha256,
      sizeBytes: null,
      mediaType: thumbnailType,
      fileName: `${stem}-small${extensionOf(thumbnailType)}`,
    });
  }
  if (row.sha256 === null || row.file === null) return refused('not-found', message('readingWithoutFile'));
  const { mediaType, sizeBytes } = row.file;
  return found({
    orgId,
    sha256: row.sha256,
    sizeBytes: Number(sizeBytes),
    mediaType,
    fileName: `${stem}${extensionOf(mediaType)}`,
  });
}
