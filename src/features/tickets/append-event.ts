import {
  decide,
  type Refusal,
  type TriageEvent,
  type TriageSnapshot,
} from '../../../state-machines/index.ts';
import { type Context, type Refused, refused } from '../../http/index.ts';
import {
  columnsOf,
  lockTicket,
  noTicket,
  type TicketRow,
  writeChanges,
  writeEvent,
} from '../ticket-record/index.ts';

type Accepted = { ok: true; row: TicketRow; before: TriageSnapshot; after: TriageSnapshot; sequence: number };

/**
 * Puts an event to a ticket's machine and, where it is accepted, writes log, snapshot and changes in this transaction.
 * For events that come from another feature, such as evidence that was added.
 */
export async function appendTicketEvent(
  context: Context,
  ticketId: string,
  event: TriageEvent,
): Promise<Accepted | Refused> {
  const row = await lockTicket(context, ticketId);
  return row === null ? noTicket : acceptEvent(context, row, event);
}

/** The same for a ticket whose row is locked already. */
export async function acceptEvent(
  context: Context,
  row: TicketRow,
  event: TriageEvent,
): Promise<Accepted | Refused> {
  const before = row.snapshot;
  const decision = decide(before, event);
  if (!decision.accepted) return refusalOf(decision.refusal);
  const after = decision.snapshot;
  const { type, at, by, ...payload } = event;
  const columns = { ...columnsOf(after), symptom: after.context.symptom.kind };
  const sequence = await writeEvent(context, row, { type, payload, at: new Date(at), columns });
  await writeChanges(context, row, { before: before.context.changes, after: after.context.changes });
  return { ok: true, row, before, after, sequence };
}

function refusalOf({ type, detail, ...facts }: Refusal): Refused {
  return refused(type, detail, facts);
}
