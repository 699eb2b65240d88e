import type { ChangeRecord } from '../../../shared/contract/triage.ts';
import { openChangeStatuses } from '../../../shared/contract/triage-names.ts';
import type { Context } from '../../http/index.ts';
import type { TicketRow } from './ticket.read.ts';

type Ticket = Pick<TicketRow, 'id' | 'chainId'>;

/** Keeps the change table, whose partial unique indexes allow one open change a ticket and a chain, in step. */
export async function writeChanges(
  { tx, actor }: Context,
  ticket: Ticket,
  { before, after }: { readonly before: readonly ChangeRecord[]; readonly after: readonly ChangeRecord[] },
): Promise<void> {
  const statusBefore = new Map(before.map((change) => [change.id, change.status]));
  const differing = after.filter((change) => statusBefore.get(change.id) !== change.status);
  // One after the other: of two that change places, the first has to be closed before the second is open.
  for (const { id, kind, status, declaredAt, finishedAt } of differing)
    await tx.sql`
      insert into change (org_id, id, ticket_id, chain_id, kind, status, opened_at, closed_at)
      values (${actor.orgId}::uuid, ${id}::uuid, ${ticket.id}::uuid, ${ticket.chainId}::uuid, ${kind}, ${status},
        ${declaredAt}::timestamptz, ${finishedAt}::timestamptz)
      on conflict (org_id, id) do update set status = excluded.status, closed_at = excluded.closed_at`;
}

/** A change that another ticket has open on the same chain; null when there is none. The caller holds the chain's lock. */
export const openChangeElsewhere = ({ tx, actor }: Context, ticket: Ticket) =>
  tx.change.findFirst({
    where: {
      orgId: actor.orgId,
      chainId: ticket.chainId,
      ticketId: { not: ticket.id },
      status: { in: [...openChangeStatuses] },
    },
    select: { kind: true, ticket: { select: { id: true, number: true, state: true } } },
  });
