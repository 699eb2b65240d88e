import type { TenantTransaction } from '../../database/index.ts';

/** Bytes of all files of evidence that an organisation keeps, thumbnails included, each content once. */
export async function storedBytes(orgId: string, tx: TenantTransaction): Promise<number> {
  const { _sum: sum } = await tx.storedFile.aggregate({ where: { orgId }, _sum: { sizeBytes: true } });
  return Number(sum.sizeBytes ?? 0);
}
