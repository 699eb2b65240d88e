import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import { message } from '../../../shared/message/index.ts';
import type { EvidenceStore } from '../../evidence-store/index.ts';
import { type Context, found, type Outcome, type Refused, refused } from '../../http/index.ts';
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

/**
 * Assumed: up to this size, in bytes, reading a file through once more before it is sent costs nobody any time; of a larger
 * one it is only looked whether it is there, and `sha256sum` tells whoever has fetched it.
 */
const checkedUpToBytes = 64 * 1024 * 1024;

/** Why a file must not be handed out as what was kept; null where nothing is wrong with it. */
export async function faultOfFile(
  store: EvidenceStore,
  { orgId, sha256 }: Pick<EvidenceFile, 'orgId' | 'sha256'>,
): Promise<Refused | null> {
  const sizeBytes = await store.size(orgId, sha256);
  if (sizeBytes === null) return refused('file-damaged', message('fileLost'));
  if (sizeBytes > checkedUpToBytes || (await store.check(orgId, sha256)) === 'whole') return null;
  return refused('file-damaged', message('fileDamaged'));
}

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
