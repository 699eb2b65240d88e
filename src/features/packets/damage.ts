import type { BagFile } from '../../../shared/contract/packet.ts';
import type { EvidenceStore } from '../../evidence-store/index.ts';

/** A file of a packet that is not what its manifest says any more. */
export type Damage = Pick<BagFile, 'path' | 'sha256'> & { readonly is: 'damaged' | 'missing' };

/** Reads every file of a packet, each content once, and tells which are not what was packed. */
export async function damageIn(
  store: EvidenceStore,
  orgId: string,
  files: readonly BagFile[],
): Promise<Damage[]> {
  const known = new Map<string, Awaited<ReturnType<EvidenceStore['check']>>>();
  const damage: Damage[] = [];
  for (const { path, sha256 } of files) {
    const is = known.get(sha256) ?? (await store.check(orgId, sha256));
    known.set(sha256, is);
    if (is !== 'whole') damage.push({ path, sha256, is });
  }
  return damage;
}
