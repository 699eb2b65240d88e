import { useState } from 'preact/hooks';
import { typedBefore } from '../../../../shared/contract/erased-text.ts';
import { longest } from '../../../../shared/contract/limits.ts';
import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { priorities } from '../../../../shared/contract/ticket-names.ts';
import { paths } from '../../api/paths.ts';
import { Button } from '../../parts/button.tsx';
import { DocumentView } from '../../parts/document-view.tsx';
import { Field, SelectField } from '../../parts/field.tsx';
import { Notice } from '../../parts/notice.tsx';
import { SendingResult, useSending } from '../../parts/sending.tsx';
import { Wipe } from '../../parts/wipe.tsx';
import { keepDocument, refresh, useDocument } from '../../store/documents.ts';
import { useDraftForm } from '../../store/use-draft.ts';
import { frameWords } from '../../words/frame.ts';
import { terms } from '../../words/terms.ts';
import { dayAndTime, lengthOfTime } from '../../words/times.ts';
import { useZone } from '../../words/zone.ts';
import { fieldTime, momentOf } from '../../words/zone-time.ts';
import { Chips } from '../common/chips.tsx';
import { deskWords } from '../common/words.ts';
import { updateOf } from './ticket-update.ts';
import { WhoCouldGo } from './who-could-go.tsx';

/** Who goes, when, and how soon it matters. Reads the ticket itself, so that what it sends is of the newest version. */
export function AssignForm({
  ticketId,
  withDays = false,
  onDone,
}: {
  ticketId: string;
  /** Shows who could go in the coming days, to choose from. */
  withDays?: boolean;
  onDone?: () => void;
}) {
  const document = useDocument(paths.ticket(ticketId));
  const [isSaved, setSaved] = useState(false);
  return (
    <DocumentView document={document}>
      {(ticket) => (
        <div class="stack">
          <Form
            ticket={ticket}
            etag={document.etag}
            withDays={withDays}
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

type Draft = {
  over: string | null;
  assigneeId: string | null;
  visit: string | null;
  visitMin: string | null;
  promised: string | null;
  priority: Ticket['priority'] | null;
};
const nothingChosen: Draft = {
  over: null,
  assigneeId: null,
  visit: null,
  visitMin: null,
  promised: null,
  priority: null,
};
/** Lengths to choose from, minutes; assumed. One that was set otherwise stands among them. */
const lengths = [30, 60, 90, 120, 180, 240, 360, 480];

function Form({
  ticket,
  etag,
  withDays,
  onTouch,
  onSaved,
}: {
  ticket: Ticket;
  etag: string | null;
  withDays: boolean;
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
  const assigned = `${ticket.assigneeId} ${ticket.visitAt} ${ticket.priority}`;
  // Only what was chosen here is a draft, and what it was chosen over.
  const [draft, write, forget] = useDraftForm<Draft>(`assign ${ticket.id}`, nothingChosen);
  const choose = (part: Partial<Draft>) => write({ over: draft.over ?? assigned, ...part });
  const assigneeId = draft.assigneeId ?? ticket.assigneeId ?? '';
  const priority = draft.priority ?? ticket.priority;
  const { visit } = draft;
  const visitMin = draft.visitMin ?? String(ticket.visitMin ?? '');
  const [badTime, setBadTime] = useState(false);
  const assignee = technicians.find(({ id }) => id === assigneeId);
  const sending = useSending();
  const shown = visit ?? fieldTime(ticket.visitAt, zone);
  const planned = momentOf(shown, zone);
  const when = planned === null || planned === 'invalid' ? null : dayAndTime(planned, zone);
  const save = async () => {
    const moment = visit === null ? ticket.visitAt : momentOf(visit, zone);
    setBadTime(moment === 'invalid');
    if (moment === 'invalid') return;
    const body = updateOf(ticket, {
      assigneeId: assigneeId === '' ? null : assigneeId,
      visitAt: moment,
      visitMin: visitMin === '' ? null : Number(visitMin),
      priority,
      ...(draft.promised == null ? {} : { intake: { promised: draft.promised } }),
    });
    const path = paths.ticket(ticket.id);
    const done = await sending.send<Ticket>('PUT', path, { body, ifMatch: etag ?? '' });
    if (done === null) {
      void refresh(path);
      return;
    }
    await forget();
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
      {withDays && (
        <WhoCouldGo
          ticketId={ticket.id}
          technicians={technicians.filter(({ role }) => role === 'technician')}
          zone={zone}
          chosen={{ assigneeId, visit: shown }}
          onChoose={choose}
        />
      )}
      <SelectField
        label={d.technician}
        options={[
          { value: '', label: d.nobody },
          ...technicians.map(({ id, name }) => ({ value: id, label: name })),
        ]}
        value={assigneeId}
        onChoose={(id) => choose({ assigneeId: id })}
      />
      <Field
        type="datetime-local"
        label={d.visitAt}
        hint={d.visitHint(zone)}
        error={badTime ? d.badTime : undefined}
        value={shown}
        onInput={({ currentTarget }) => choose({ visit: currentTarget.value })}
      />
      <SelectField
        label={d.visitLength}
        options={[
          { value: '', label: d.lengthUnsaid },
          ...[...new Set([...lengths, ...(ticket.visitMin === null ? [] : [ticket.visitMin])])]
            .toSorted((a, b) => a - b)
            .map((minutes) => ({ value: String(minutes), label: lengthOfTime(minutes) })),
        ]}
        value={visitMin}
        onChoose={(chosen) => choose({ visitMin: chosen })}
      />
      <Field
        label={d.promised}
        hint={d.promisedHint}
        optional
        maxLength={longest.line}
        value={draft.promised ?? typedBefore(ticket.intake.promised)}
        onInput={({ currentTarget }) => choose({ promised: currentTarget.value })}
      />
      <Chips
        label={d.priority}
        options={priorities.map((value) => ({ value, label: terms().priority[value] }))}
        value={priority}
        onChoose={(chosen) => choose({ priority: chosen })}
      />
      {draft.over !== null && draft.over !== assigned && (
        <Notice tone="caution" announce>
          {d.assignedMeanwhile(
            members.find(({ id }) => id === ticket.assigneeId)?.name ?? d.nobody,
            ticket.visitAt === null ? null : dayAndTime(ticket.visitAt, zone),
          )}
        </Notice>
      )}
      <SendingResult sending={sending} />
      <div class="row">
        <Button type="submit" kind="primary" disabled={sending.isBusy}>
          {assignee === undefined ? d.leaveOpen : d.assignTo(assignee.name, when)}
        </Button>
        <Wipe label={d.asSaved} draft={draft} empty={nothingChosen} onWipe={forget} onUndo={write} />
      </div>
    </form>
  );
}
