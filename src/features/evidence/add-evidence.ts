import type { z } from 'zod';
import type {
  EvidenceItem,
  EvidenceRef,
  FileEvidenceAbout,
  recordReading,
} from '../../../shared/contract/evidence.ts';
import { Prisma } from '../../database/index.ts';
import { type Context, created, type Outcome, type Refused, refused } from '../../http/index.ts';
import { evidenceItemOf, findEvidence } from '../evidence-record/index.ts';
import { appendTicketEvent } from '../tickets/index.ts';
import { refusalOfTie, ticketForEvidence } from './place-of-evidence.ts';
import { type PreparedFile, thumbnailType } from './prepare-file.ts';

const noTicket = refused('not-found', 'There is no such ticket.');

type NewFile = {
  readonly id: string;
  readonly ticketId: string;
  readonly about: FileEvidenceAbout;
  readonly fileName: string | null;
  readonly prepared: PreparedFile;
};

/**
 * Adds a prepared file to a ticket: the event first, so that a refusal keeps nothing, then the rows, and last of all
 * the file itself, moved to where it stays.
 */
export async function addFile(
  context: Context,
  { id, ticketId, about, fileName, prepared }: NewFile,
): Promise<Outcome<EvidenceItem>> {
  const { actor, services } = context;
  const { main, thumbnail } = prepared;
  const ref = refOf(context, id, {
    ...about,
    span: about.span ?? prepared.span,
    sha256: main.sha256,
    reading: null,
  });
  const refusal = refusalOfSpan(about) ?? (await accept(context, ticketId, ref));
  if (refusal !== null) return refusal;
  await addStoredFile(context, main, prepared.mediaType);
  if (thumbnail !== null) await addStoredFile(context, thumbnail, thumbnailType);
  await addRow(context, ref, {
    ticketId,
    description: about.description,
    fileName,
    originalSha256: prepared.originalSha256,
    thumbnailSha256: thumbnail?.sha256 ?? null,
    facts: (prepared.facts ?? Prisma.DbNull) as Prisma.InputJsonObject,
  });
  await services.evidenceStore.keep(actor.orgId, main);
  if (thumbnail !== null) await services.evidenceStore.keep(actor.orgId, thumbnail);
  return added(context, id);
}

/** Adds a reading without a file: a firmware level, settings, a note. */
export async function addReading(
  context: Context,
  ticketId: string,
  input: z.infer<typeof recordReading>,
): Promise<Outcome<EvidenceItem>> {
  const { services } = context;
  const { reading, description } = input;
  const facts = { ...input, kind: reading.kind, span: null, sha256: null };
  const ref = refOf(context, services.newId(), facts);
  const refusal = refusalOfReading(input) ?? (await accept(context, ticketId, ref));
  if (refusal !== null) return refusal;
  await addRow(context, ref, { ticketId, description });
  return added(context, ref.id);
}

type Described = Pick<EvidenceRef, 'kind' | 'tie' | 'span' | 'sha256' | 'reading'> & {
  takenAt: string | null;
};

const refOf = ({ services, actor }: Context, id: string, described: Described): EvidenceRef => ({
  id,
  kind: described.kind,
  sha256: described.sha256,
  tie: described.tie,
  span: described.span,
  reading: described.reading,
  at: new Date(described.takenAt ?? services.now()).toISOString(),
  by: actor.memberId,
  withdrawn: null,
});

function refusalOfSpan({ span }: FileEvidenceAbout): Refused | null {
  if (span === null || Date.parse(span.from) <= Date.parse(span.to)) return null;
  return refused('invalid-input', 'A log ends after it begins.', {
    errors: [{ pointer: '/span/to', code: 'order', text: 'lies before `from`' }],
  });
}

function refusalOfReading({ reading, tie }: z.infer<typeof recordReading>): Refused | null {
  if (reading.kind !== 'note' && tie.deviceId === null) {
    return refused('invalid-input', `A reading of ${reading.kind} says of which device.`, {
      errors: [{ pointer: '/tie/deviceId', code: 'required', text: 'name the device that was read' }],
    });
  }
  if (reading.kind === 'settings' && reading.phase !== 'apart' && tie.changeId === null) {
    return refused('invalid-input', `Settings ${reading.phase} a change say of which change.`, {
      errors: [{ pointer: '/tie/changeId', code: 'required', text: 'name the change' }],
    });
  }
  return null;
}

/** Checks what the item is tied to and puts it to the ticket's machine; null when both agree. */
async function accept(context: Context, ticketId: string, ref: EvidenceRef): Promise<Refused | null> {
  const { actor, services } = context;
  const ticket = await ticketForEvidence(context, ticketId);
  if (ticket === null) return noTicket;
  const refusal = await refusalOfTie(context, ticket, ref.tie);
  if (refusal !== null) return refusal;
  const accepted = await appendTicketEvent(context, ticketId, {
    type: 'evidenceAdded',
    evidence: ref,
    at: services.now().toISOString(),
    by: actor.memberId,
    role: actor.role,
  });
  return accepted.ok ? null : accepted;
}

/** A content that the organisation has already stays as it is, whoever sent it first. */
async function addStoredFile(
  { tx, actor }: Context,
  file: { sha256: string; sizeBytes: number },
  mediaType: string,
): Promise<void> {
  const { sha256, sizeBytes } = file;
  await tx.storedFile.createMany({
    data: [{ orgId: actor.orgId, sha256, sizeBytes: BigInt(sizeBytes), mediaType }],
    skipDuplicates: true,
  });
}

type DescribedRow = Pick<Prisma.EvidenceUncheckedCreateInput, 'ticketId' | 'description'> &
  Partial<Prisma.EvidenceUncheckedCreateInput>;

async function addRow(
  { tx, actor, services }: Context,
  ref: EvidenceRef,
  described: DescribedRow,
): Promise<void> {
  const { id, kind, sha256, tie, span, reading, at, by } = ref;
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
      takenAt: new Date(at),
      uploadedAt: services.now(),
      memberId: by,
    },
  });
}

async function added(context: Context, id: string): Promise<Outcome<EvidenceItem>> {
  const row = await findEvidence(context, id);
  if (row === null) throw new Error('evidence that was just added is not there');
  return created(evidenceItemOf(row), `/evidence/${id}`);
}
