import type { Prisma } from '../../database/index.ts';
import type { Context } from '../../http/index.ts';

/** What a ticket is shown with. */
export const withNames = {
  site: { select: { clientName: true } },
  chain: { select: { name: true } },
  assignee: { select: { name: true } },
} as const;
export type TicketRow = Prisma.TicketGetPayload<{ include: typeof withNames }>;

export const findTicket = ({ tx, actor }: Context, id: string): Promise<TicketRow | null> =>
  tx.ticket.findUnique({ where: { orgId_id: { orgId: actor.orgId, id } }, include: withNames });

/** Locks a ticket for the rest of the transaction and reads it; null when there is none. */
export async function lockTicket(context: Context, id: string): Promise<TicketRow | null> {
  const { tx, actor } = context;
  await tx.$queryRaw`select id from ticket where org_id = ${actor.orgId}::uuid and id = ${id}::uuid for update`;
  return findTicket(context, id);
}
