import type { z } from 'zod';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import type {
  EvidenceItem,
  EvidenceRef,
  FileEvidenceAbout,
  recordReading,
} from '../../../shared/contract/evidence.ts';
import { message } from '../../../shared/message/index.ts';
import { type Context, created, type Outcome, type Refused, refused } from '../../http/index.ts';
import { evidenceItemOf, findEvidence, insertEvidence, insertFile } from '../evidence-record/index.ts';
import { findCase, noTicket } from '../ticket-record/index.ts';
import { appendTicketEvent, refusalOfForgedErasure, refusalOfNews } from '../tickets/index.ts';
import { refusalOfTie } from './place-of-evidence.ts';
import { type PreparedFile, thumbnailType } from './prepare-file.ts';

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
  const refusal = refusalOfAbout(about) ?? (await accept(context, ticketId, ref));
  if (refusal !== null) return refusal;
  await insertFile(context, main, prepared.mediaType);
  if (thumbnail !== null) await insertFile(context, thumbnail, thumbnailType);
  await insertEvidence(context, ref, {
    ticketId,
    description: about.description,
    fileName,
    originalSha256: prepared.originalSha256,
    thumbnailSha256: thumbnail?.sha256 ?? null,
    facts: prepared.facts,
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
  const refusal =
    refusalOfForgedErasure(description, null) ??
    refusalOfReading(input) ??
    (await accept(context, ticketId, ref));
  if (refusal !== null) return refusal;
  await insertEvidence(context, ref, { ticketId, description });
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

/** Why what is said of a file can't be so, whatever the ticket; null where it can. */
const refusalOfAbout = (about: FileEvidenceAbout): Refused | null =>
  refusalOfForgedErasure(about.description, null) ?? refusalOfSpan(about);

function refusalOfSpan({ span }: FileEvidenceAbout): Refused | null {
  if (span === null || Date.parse(span.from) <= Date.parse(span.to)) return null;
  return refused('invalid-input', message('logEndsBeforeItBegins'), {
    errors: [{ pointer: '/span/to', ...message('fieldBeforeBeginning') }],
  });
}

function refusalOfReading({ reading, tie }: z.infer<typeof recordReading>): Refused | null {
  if (reading.kind !== 'note' && tie.deviceId === null) {
    return refused('invalid-input', message('readingNeedsDevice', { kind: reading.kind }), {
      errors: [{ pointer: '/tie/deviceId', ...message('deviceReadMissing') }],
    });
  }
  if (reading.kind === 'settings' && reading.phase !== 'apart' && tie.changeId === null) {
    return refused('invalid-input', message('settingsNeedChange'), {
      errors: [{ pointer: '/tie/changeId', ...message('changeMissing') }],
    });
  }
  return null;
}

/** Why a file that is still to come would not be taken now; null where nothing is known against it. */
export async function refusalOfFile(
  context: Context,
  ticketId: string,
  about: FileEvidenceAbout,
): Promise<Refused | null> {
  const ticket = await findCase(context, ticketId);
  if (ticket === null) return noTicket;
  const ref = refOf(context, context.services.newId(), { ...about, sha256: null, reading: null });
  return (
    refusalOfAbout(about) ??
    (await refusalOfTie(context, ticket, about.tie)) ??
    refusalOfNews(ticket.snapshot, newsOf(context, ref))
  );
}

/** Checks what the item is tied to and puts it to the ticket's machine; null when both agree. */
async function accept(context: Context, ticketId: string, ref: EvidenceRef): Promise<Refused | null> {
  const ticket = await findCase(context, ticketId);
  if (ticket === null) return noTicket;
  const refusal = await refusalOfTie(context, ticket, ref.tie);
  if (refusal !== null) return refusal;
  const accepted = await appendTicketEvent(context, ticketId, newsOf(context, ref));
  return accepted.ok ? null : accepted;
}

/** The event by which a ticket hears of an item. */
const newsOf = ({ actor, services }: Context, evidence: EvidenceRef) => ({
  type: 'evidenceAdded' as const,
  evidence,
  at: services.now().toISOString(),
  by: actor.memberId,
  role: actor.role,
});

async function added(context: Context, id: string): Promise<Outcome<EvidenceItem>> {
  const row = await findEvidence(context, id);
  if (row === null) throw new Error('evidence that was just added is not there');
  return created(evidenceItemOf(row), addressOf(addresses.evidence, { id }));
}
