import { erasedText } from '../../../shared/contract/erased-text.ts';
import { ticket } from '../../../shared/contract/ticket.ts';
import { type Context, eraseFromReplies } from '../../http/index.ts';
import {
  columnsOf,
  eraseTexts,
  lockTicket,
  loggedEventsOf,
  replayLog,
  writeEvents,
} from '../ticket-record/index.ts';

/**
 * Erases all that a client sent by a diary, from the ticket's log and from the copies that this server serves, as the
 * client asked. The log still verifies: that something was sent stands on it, and that it was deleted, and when.
 */
export async function eraseReports(context: Context, ticketId: string, diaryId: string): Promise<void> {
  const row = await lockTicket(context, ticketId);
  if (row === null) return;
  const own = new Set(
    row.snapshot.context.reports.flatMap((report) => (report.diaryId === diaryId ? [report.id] : [])),
  );
  const events = await loggedEventsOf(context, ticketId);
  const texts = events.flatMap(({ sequence, payload, texts: inEvent }) =>
    own.has(String(payload.reportId))
      ? inEvent.flatMap(({ pointer, salt, text }) => (salt === null ? [] : [{ sequence, pointer, text }]))
      : [],
  );
  if (texts.length === 0) return;
  const now = context.services.now();
  // By the diary itself: the client has no other name here.
  const erasure = { at: now.toISOString(), by: diaryId };
  const places = texts.map(({ sequence, pointer }) => ({ sequence, pointer }));
  await eraseTexts(context, ticketId, { places, erasure });
  for (const text of new Set(texts.map((each) => each.text))) {
    await eraseFromReplies(context, { text, by: erasedText(erasure), forms: [ticket] });
  }
  await writeEvents(context, row, {
    events: [{ type: 'reportsErased', payload: { diaryId, reports: reportsIn(texts, events) }, at: now }],
    columns: columnsOf(replayLog(await loggedEventsOf(context, ticketId))),
  });
}

/** How many reports the texts are of. */
function reportsIn(
  texts: readonly { readonly sequence: number }[],
  events: readonly { readonly sequence: number; readonly payload: Record<string, unknown> }[],
): number {
  const sequences = new Set(texts.map(({ sequence }) => sequence));
  const ids = events.flatMap(({ sequence, payload }) => (sequences.has(sequence) ? [payload.reportId] : []));
  return new Set(ids).size;
}
