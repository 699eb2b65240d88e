import { useState } from 'preact/hooks';
import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { priorities } from '../../../../shared/contract/ticket-names.ts';
import { paths } from '../../api/paths.ts';
import { Button } from '../../parts/button.tsx';
import { DocumentView } from '../../parts/document-view.tsx';
import { Field, SelectField } from '../../parts/field.tsx';
import { Notice } from '../../parts/notice.tsx';
import { SendingResult, useSending } from '../../parts/sending.tsx';
import { keepDocument, refresh, useDocument } from '../../store/documents.ts';
import { frameWords } from '../../words/frame.ts';
import { terms } from '../../words/terms.ts';
import { useZone } from '../../words/zone.ts';
import { fieldTime, momentOf } from '../../words/zone-time.ts';
import { Chips } from '../common/chips.tsx';
import { deskWords } from '../common/words.ts';
import { updateOf } from './ticket-update.ts';

/** Who goes, when, and how soon it matters. Reads the ticket itself, so that what it sends is of the newest version. */
export function AssignForm({ ticketId, onDone }: { ticketId: string; onDone?: () => void }) {
  const document = useDocument(paths.ticket(ticketId));
  // Kept here: the form begins anew with what was saved, or with what somebody else changed.
  const [isSaved, setSaved] = useState(false);
  return (
    <DocumentView document={document}>
      {(ticket) => (
        <div class="stack">
          <Form
            key={`${ticket.assigneeId} ${ticket.visitAt} ${ticket.priority}`}
            ticket={ticket}
            etag={document.etag}
            onTouch={() => setSaved(false)}
            onSaved={() => {
              setSaved(true);
              onDone?.();
            }}
          />
          {isSaved && (
            <Notice tone="good" announce>
              {frameWords().saved}
            </Notice>
          )}
        </div>
      )}
    </DocumentView>
  );
}

function Form({
  ticket,
  etag,
  onTouch,
  onSaved,
}: {
  ticket: Ticket;
  etag: string | null;
  onTouch: () => void;
  onSaved: () => void;
}) {
  const d = deskWords();
  const zone = useZone(ticket.siteId);
  const members = useDocument(paths.members).body?.items ?? [];
  const technicians = members.filter(
    ({ id, active, role }) =>
      id === ticket.assigneeId || (active && (role === 'technician' || role === 'admin')),
  );
  const [assigneeId, setAssignee] = useState(ticket.assigneeId ?? '');
  const [visit, setVisit] = useState<string | null>(null);
  const [priority, setPriority] = useState(ticket.priority);
  const [badTime, setBadTime] = useState(false);
  const sending = useSending();
  const shown = visit ?? fieldTime(ticket.visitAt, zone);
  const save = async () => {
    const moment = visit === null ? ticket.visitAt : momentOf(visit, zone);
    setBadTime(moment === 'invalid');
    if (moment === 'invalid') return;
    const body = updateOf(ticket, {
      assigneeId: assigneeId === '' ? null : assigneeId,
      visitAt: moment,
      priority,
    });
    const path = paths.ticket(ticket.id);
    const done = await sending.send<Ticket>('PUT', path, { body, ifMatch: etag ?? '' });
    if (done === null) {
      void refresh(path);
      return;
    }
    await keepDocument({ path, body: done.body, etag: done.etag, readAt: new Date().toISOString() });
    onSaved();
  };
  return (
    <form
      class="stack"
      onInput={onTouch}
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <SelectField
        label={d.technician}
        options={[
          { value: '', label: d.nobody },
          ...technicians.map(({ id, name }) => ({ value: id, label: name })),
        ]}
        value={assigneeId}
        onChoose={setAssignee}
      />
      <Field
        type="datetime-local"
        label={d.visitAt}
        hint={d.visitHint(zone)}
        error={badTime ? d.badTime : undefined}
        value={shown}
        onInput={({ currentTarget }) => setVisit(currentTarget.value)}
      />
      <Chips
        label={d.priority}
        options={priorities.map((value) => ({ value, label: terms().priority[value] }))}
        value={priority}
        onChoose={setPriority}
      />
      <SendingResult sending={sending} />
      <div>
        <Button type="submit" kind="primary" disabled={sending.isBusy}>
          {d.assign}
        </Button>
      </div>
    </form>
  );
}
