import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import { isReadable, newestReadable } from '../../../state-machines/index.ts';
import { NewerDataError, type Prisma } from '../../database/index.ts';
import type { Context } from '../../http/index.ts';
import type { Tenancy } from './tenancy.ts';

/** What the first event of every log names as the hash before it. */
export const noPreviousHash = '0'.repeat(64);

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

/** SHA-256 over the RFC 8785 form of an event, its predecessor's hash included; lower-case hexadecimal. */
export const hashOfEntry = (entry: LogEntry): string =>
  createHash('sha256')
    .update(canonicalize(entry) ?? '')
    .digest('hex');

/** Appends an event to a ticket's log. The caller holds the lock on the ticket's row. */
export async function appendToLog(
  { tx, actor }: Context,
  event: Omit<LogEntry, 'previousHash' | 'actorId'>,
): Promise<void> {
  const last = await tx.ticketEvent.findFirst({
    where: { orgId: actor.orgId, ticketId: event.ticketId },
    orderBy: { sequence: 'desc' },
    select: { hash: true },
  });
  // Through JSON once, so that what is hashed is what any reader of the stored payload hashes again.
  const payload = JSON.parse(JSON.stringify(event.payload)) as Record<string, unknown>;
  const entry = { ...event, payload, actorId: actor.memberId, previousHash: last?.hash ?? noPreviousHash };
  await tx.ticketEvent.create({
    data: {
      ...entry,
      payload: payload as Prisma.InputJsonObject,
      orgId: actor.orgId,
      at: new Date(entry.at),
      hash: hashOfEntry(entry),
    },
  });
}

/** One entry of a ticket's log as the database keeps it. */
export type LoggedEvent = LogEntry & { readonly hash: string };

type EventRow = Omit<LoggedEvent, 'payload' | 'at'> & { readonly payload: unknown; readonly at: Date };

/** @throws NewerDataError */
export function loggedEventOf(row: EventRow): LoggedEvent {
  if (!isReadable(row.machineVersion)) {
    const versions = { found: row.machineVersion, known: newestReadable };
    throw new NewerDataError(`event ${row.sequence} of ticket ${row.ticketId}`, versions);
  }
  return {
    ticketId: row.ticketId,
    sequence: row.sequence,
    type: row.type,
    payload: row.payload as Record<string, unknown>,
    actorId: row.actorId,
    at: row.at.toISOString(),
    machineVersion: row.machineVersion,
    previousHash: row.previousHash,
    hash: row.hash,
  };
}

/** A ticket's log as it was hashed, oldest first. */
export async function loggedEventsOf({ tx, actor }: Tenancy, ticketId: string): Promise<LoggedEvent[]> {
  const rows = await tx.ticketEvent.findMany({
    where: { orgId: actor.orgId, ticketId },
    orderBy: { sequence: 'asc' },
  });
  return rows.map(loggedEventOf);
}
