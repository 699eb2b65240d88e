import type { KeyObject } from 'node:crypto';
import { Readable } from 'node:stream';
import type { BagFile } from '../../../shared/contract/packet.ts';
import type { EvidenceStore } from '../../evidence-store/index.ts';
import { publicKeyOf, signatureOfBag } from './bag-signature.ts';
import {
  evidenceFiles,
  type PacketContents,
  tagFiles,
  tagManifest,
  type WrittenFile,
  writtenPayload,
} from './packet-files.ts';

/**
 * Writes a bag into the evidence store, where its evidence lies already, and signs it.
 * @returns every file of the bag in the order in which the zip has them: tag files, then the payload
 */
export async function storeBag(
  { store, signingKey }: { readonly store: EvidenceStore; readonly signingKey: KeyObject },
  orgId: string,
  contents: PacketContents,
): Promise<BagFile[]> {
  const keep = async ({ path, content }: WrittenFile): Promise<BagFile> => {
    const kept = await store.put(orgId, Readable.from([Buffer.from(content)]), { maxBytes: Infinity });
    if (!kept.ok) throw new Error(`the evidence store refused ${path}`);
    return { path, sha256: kept.sha256, sizeBytes: kept.sizeBytes };
  };
  const keepAll = async (files: readonly WrittenFile[]): Promise<BagFile[]> => {
    const kept: BagFile[] = [];
    for (const file of files) kept.push(await keep(file));
    return kept;
  };
  const payload = [...(await keepAll(writtenPayload(contents))), ...evidenceFiles(contents.file)];
  const tags = await keepAll([...tagFiles(contents, payload), publicKeyOf(signingKey)]);
  const manifest = tagManifest(tags);
  return [...tags, ...(await keepAll([manifest, signatureOfBag(manifest, signingKey)])), ...payload];
}
