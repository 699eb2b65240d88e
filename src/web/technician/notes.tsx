import { useState } from 'preact/hooks';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { Button } from '../parts/button.tsx';
import { TextField } from '../parts/field.tsx';
import { typed } from '../parts/typed.tsx';
import { putCommand } from '../store/outbox.ts';
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
  const [note, setNote] = useState('');
  return (
    <Part id="notes" title={t.notes}>
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault();
          if (note.trim() === '') return;
          void putCommand(onTicket, { type: 'note', text: note.trim() }).then(() => setNote(''));
        }}
      >
        <TextField
          label={t.note}
          value={note}
          onInput={({ currentTarget }) => setNote(currentTarget.value)}
        />
        <ScanButton onFound={(code) => setNote((text) => (text === '' ? code : `${text} ${code}`))} />
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
