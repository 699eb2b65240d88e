import type { z } from 'zod';
import type { queueEntry } from '../../../shared/contract/ticket.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { escalatedTickets, type TicketRow } from '../ticket-record/index.ts';
import { summaryView } from './ticket-view.ts';

type QueueEntry = z.infer<typeof queueEntry>;

/** Cases with second line, the longest waiting first. */
export async function supportQueue(context: Context): Promise<Outcome<{ items: QueueEntry[] }>> {
  const items = (await escalatedTickets(context)).flatMap(entryOf);
  return found({ items: items.sort((a, b) => a.waitingSince.localeCompare(b.waitingSince)) });
}

function entryOf(row: TicketRow): QueueEntry[] {
  const latest = row.snapshot.context.escalations.at(-1);
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
