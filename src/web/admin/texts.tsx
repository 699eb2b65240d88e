import { useState } from 'preact/hooks';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import { valueAt } from '../../../shared/contract/json-pointer.ts';
import { isReason, longest } from '../../../shared/contract/limits.ts';
import type { Ticket, TicketEvent } from '../../../shared/contract/ticket.ts';
import { paths } from '../api/paths.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { Card, List } from '../parts/card.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Field } from '../parts/field.tsx';
import { Notice } from '../parts/notice.tsx';
import { Screen } from '../parts/screen.tsx';
import { SendingResult, useSending } from '../parts/sending.tsx';
import { typed } from '../parts/typed.tsx';
import { keepDocument, refresh, useDocument } from '../store/documents.ts';
import { useDraftForm } from '../store/use-draft.ts';
import { dayAndTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import { textsWords } from './texts-words.ts';
import './admin.css';

type Text = {
  readonly event: number;
  readonly pointer: string;
  readonly text: string;
  readonly isErased: boolean;
  readonly actorName: string;
  readonly at: string;
};

/** What people wrote in the log of a ticket, the newest first; of equal texts of one event, one. */
function textsOf(events: readonly TicketEvent[]): Text[] {
  const all = events.toReversed().flatMap(({ sequence, payload, texts, actorName, at }) =>
    texts.map(
      ({ pointer, erased }): Text => ({
        event: sequence,
        pointer,
        text: String(valueAt(payload, pointer)),
        isErased: erased !== null,
        actorName,
        at,
      }),
    ),
  );
  return [...new Map(all.map((one) => [`${one.event} ${one.text}`, one])).values()];
}

/** Where an admin erases what somebody wrote. */
export function TextsScreen({ ticketId = '' }: { ticketId?: string }) {
  const t = textsWords();
  const ticket = useDocument(paths.ticket(ticketId));
  const log = useDocument(paths.log(ticketId));
  const zone = useZone(ticket.body?.siteId ?? '');
  const [toErase, setToErase] = useState<Text | null>(null);
  const [isDone, setDone] = useState(false);
  const { body } = ticket;
  return (
    <Screen title={body === null ? '' : t.title(body.number, body.client)}>
      <div>
        <LinkButton href={`/app/tickets/${ticketId}`}>{t.toTicket}</LinkButton>
      </div>
      <p>{t.lead}</p>
      {isDone && (
        <Notice tone="good" announce>
          {t.done}
        </Notice>
      )}
      <DocumentView document={log}>
        {({ items }) => {
          const texts = textsOf(items);
          const older = items.filter(({ format }) => format === 1).length;
          return (
            <Card>
              {texts.length === 0 && <p>{t.none}</p>}
              {older > 0 && <p class="soft">{t.older(older)}</p>}
              <List>
                {texts.map((one) => (
                  <li key={`${one.event} ${one.pointer}`} class="text-entry">
                    <span>
                      <span class="text-kept" dir="auto">
                        {typed(one.text)}
                      </span>
                      <br />
                      <span class="soft">{t.who(one.actorName, dayAndTime(one.at, zone))}</span>
                    </span>
                    {!one.isErased && (
                      <Button
                        aria-label={t.eraseThis(one.text)}
                        onClick={() => {
                          setDone(false);
                          setToErase(one);
                        }}
                      >
                        {t.erase}
                      </Button>
                    )}
                  </li>
                ))}
              </List>
            </Card>
          );
        }}
      </DocumentView>
      {toErase !== null && (
        <Dialog title={t.ask} onClose={() => setToErase(null)}>
          <EraseForm
            ticketId={ticketId}
            text={toErase}
            onDone={() => {
              setToErase(null);
              setDone(true);
            }}
          />
        </Dialog>
      )}
    </Screen>
  );
}

type FormProperties = { ticketId: string; text: Text; onDone: () => void };

function EraseForm({ ticketId, text: { event, pointer, text }, onDone }: FormProperties) {
  const t = textsWords();
  const [{ reason }, write, forget] = useDraftForm(`erase ${ticketId} ${event} ${pointer}`, { reason: '' });
  const [isTooShort, setTooShort] = useState(false);
  const sending = useSending();
  const erase = async () => {
    setTooShort(!isReason(reason));
    if (!isReason(reason)) return;
    const body = { event, pointer, reason: reason.trim() };
    const done = await sending.send<Ticket>('POST', addressOf(addresses.erasures, { id: ticketId }), {
      body,
    });
    if (done === null) return;
    await forget();
    const readAt = new Date().toISOString();
    await keepDocument({ path: paths.ticket(ticketId), body: done.body, etag: done.etag, readAt });
    const others = [paths.log(ticketId), paths.timeline(ticketId), paths.evidence(ticketId)];
    await Promise.all(others.map((path) => refresh(path)));
    onDone();
  };
  return (
    <form
      class="stack"
      onSubmit={(submitted) => {
        submitted.preventDefault();
        void erase();
      }}
    >
      <blockquote class="text-kept" dir="auto">
        {text}
      </blockquote>
      <p>{t.goes}</p>
      <p>{t.stays}</p>
      <Field
        label={t.reason}
        hint={t.reasonHint}
        value={reason}
        maxLength={longest.reason}
        {...(isTooShort ? { error: t.reasonTooShort } : {})}
        onInput={({ currentTarget }) => write({ reason: currentTarget.value })}
      />
      <div>
        <Button type="submit" kind="danger" disabled={sending.isBusy}>
          {t.eraseForGood}
        </Button>
      </div>
      <SendingResult sending={sending} />
    </form>
  );
}
