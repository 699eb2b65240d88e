import type { EvidenceItem, EvidenceRef } from '../../../shared/contract/evidence.ts';
import { Prisma } from '../../database/index.ts';
import type { Context } from '../../http/index.ts';

type KeptFile = { readonly sha256: string; readonly sizeBytes: number };

/** A content that the organisation has already stays as it is, whoever sent it first. */
export async function insertFile({ tx, actor }: Context, file: KeptFile, mediaType: string): Promise<void> {
  const { sha256, sizeBytes } = file;
  await tx.storedFile.createMany({
    data: [{ orgId: actor.orgId, sha256, sizeBytes: BigInt(sizeBytes), mediaType }],
    skipDuplicates: true,
  });
}

/** What is kept of an item beside what triage has of it. */
type Described = {
  readonly ticketId: string;
  readonly description: string;
  readonly fileName?: string | null;
  readonly originalSha256?: string | null;
  readonly thumbnailSha256?: string | null;
  readonly facts?: EvidenceItem['facts'];
};

export async function insertEvidence(
  { tx, actor, services }: Context,
  { id, kind, sha256, tie, span, reading, at, by }: EvidenceRef,
  { facts, ...described }: Described,
): Promise<void> {
  await tx.evidence.create({
    data: {
      ...described,
      orgId: actor.orgId,
      id,
      kind,
      tie,
      sha256,
      span: span ?? Prisma.DbNull,
      reading: reading ?? Prisma.DbNull,
      facts: (facts ?? Prisma.DbNull) as Prisma.InputJsonObject,
      takenAt: new Date(at),
      uploadedAt: services.now(),
      memberId: by,
    },
  });
}

/** Notes that an item no longer counts. */
export async function markWithdrawn(
  { tx, actor }: Context,
  id: string,
  withdrawn: NonNullable<EvidenceRef['withdrawn']>,
): Promise<void> {
  await tx.evidence.update({ where: { orgId_id: { orgId: actor.orgId, id } }, data: { withdrawn } });
}
