import type { Prisma } from '../../database/index.ts';
import type { Tenancy } from './tenancy.ts';

/** Assumed: enough for progress to be told seldom, few enough to be told at all. */
const batchSize = 50;

export type TicketRef = { readonly id: string; readonly number: number };

/** A tenant's tickets by their numbers, so many at a time; each batch is read in a transaction of its own. */
export async function* ticketBatches(
  inTenant: <T>(work: (tenancy: Tenancy) => Promise<T>) => Promise<T>,
  among: Prisma.TicketWhereInput = {},
): AsyncGenerator<readonly TicketRef[]> {
  for (let after = 0; ; ) {
    const from = after;
    const batch = await inTenant(({ tx, actor }) =>
      tx.ticket.findMany({
        where: { ...among, orgId: actor.orgId, number: { gt: from } },
        select: { id: true, number: true },
        orderBy: { number: 'asc' },
        take: batchSize,
      }),
    );
    const last = batch.at(-1);
    if (last === undefined) return;
    after = last.number;
    yield batch;
  }
}
