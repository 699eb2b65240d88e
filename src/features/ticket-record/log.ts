import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import { isReadable, newestReadable } from '../../../state-machines/index.ts';
import { NewerDataError } from '../../database/index.ts';
import type { Context } from '../../http/index.ts';
import { textsInEvent } from './event-forms.ts';
import { type KeptText, resealed, seal, type TextOfEvent, unseal } from './sealed-text.ts';
import { signatureOf } from './signature.ts';
import type { Tenancy } from './tenancy.ts';

/** What the first event of every log names as the hash before it. */
export const noPreviousHash = '0'.repeat(64);

/** How events are hashed. In format 1 the texts of persons stand in what is hashed, in format 2 their digests. */
const logFormat = 2;

export type LogEntry = {
  ticketId: string;
  sequence: number;
  type: string;
  payload: Record<string, unknown>;
  actorId: string;
  /** UTC, ISO 8601, milliseconds. */
  at: string;
  machineVersion: number;
  previousHash: string;
};

/** RFC 8785 form of what an event's hash is over. */
type Hashed = LogEntry & { format?: number };
/** SHA-256 over the RFC 8785 form of an event, its predecessor's hash included; lower-case hexadecimal. */
export const hashOf = (hashed: Hashed): string =>
  createHash('sha256')
    .update(canonicalize(hashed) ?? '')
    .digest('hex');

/** The hash that the next event of a ticket's log has to name. The caller holds the lock on the ticket's row. */
export async function lastHashOf({ tx, actor }: Tenancy, ticketId: string): Promise<string> {
  const [last] = await tx.sql<{ hash: string }>`
    select hash from ticket_event where org_id = ${actor.orgId}::uuid and ticket_id = ${ticketId}::uuid
    order by sequence desc limit 1`;
  return last?.hash ?? noPreviousHash;
}

/** An event that is to be logged: what its hash is made of but for who sent it and what came before. */
export type NewEntry = Omit<LogEntry, 'previousHash' | 'actorId' | 'ticketId'>;

/**
 * Appends events to a ticket's log, in one statement. The caller holds the lock on the ticket's row.
 * @param previousHash of the last event so far
 * @returns the hash of the last one now
 */
export async function appendToLog(
  { tx, actor, services }: Context,
  ticketId: string,
  { events, previousHash }: { readonly events: readonly NewEntry[]; readonly previousHash: string },
): Promise<string> {
  let lastHash = previousHash;
  const texts: object[] = [];
  const rows = events.map((event) => {
    // Through JSON once, so that what is hashed is what any reader of the stored payload hashes again.
    const readable = JSON.parse(JSON.stringify(event.payload)) as Record<string, unknown>;
    const { payload, kept } = seal(readable, textsInEvent(event.type, readable));
    const own = { ...event, payload, ticketId, actorId: actor.memberId };
    const entry = { ...own, previousHash: lastHash, format: logFormat };
    const hash = hashOf(entry);
    lastHash = hash;
    texts.push(...kept.map((text) => ({ ...text, sequence: event.sequence })));
    return { ...entry, hash, signature: signatureOf(hash, services.config.signingKey) };
  });
  await tx.sql`
    with logged as (
      insert into ticket_event (org_id, ticket_id, sequence, type, payload, actor_id, at, machine_version, previous_hash,
        hash, format, signature)
      select ${actor.orgId}::uuid, "ticketId", sequence, type, payload, "actorId", at, "machineVersion", "previousHash",
        hash, format, signature
      from jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) as event ("ticketId" uuid, sequence int, type text,
        payload jsonb, "actorId" uuid, at timestamptz, "machineVersion" int, "previousHash" text, hash text, format int,
        signature text))
    insert into ticket_text (org_id, ticket_id, sequence, pointer, salt, text)
    select ${actor.orgId}::uuid, ${ticketId}::uuid, sequence, pointer, salt, text
    from jsonb_to_recordset(${JSON.stringify(texts)}::jsonb) as kept (sequence int, pointer text, salt text, text text)`;
  return lastHash;
}

/** One entry of a ticket's log, with the texts of persons in its payload, and where they stand. */
export type LoggedEvent = LogEntry & {
  readonly hash: string;
  readonly format: number;
  readonly texts: readonly TextOfEvent[];
};

/** An event as it was hashed: with digests in the place of texts. */
export function hashedForm({ hash, texts, format, payload, ...entry }: LoggedEvent): Hashed {
  return format === 1 ? { ...entry, payload } : { ...entry, format, payload: resealed(payload, texts) };
}

/** What a row of the log is read with. */
export const withTexts = { texts: { select: { pointer: true, salt: true, text: true } } } as const;
type EventRow = Omit<LoggedEvent, 'payload' | 'at' | 'texts'> & {
  readonly payload: unknown;
  readonly at: Date;
  readonly texts: readonly KeptText[];
};

/** @throws NewerDataError */
export function loggedEventOf(row: EventRow): LoggedEvent {
  if (!isReadable(row.machineVersion)) {
    const versions = { found: row.machineVersion, known: newestReadable };
    throw new NewerDataError(`event ${row.sequence} of ticket ${row.ticketId}`, versions);
  }
  if (row.format > logFormat) {
    const formats = { found: row.format, known: logFormat };
    throw new NewerDataError(`the form of event ${row.sequence} of ticket ${row.ticketId}`, formats);
  }
  const stored = row.payload as Record<string, unknown>;
  const { payload, texts } = row.format === 1 ? { payload: stored, texts: [] } : unseal(stored, row.texts);
  return {
    ticketId: row.ticketId,
    sequence: row.sequence,
    type: row.type,
    payload,
    actorId: row.actorId,
    at: row.at.toISOString(),
    machineVersion: row.machineVersion,
    previousHash: row.previousHash,
    hash: row.hash,
    format: row.format,
    texts,
  };
}

/** A ticket's log, oldest first. */
export async function loggedEventsOf({ tx, actor }: Tenancy, ticketId: string): Promise<LoggedEvent[]> {
  const rows = await tx.ticketEvent.findMany({
    where: { orgId: actor.orgId, ticketId },
    include: withTexts,
    orderBy: { sequence: 'asc' },
  });
  return rows.map(loggedEventOf);
}
