import type { z } from 'zod';
import { type Erasure, erasedText } from '../../../shared/contract/erased-text.ts';
import { evidenceItem } from '../../../shared/contract/evidence.ts';
import { type Ticket, type textErasure, ticket } from '../../../shared/contract/ticket.ts';
import { message } from '../../../shared/message/index.ts';
import { type Context, eraseFromReplies, found, noteOwn, type Outcome, refused } from '../../http/index.ts';
import { eraseFromEvidence } from '../evidence-record/index.ts';
import {
  columnsOf,
  eraseTexts,
  intakeWithout,
  lockTicket,
  loggedEventsOf,
  noTicket,
  replayLog,
  type TicketRow,
  textOnLog,
} from '../ticket-record/index.ts';
import { recordFact } from './record-fact.ts';
import { ticketView } from './ticket-view.ts';

const refusals = {
  hashed: refused('text-not-erasable', message('textHashed')),
  unknown: refused('unknown-reference', message('noTextThere')),
} as const;

/**
 * Erases what a person typed from a ticket's log and from every copy that this server serves. That it was erased, when
 * and by whom stands in its place, and is a fact on the log. Packets that were made stay as they were handed over.
 */
export async function eraseText(
  context: Context,
  ticketId: string,
  { event: sequence, pointer, reason }: z.infer<typeof textErasure>,
): Promise<Outcome<Ticket>> {
  const { actor, services } = context;
  const row = await lockTicket(context, ticketId);
  if (row === null) return noTicket;
  const onLog = await textOnLog(context, ticketId, { sequence, pointer });
  if (onLog.kind === 'erased') return found(ticketView(row, actor, services.now()));
  if (onLog.kind !== 'there') return refusals[onLog.kind];
  const { text, places } = onLog;
  const erasure = { at: services.now().toISOString(), by: actor.memberId };
  await eraseTexts(context, ticketId, { places, erasure });
  await eraseCopies(context, row, { text, erasure });
  await noteOwn(context, { kind: 'textErased', aboutId: ticketId });
  const texts = places.map((place) => ({ event: place.sequence, pointer: place.pointer }));
  return recordFact(context, row, {
    type: 'textErased',
    payload: { texts, reason },
    columns: {
      ...columnsOf(replayLog(await loggedEventsOf(context, ticketId))),
      intake: intakeWithout(row, { text, by: erasedText(erasure) }),
    },
  });
}

/** Where else this server holds what the log said. */
async function eraseCopies(
  context: Context,
  row: TicketRow,
  { text, erasure }: { readonly text: string; readonly erasure: Erasure },
): Promise<void> {
  const replacement = { text, by: erasedText(erasure) };
  await eraseFromEvidence(context, row.id, replacement);
  await eraseFromReplies(context, { ...replacement, forms: [ticket, evidenceItem] });
}
