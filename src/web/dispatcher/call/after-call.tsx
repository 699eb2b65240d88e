import type { Message } from '../../../../shared/contract/message.ts';
import type { PhonePlanReply } from '../../../../shared/contract/plan.ts';
import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { paths } from '../../api/paths.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Card } from '../../parts/card.tsx';
import { DocumentView } from '../../parts/document-view.tsx';
import { TextField } from '../../parts/field.tsx';
import { Notice } from '../../parts/notice.tsx';
import { SendingResult, useSending } from '../../parts/sending.tsx';
import { Ticks } from '../../parts/tick.tsx';
import { typed } from '../../parts/typed.tsx';
import { keepDocument, useDocument } from '../../store/documents.ts';
import { useDraft, useDraftForm } from '../../store/use-draft.ts';
import { percent } from '../../words/percent.ts';
import { Sentence, said } from '../../words/sentence.tsx';
import { AssignForm } from '../assign/assign-form.tsx';
import { updateOf } from '../assign/ticket-update.ts';
import { DeskScreen } from '../common/desk-screen.tsx';
import { deskWords } from '../common/words.ts';
import { afterWords } from './after-words.ts';
import { PhoneStep } from './phone-step.tsx';

/** The ticket is open and the client still there: what they can try, whether to drive, with what, and who. */
export function AfterCallScreen({ ticketId = '' }: { ticketId?: string }) {
  const [t, d] = [afterWords(), deskWords()];
  const document = useDocument(paths.ticket(ticketId));
  const { body } = document;
  return (
    <DeskScreen
      title={body === null ? d.call : t.title(body.number, body.client)}
      tools={
        <>
          <LinkButton href={`/app/tickets/${ticketId}`}>{t.toTicket}</LinkButton>
          <LinkButton href="/app/call" kind="primary">
            {t.nextCall}
          </LinkButton>
        </>
      }
    >
      <DocumentView document={document}>
        {(ticket) => <AfterCall ticket={ticket} etag={document.etag} />}
      </DocumentView>
    </DeskScreen>
  );
}

function AfterCall({ ticket, etag }: { ticket: Ticket; etag: string | null }) {
  const t = afterWords();
  const chain = useDocument(paths.chain(ticket.chainId)).body?.chain ?? null;
  const { draft, change } = useDraft(`reach ${ticket.id}`, { reachable: [] as string[] });
  const plan = useDocument(draft === null ? null : paths.phonePlan(ticket.id, draft.reachable));
  const sending = useSending();
  const [{ own }, write, forget] = useDraftForm(`tried ${ticket.id}`, { own: '' });
  const tell = async (line: string): Promise<boolean> => {
    const { triedOnPhone } = ticket.intake;
    const said = triedOnPhone === '' ? line : `${triedOnPhone}\n${line}`;
    const path = paths.ticket(ticket.id);
    const body = updateOf(ticket, { intake: { triedOnPhone: said } });
    const done = await sending.send<Ticket>('PUT', path, { body, ifMatch: etag ?? '' });
    if (done !== null)
      await keepDocument({ path, body: done.body, etag: done.etag, readAt: new Date().toISOString() });
    return done !== null;
  };
  return (
    <div class="beside">
      <div class="stack">
        <Notice tone="good">{t.open}</Notice>
        {chain !== null && draft !== null && (
          <Ticks
            inRow
            label={t.reach}
            hint={t.reachHint}
            options={chain.devices.map(({ id, name }) => ({ value: id, label: name }))}
            values={draft.reachable}
            onChange={(reachable) => change({ reachable })}
          />
        )}
        <h2>{t.tryNow}</h2>
        <Notice tone="caution">{t.never}</Notice>
        <DocumentView document={plan}>
          {({ next, others }) => (
            <>
              {next === null && <p>{t.nothing}</p>}
              {next !== null && (
                <PhoneStep test={next} isBusy={sending.isBusy} onTold={(line) => void tell(line)} />
              )}
              {others.length > 0 && (
                <details class="more">
                  <summary>
                    {t.before} ({others.length})
                  </summary>
                  <div class="stack">
                    {others.map((test) => (
                      <PhoneStep
                        key={test.id}
                        test={test}
                        isBusy={sending.isBusy}
                        onTold={(line) => void tell(line)}
                      />
                    ))}
                  </div>
                </details>
              )}
            </>
          )}
        </DocumentView>
        <SendingResult sending={sending} />
        <Card title={t.kept}>
          <p class="soft">{t.keptHint}</p>
          <p class="kept-lines" aria-live="polite">
            {typed(ticket.intake.triedOnPhone)}
          </p>
          <form
            class="stack"
            onSubmit={(event) => {
              event.preventDefault();
              if (own.trim() !== '') void tell(own.trim()).then((done) => (done ? forget() : undefined));
            }}
          >
            <TextField
              label={t.own}
              value={own}
              onInput={({ currentTarget }) => write({ own: currentTarget.value })}
            />
            <div>
              <Button type="submit" disabled={sending.isBusy}>
                {t.write}
              </Button>
            </div>
          </form>
        </Card>
      </div>
      <div class="stack">
        <Card title={t.who}>
          <AssignForm ticketId={ticket.id} />
        </Card>
        <DocumentView document={plan}>{(body) => <Visit plan={body} />}</DocumentView>
      </div>
    </div>
  );
}

/** From this chance on somebody drives, and below that one hardly anybody does; both assumed. */
const [likely, unlikely] = [0.8, 0.3];

function Visit({ plan: { visitChance, visitFirst, van, suspects } }: { plan: PhonePlanReply }) {
  const t = afterWords();
  return (
    <>
      <Card title={t.visit}>
        <p>
          <strong>{visitChance >= likely ? t.sure : visitChance <= unlikely ? t.hardly : t.maybe}</strong>
        </p>
        <p>{t.chance(percent(visitChance))}</p>
        {visitFirst !== null && (
          <p>
            {t.visitFirst} <Sentence>{visitFirst.text}</Sentence>. <Sentence>{visitFirst.why}</Sentence>
          </p>
        )}
      </Card>
      <Card title={t.pack}>
        {van.length === 0 ? <p>{t.packNothing}</p> : <p class="soft">{t.packHint}</p>}
        <Shares shares={van.map(({ text, probability }) => ({ text, share: probability }))} />
      </Card>
      <Card title={t.thinks}>
        <Shares
          shares={suspects.slice(0, 5).map(({ name, probability }) => ({ text: name, share: probability }))}
        />
      </Card>
    </>
  );
}

/** Things with their chance, as length and as number. */
function Shares({ shares }: { shares: readonly { text: Message; share: number }[] }) {
  return (
    <ul class="shares">
      {shares.map(({ text, share }) => (
        <li key={said(text).text}>
          <Sentence>{text}</Sentence>
          <span class="share-bar" aria-hidden="true">
            <span style={{ width: `${share * 100}%` }} />
          </span>
          <span class="figures">{percent(share)}</span>
        </li>
      ))}
    </ul>
  );
}
