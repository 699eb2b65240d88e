import { useState } from 'preact/hooks';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import type { DiaryWithCode } from '../../../shared/contract/diary.ts';
import { diaryDays } from '../../../shared/contract/diary-names.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { SelectField } from '../parts/field.tsx';
import { Notice } from '../parts/notice.tsx';
import { SendingResult, useSending } from '../parts/sending.tsx';
import { refresh, useDocument } from '../store/documents.ts';
import { useDraftForm } from '../store/use-draft.ts';
import { dayAndTime } from '../words/times.ts';
import { ReportList } from './reports.tsx';
import { diaryWords } from './words.ts';
import './diary.css';

/** What the client reported of a ticket, and the links by which they do. */
export function Diary({ ticket, zone }: { ticket: Ticket; zone: string }) {
  return (
    <div class="stack">
      <p class="soft">{diaryWords().what}</p>
      <ReportList ticket={ticket} zone={zone} />
      <Links ticketId={ticket.id} zone={zone} isOpen={ticket.state !== 'closed'} />
    </div>
  );
}

/** How long a diary may be opened for from here. */
const choices = [7, diaryDays.usual, 60] as const;

function Links({ ticketId, zone, isOpen }: { ticketId: string; zone: string; isOpen: boolean }) {
  const t = diaryWords();
  const path = paths.diaries(ticketId);
  const diaries = useDocument(path);
  const sending = useSending();
  const [{ days }, write, forget] = useDraftForm(`diary ${ticketId}`, { days: String(diaryDays.usual) });
  const [done, setDone] = useState<string | null>(null);
  const send = async (to: string, what: string, body?: unknown) => {
    setDone(null);
    const answer = await sending.send('POST', to, body === undefined ? {} : { body });
    if (answer === null) return;
    await Promise.all([refresh(path), forget()]);
    setDone(what);
  };
  return (
    <div class="stack">
      <h3>{t.links}</h3>
      <DocumentView document={diaries}>
        {({ items }) => {
          const open = items.filter(
            ({ closedAt, until }) => closedAt === null && Date.parse(until) > Date.now(),
          );
          return open.length === 0 ? (
            <p>{t.noLinks}</p>
          ) : (
            <ul class="diary-list">
              {open.map((diary) => (
                <li key={diary.id} class="stack">
                  <Link diary={diary} zone={zone} />
                  <div class="row">
                    <Button
                      kind="danger"
                      disabled={sending.isBusy}
                      onClick={() =>
                        void send(addressOf(addresses.closeDiary, { id: diary.id }), t.closedNow)
                      }
                    >
                      {t.close}
                    </Button>
                  </div>
                </li>
              ))}
            </ul>
          );
        }}
      </DocumentView>
      {isOpen && (
        <form
          class="stack"
          onSubmit={(event) => {
            event.preventDefault();
            void send(path, t.opened, { days: Number(days) });
          }}
        >
          <SelectField
            label={t.days}
            value={days}
            options={choices.map((each) => ({ value: String(each), label: t.forDays(each) }))}
            onChoose={(chosen) => write({ days: chosen })}
          />
          <div>
            <Button type="submit" disabled={sending.isBusy}>
              {t.open}
            </Button>
          </div>
        </form>
      )}
      {done !== null && (
        <Notice tone="good" announce>
          {done}
        </Notice>
      )}
      <SendingResult sending={sending} />
    </div>
  );
}

function Link({ diary: { code, until, openedByName }, zone }: { diary: DiaryWithCode; zone: string }) {
  const t = diaryWords();
  const [isCopied, setCopied] = useState(false);
  if (code === null) return <p>{t.codeGone}</p>;
  const address = `${location.origin}${addressOf(addresses.diaryPage, { code })}`;
  const canCopy = navigator.clipboard !== undefined;
  const canShare = typeof navigator.share === 'function';
  return (
    <>
      <span class="soft">{t.until(dayAndTime(until, zone), openedByName)}</span>
      <a href={address} target="_blank" rel="noreferrer">
        {address}
      </a>
      <span>
        {t.code}: <strong class="figures">{code.match(/.{4}/g)?.join('-')}</strong>{' '}
        <span class="soft">{t.enterAt(`${location.host}${addresses.diaryEntry}`)}</span>
      </span>
      <div class="row">
        {canCopy && (
          <Button
            onClick={() =>
              void navigator.clipboard.writeText(address).then(
                () => setCopied(true),
                () => setCopied(false),
              )
            }
          >
            {t.copy}
          </Button>
        )}
        {canShare && (
          // Whoever closes the sheet has not failed at anything.
          <Button onClick={() => void navigator.share({ text: t.shareText, url: address }).catch(() => {})}>
            {t.share}
          </Button>
        )}
        <span role="status">{isCopied ? t.copied : ''}</span>
      </div>
    </>
  );
}
