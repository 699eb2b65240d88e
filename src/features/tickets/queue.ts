import type { QueueEntry } from '../../../shared/contract/ticket.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { escalatedTickets, type ReadTicket } from '../ticket-record/index.ts';
import { summaryView } from './ticket-view.ts';

/** Cases with second line, the longest waiting first; of one that can't be read it counts when it was last written to. */
export async function supportQueue(context: Context): Promise<Outcome<{ items: QueueEntry[] }>> {
  const items = (await escalatedTickets(context)).flatMap(entryOf);
  const since = (entry: QueueEntry): string =>
    entry.kind === 'waiting' ? entry.waitingSince : entry.updatedAt;
  return found({ items: items.sort((a, b) => since(a).localeCompare(since(b))) });
}

function entryOf(ticket: ReadTicket): QueueEntry[] {
  const summary = summaryView(ticket.row);
  if (ticket.kind === 'unread') return [{ ...summary, kind: 'unread', because: ticket.because }];
  const latest = ticket.row.snapshot.context.escalations.at(-1);
  if (latest === undefined) return [];
  return [
    {
      ...summary,
      kind: 'waiting',
      waitingSince: latest.at,
      question: latest.question,
      version: latest.version,
      waived: latest.waivers.length,
      takenBy: latest.takenBy,
    },
  ];
}
