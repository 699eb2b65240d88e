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
        ticketId: ticket.id,
        chainId: ticket.chainId,
        kind: change.kind,
        openedAt: new Date(change.declaredAt),
      },
      update: state,
    });
  }
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
