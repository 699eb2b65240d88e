import type { Condition, EvidenceStore, StoredContent } from './store.ts';

/**
 * Puts a file of one store into another, durably, where that one has it not whole already.
 * @returns in which condition the file came from the first: only a whole one is kept by the second
 */
export async function copyContent(
  { orgId, sha256 }: StoredContent,
  from: EvidenceStore,
  to: EvidenceStore,
): Promise<Condition> {
  if ((await to.check(orgId, sha256)) === 'whole') return 'whole';
  if (!(await from.has(orgId, sha256))) return 'missing';
  const received = await to.receive(await from.get(orgId, sha256), { maxBytes: Number.POSITIVE_INFINITY });
  if (!received.ok) throw new RangeError('a file without a limit was too large');
  if (received.file.sha256 !== sha256) {
    await to.discard(received.file);
    return 'damaged';
  }
  await to.keep(orgId, received.file);
  return 'whole';
}
