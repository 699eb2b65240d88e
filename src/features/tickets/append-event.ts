import {
  type CompleteCommand,
  decide,
  type Refusal,
  type TriageEvent,
  type TriageSnapshot,
} from '../../../state-machines/index.ts';
import { type Context, type Refused, refused } from '../../http/index.ts';
import {
  columnsOf,
  type LockedTicket,
  lockTicket,
  noTicket,
  writeChanges,
  writeEvents,
} from '../ticket-record/index.ts';
import { refusalOfForgedErasure } from './forged-erasure.ts';

/** `row` is the ticket as it is now, `before` and `after` what triage knew of it and knows. */
type Accepted = { ok: true; row: LockedTicket; before: TriageSnapshot; after: TriageSnapshot };

/**
 * Puts news from another feature, such as evidence that was added, to a ticket's machine and, where it is accepted,
 * writes log, snapshot and changes in this transaction.
 */
export async function appendTicketEvent(
  context: Context,
  ticketId: string,
  news: CompleteCommand,
): Promise<Accepted | Refused> {
  const row = await lockTicket(context, ticketId);
  return row === null ? noTicket : accept(context, row, news);
}

/** Why a ticket's machine would not take this now; null where it would. Writes nothing. */
export function refusalOfNews(snapshot: TriageSnapshot, news: CompleteCommand): Refused | null {
  const decision = decide(snapshot, news);
  return decision.accepted ? null : refusalOf(decision.refusal);
}

/** Decides on a command to a ticket whose row is locked, and writes every event of the decision. */
export async function accept(
  context: Context,
  row: LockedTicket,
  command: CompleteCommand,
): Promise<Accepted | Refused> {
  const before = row.snapshot;
  const forged = refusalOfForgedErasure(command, before);
  if (forged !== null) return forged;
  const decision = decide(before, command);
  if (!decision.accepted) return refusalOf(decision.refusal);
  const after = decision.snapshot;
  const columns = { ...columnsOf(after), symptom: after.context.symptom.kind };
  const [written] = await Promise.all([
    writeEvents(context, row, { events: decision.events.map(entryOf), columns }),
    writeChanges(context, row, { before: before.context.changes, after: after.context.changes }),
  ]);
  return { ok: true, row: written, before, after };
}

/** An event as the log keeps it. */
const entryOf = ({ type, at, by, ...payload }: TriageEvent) => ({ type, payload, at: new Date(at) });

function refusalOf({ type, said, ...facts }: Refusal): Refused {
  return refused(type, said, facts);
}
