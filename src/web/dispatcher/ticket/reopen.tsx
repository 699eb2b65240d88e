import { useState } from 'preact/hooks';
import { isReason, longest } from '../../../../shared/contract/limits.ts';
import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { paths } from '../../api/paths.ts';
import { Button } from '../../parts/button.tsx';
import { Card } from '../../parts/card.tsx';
import { TextField } from '../../parts/field.tsx';
import { SendingResult, useSending } from '../../parts/sending.tsx';
import { keepDocument } from '../../store/documents.ts';
import { useDraftForm } from '../../store/use-draft.ts';
import { ticketWords } from './words.ts';

/** The client calls again about a ticket that is closed: it is opened again, with what they say. */
export function Reopen({ ticket }: { ticket: Ticket }) {
  const t = ticketWords();
  const [{ reason }, change, forget] = useDraftForm(`reopen ${ticket.id}`, { reason: '' });
  const [isTooShort, setTooShort] = useState(false);
  const sending = useSending();
  if (!ticket.allowedNow.some(({ type }) => type === 'reopen')) return null;
  const path = paths.ticket(ticket.id);
  const reopen = async () => {
    setTooShort(!isReason(reason));
    if (!isReason(reason)) return;
    const body = { type: 'reopen', reason: reason.trim() };
    const done = await sending.send<Ticket>('POST', `${path}/commands`, { body });
    if (done === null) return;
    await forget();
    await keepDocument({ path, body: done.body, etag: done.etag, readAt: new Date().toISOString() });
  };
  return (
    <div class="not-printed">
      <Card title={t.reopenTitle}>
        <form
          class="stack"
          onSubmit={(event) => {
            event.preventDefault();
            void reopen();
          }}
        >
          <TextField
            label={t.reopenReason}
            value={reason}
            maxLength={longest.reason}
            error={isTooShort && !isReason(reason) ? t.reasonTooShort : undefined}
            onInput={({ currentTarget }) => change({ reason: currentTarget.value })}
          />
          <SendingResult sending={sending} />
          <div>
            <Button type="submit" disabled={sending.isBusy}>
              {t.reopen}
            </Button>
          </div>
        </form>
      </Card>
    </div>
  );
}
