import type { z } from 'zod';
import type { queueEntry } from '../../../shared/contract/ticket.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { snapshotOf, type TicketRow, withNames } from '../ticket-record/index.ts';
import { summaryView } from './ticket-view.ts';

type QueueEntry = z.infer<typeof queueEntry>;

/** Cases with second line, the longest waiting first. */
export async function supportQueue({ tx, actor }: Context): Promise<Outcome<{ items: QueueEntry[] }>> {
  const rows = await tx.ticket.findMany({
    where: { orgId: actor.orgId, state: { startsWith: 'escalated' } },
    include: withNames,
    orderBy: { number: 'asc' },
  });
  const items = rows.flatMap(entryOf).sort((a, b) => a.waitingSince.localeCompare(b.waitingSince));
  return found({ items });
}

function entryOf(row: TicketRow): QueueEntry[] {
  const latest = snapshotOf(row).context.escalations.at(-1);
  if (latest === undefined) return [];
  return [
    {
      ...summaryView(row),
      waitingSince: latest.at,
      question: latest.question,
      version: latest.version,
      waived: latest.waivers.length,
      takenBy: latest.takenBy,
    },
  ];
}
