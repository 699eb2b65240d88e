import { useState } from 'preact/hooks';
import type { CameBackAnswer, LastedAnswer } from '../../../shared/contract/diary-names.ts';
import { erasureOf } from '../../../shared/contract/erased-text.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import type { Report } from '../../../shared/contract/triage.ts';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { Field } from '../parts/field.tsx';
import { SendingResult, useSending } from '../parts/sending.tsx';
import { typed } from '../parts/typed.tsx';
import { keepDocument } from '../store/documents.ts';
import { useDraftForm } from '../store/use-draft.ts';
import { dayAndTime } from '../words/times.ts';
import { diaryWords } from './words.ts';

/** What the client reported, the newest first; what was left out or deleted says so. */
export function ReportList({ ticket, zone }: { ticket: Ticket; zone: string }) {
  const t = diaryWords();
  const { reports } = ticket.triage;
  const counting = reports.filter(
    ({ withdrawn, occurredAt }) => withdrawn === null && erasureOf(occurredAt) === null,
  );
  const mayLeaveOut = ticket.allowedNow.some(({ type }) => type === 'withdrawReport');
  return (
    <>
      <p>
        <strong>{t.count(counting.length)}</strong>
      </p>
      <ul class="diary-list">
        {reports.toReversed().map((report) => (
          <li key={report.id}>
            <OneReport report={report} zone={zone} />
            {mayLeaveOut && counting.includes(report) && (
              <LeaveOut ticketId={ticket.id} report={report} zone={zone} />
            )}
          </li>
        ))}
      </ul>
    </>
  );
}

function OneReport({ report, zone }: { report: Report; zone: string }) {
  const t = diaryWords();
  const deleted = erasureOf(report.occurredAt);
  if (deleted !== null)
    return (
      <em>
        {t.deleted}, {dayAndTime(deleted.at, zone)}
      </em>
    );
  const said = [
    report.lasted === null ? null : t.lasted[report.lasted as LastedAnswer],
    report.cameBack === null ? null : t.cameBack[report.cameBack as CameBackAnswer],
  ].filter((one) => one !== null);
  return (
    <>
      <strong>{dayAndTime(report.occurredAt, zone)}</strong>
      {said.length > 0 && <span> · {said.join(', ')}</span>}
      {report.withdrawn !== null && (
        <span class="soft">
          {' '}
          {t.leftOut} {typed(report.withdrawn.reason)}
        </span>
      )}
    </>
  );
}

function LeaveOut({ ticketId, report, zone }: { ticketId: string; report: Report; zone: string }) {
  const t = diaryWords();
  const [isOpen, setOpen] = useState(false);
  const [{ reason }, write, forget] = useDraftForm(`leave out ${report.id}`, { reason: '' });
  const sending = useSending();
  const moment = dayAndTime(report.occurredAt, zone);
  if (!isOpen)
    return (
      <Button kind="quiet" aria-label={t.leaveOutOf(moment)} onClick={() => setOpen(true)}>
        {t.leaveOut}
      </Button>
    );
  const path = paths.ticket(ticketId);
  const leaveOut = async () => {
    const body = { type: 'withdrawReport', reportId: report.id, reason: reason.trim() };
    const done = await sending.send<Ticket>('POST', `${path}/commands`, { body });
    if (done === null) return;
    setOpen(false);
    await forget();
    await keepDocument({ path, body: done.body, etag: done.etag, readAt: new Date().toISOString() });
  };
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void leaveOut();
      }}
    >
      <Field
        label={t.leaveOutWhy}
        value={reason}
        onInput={({ currentTarget }) => write({ reason: currentTarget.value })}
      />
      <SendingResult sending={sending} />
      <div class="row">
        <Button type="submit" kind="danger" disabled={sending.isBusy || reason.trim() === ''}>
          {t.leaveOutDo}
        </Button>
        <Button onClick={() => setOpen(false)}>{t.cancel}</Button>
      </div>
    </form>
  );
}
