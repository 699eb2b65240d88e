import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { paths } from '../../api/paths.ts';
import { Button } from '../../parts/button.tsx';
import { Card } from '../../parts/card.tsx';
import { TextField } from '../../parts/field.tsx';
import { SendingResult, useSending } from '../../parts/sending.tsx';
import { typed } from '../../parts/typed.tsx';
import { keepDocument } from '../../store/documents.ts';
import { useDraftForm } from '../../store/use-draft.ts';
import { dayAndTime } from '../../words/times.ts';
import { ticketWords } from './words.ts';

/** What was noted, and room for the next. */
export function Notes({ ticket, zone }: { ticket: Ticket; zone: string }) {
  const t = ticketWords();
  const [{ note }, change, forget] = useDraftForm(`note ${ticket.id}`, { note: '' });
  const sending = useSending();
  const path = paths.ticket(ticket.id);
  const write = async () => {
    const body = { type: 'note', text: note.trim() };
    const done = await sending.send<Ticket>('POST', `${path}/commands`, { body });
    if (done === null) return;
    await forget();
    await keepDocument({ path, body: done.body, etag: done.etag, readAt: new Date().toISOString() });
  };
  return (
    <Card title={t.notes}>
      <ul class="plain-list">
        {ticket.triage.notes.map(({ at, text }) => (
          <li key={at + text}>
            <span class="soft">{dayAndTime(at, zone)}</span> {typed(text)}
          </li>
        ))}
      </ul>
      <form
        class="stack not-printed"
        onSubmit={(event) => {
          event.preventDefault();
          if (note.trim() !== '') void write();
        }}
      >
        <TextField
          label={t.note}
          value={note}
          onInput={({ currentTarget }) => change({ note: currentTarget.value })}
        />
        <SendingResult sending={sending} />
        <div>
          <Button type="submit" disabled={sending.isBusy}>
            {t.writeNote}
          </Button>
        </div>
      </form>
    </Card>
  );
}
