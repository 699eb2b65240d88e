import { useEffect, useState } from 'preact/hooks';
import type { Ticket, TicketSummary } from '../../../shared/contract/ticket.ts';
import { read } from '../api/client.ts';
import { paths } from '../api/paths.ts';
import { keepDocument, keptBody } from './documents.ts';

/** The tickets behind some lines of a list, each read again when its line says that it changed. */
export function useTickets(lines: readonly TicketSummary[]): ReadonlyMap<string, Ticket> {
  const [known, setKnown] = useState<ReadonlyMap<string, Ticket>>(new Map());
  const wanted = lines.map(({ id, updatedAt }) => `${id} ${updatedAt}`).join(',');
  useEffect(() => {
    let isWanted = true;
    void (async () => {
      for (const { id, updatedAt } of lines) {
        if (known.get(id)?.updatedAt === updatedAt) continue;
        const ticket = await newest(id, updatedAt);
        if (!isWanted) return;
        if (ticket !== null) setKnown((before) => new Map(before).set(id, ticket));
      }
    })();
    return () => {
      isWanted = false;
    };
  }, [wanted]);
  return known;
}

/** What this device has where that is new enough or nobody answers, else what the server has. */
async function newest(id: string, updatedAt: string): Promise<Ticket | null> {
  const path = paths.ticket(id);
  const kept = await keptBody(path);
  if (kept?.updatedAt === updatedAt) return kept;
  const answer = await read(path);
  if (answer.kind !== 'ok') return kept;
  await keepDocument({ path, body: answer.body, etag: answer.etag, readAt: new Date().toISOString() });
  return answer.body;
}
