import type { Ticket } from '../../../shared/contract/ticket.ts';
import { Button } from '../parts/button.tsx';
import { TextField } from '../parts/field.tsx';
import { typed } from '../parts/typed.tsx';
import { putCommand } from '../store/outbox.ts';
import { useDraftForm } from '../store/use-draft.ts';
import { dayAndTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import type { OnTicket } from './common/keep-files.ts';
import { Part } from './part.tsx';
import { ScanButton } from './scan-button.tsx';
import { technicianWords } from './words.ts';

/** What was noted, newest first, and room for the next. */
export function Notes({ ticket, onTicket }: { ticket: Ticket; onTicket: OnTicket }) {
  const t = technicianWords();
  const zone = useZone(ticket.siteId);
  const [{ note }, write, forget] = useDraftForm(`note ${ticket.id}`, { note: '' });
  return (
    <Part id="notes" title={t.notes}>
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault();
          if (note.trim() === '') return;
          void putCommand(onTicket, { type: 'note', text: note.trim() }).then(forget);
        }}
      >
        <TextField
          label={t.note}
          value={note}
          onInput={({ currentTarget }) => write({ note: currentTarget.value })}
        />
        <ScanButton onFound={(code) => write({ note: note === '' ? code : `${note} ${code}` })} />
        <div>
          <Button type="submit">{t.writeNote}</Button>
        </div>
      </form>
      {ticket.triage.notes.length > 0 && (
        <ul class="notes">
          {ticket.triage.notes.toReversed().map(({ text, at }) => (
            <li key={at + text}>
              <span>{typed(text)}</span> <span class="soft">{dayAndTime(at, zone)}</span>
            </li>
          ))}
        </ul>
      )}
    </Part>
  );
}
