import type { ChangeRecord } from '../../../shared/contract/triage.ts';
import {
  decide,
  MACHINE_VERSION,
  type Refusal,
  type TriageEvent,
  type TriageSnapshot,
} from '../../../state-machines/index.ts';
import { type Context, type Refused, refused } from '../../http/index.ts';
import { appendToLog } from './log.ts';
import { columnsOf, lockTicket, noTicket, snapshotOf, type TicketRow } from './ticket-row.ts';

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
  const { tx, actor } = context;
  const before = snapshotOf(row);
  const decision = decide(before, event);
  if (!decision.accepted) return refusalOf(decision.refusal);
  const after = decision.snapshot;
  const sequence = row.sequence + 1;
  const { type, at, by, ...payload } = event;
  await appendToLog(context, {
    ticketId: row.id,
    sequence,
    type,
    payload,
    at,
    machineVersion: MACHINE_VERSION,
  });
  await tx.ticket.update({
    where: { orgId_id: { orgId: actor.orgId, id: row.id } },
    data: { ...columnsOf(after), symptom: after.context.symptom.kind, sequence, updatedAt: new Date(at) },
  });
  await writeChanges(context, row, { before: before.context.changes, after: after.context.changes });
  return { ok: true, row, before, after, sequence };
}

function refusalOf({ type, detail, ...facts }: Refusal): Refused {
  return refused(type, detail, facts);
}

/** Keeps the change table, whose partial unique indexes allow one open change a ticket and a chain, in step. */
async function writeChanges(
  { tx, actor }: Context,
  row: TicketRow,
  { before, after }: { readonly before: readonly ChangeRecord[]; readonly after: readonly ChangeRecord[] },
): Promise<void> {
  const statusBefore = new Map(before.map((change) => [change.id, change.status]));
  for (const change of after) {
    if (statusBefore.get(change.id) === change.status) continue;
    const state = {
      status: change.status,
      closedAt: change.finishedAt === null ? null : new Date(change.finishedAt),
    };
    await tx.change.upsert({
      where: { orgId_id: { orgId: actor.orgId, id: change.id } },
      create: {
        ...state,
        orgId: actor.orgId,
        id: change.id,
        ticketId: row.id,
        chainId: row.chainId,
        kind: change.kind,
        openedAt: new Date(change.declaredAt),
      },
      update: state,
    });
  }
}
