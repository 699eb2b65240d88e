import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import type { TicketEvent } from '../../shared/contract/ticket.ts';
import type { TestApp } from './test-app.ts';

/** Writes a ticket's log again as it was written before texts had a place of their own: in format 1. */
export async function hashInFormat1(test: TestApp, ticketId: string): Promise<void> {
  const { body } = await test.home.admin.get(`/tickets/${ticketId}/log`);
  let previousHash = '0'.repeat(64);
  await test.tamper('delete from ticket_text where ticket_id = $1', [ticketId]);
  for (const event of body.items as TicketEvent[]) {
    const { hash, texts, format, actorName, ...entry } = event;
    const written = canonicalize({ ...entry, ticketId, previousHash }) ?? '';
    const anew = createHash('sha256').update(written).digest('hex');
    await test.tamper(
      `update ticket_event set format = 1, payload = $1, previous_hash = $2, hash = $3
        where ticket_id = $4 and sequence = $5`,
      [JSON.stringify(event.payload), previousHash, anew, ticketId, event.sequence],
    );
    previousHash = anew;
  }
}
