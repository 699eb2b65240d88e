import { message } from '../../shared/message/index.ts';
import type { EvidenceStore } from '../evidence-store/index.ts';
import { type Refused, refused } from './problem.ts';

/** Assumed: up to this size, in bytes, reading a file through once more costs nobody any time. */
const readForEachPart = 64 * 1024 * 1024;

/**
 * Why a file must not be handed out as what was kept; null where nothing is wrong with it. Reads all of it before the first
 * byte is sent, since what is wrong could not be said later; of a part of a large one only whether it is there.
 */
export async function faultOfFile(
  store: EvidenceStore,
  { orgId, sha256, isPart }: { readonly orgId: string; readonly sha256: string; readonly isPart: boolean },
): Promise<Refused | null> {
  const sizeBytes = await store.size(orgId, sha256);
  if (isPart && sizeBytes !== null && sizeBytes > readForEachPart) return null;
  const condition = await store.check(orgId, sha256);
  if (condition === 'whole') return null;
  return refused('file-damaged', message(condition === 'missing' ? 'fileLost' : 'fileDamaged'));
}
