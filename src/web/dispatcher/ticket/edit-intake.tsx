import { useState } from 'preact/hooks';
import { addresses, addressOf } from '../../../../shared/contract/addresses.ts';
import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { paths } from '../../api/paths.ts';
import { Button } from '../../parts/button.tsx';
import { Notice } from '../../parts/notice.tsx';
import { SendingResult, useSending } from '../../parts/sending.tsx';
import { Wipe } from '../../parts/wipe.tsx';
import { keepDocument, refresh, useDocument } from '../../store/documents.ts';
import { useDraftForm } from '../../store/use-draft.ts';
import { frameWords } from '../../words/frame.ts';
import { updateOf } from '../assign/ticket-update.ts';
import { type Answers, answersOf, intakeOf, keepingErased } from '../call/answers.ts';
import { Changed, Questions, Symptom } from '../call/questions.tsx';
import { ticketWords } from './words.ts';

type Draft = { changed: Partial<Answers> };
/** Whatever `amendIntake` sends. */
const ofSymptom: ReadonlySet<string> = new Set<keyof Answers>([
  ...(['symptom', 'times', 'timesPer', 'lasts', 'lastsIn', 'pattern', 'trigger'] as const),
  ...(['warmAfterMin', 'onlyWith', 'onlyWithWhat', 'onlyWithDevice'] as const),
]);
const isOfSymptom = (key: string): boolean => ofSymptom.has(key);

/** What was told in the call, to be corrected: the answers by an update, symptom and changes as steps of triage. */
export function EditIntake({ ticket, etag }: { ticket: Ticket; etag: string | null }) {
  const t = ticketWords();
  const chain = useDocument(paths.chain(ticket.chainId)).body?.chain ?? null;
  const site = useDocument(paths.site(ticket.siteId)).body;
  const told = {
    ...ticket.intake,
    symptom: ticket.triage.symptom,
    whatChanged: ticket.triage.whatChanged?.answers ?? ticket.intake.whatChanged,
  };
  // Only what was changed here is a draft: what somebody else corrects meanwhile shows, and is not taken back.
  const [draft, write, forget] = useDraftForm<Draft>(`intake ${ticket.id}`, { changed: {} });
  const answers = { ...answersOf(told), ...draft.changed };
  const [isSaved, setSaved] = useState(false);
  const sending = useSending();
  const change = (part: Partial<typeof answers>) => {
    setSaved(false);
    write({ changed: { ...draft.changed, ...part } });
  };
  const edited = intakeOf({ ...answers, symptom: answers.symptom ?? ticket.symptom });
  const intake = keepingErased(edited, told);
  const path = paths.ticket(ticket.id);
  /** @param keys the answers that this sends: the others stay as they are typed */
  const send = async (
    keys: (key: string) => boolean,
    { method, to, ...body }: { method: 'PUT' | 'POST'; to: string; body: object; ifMatch?: string },
  ) => {
    const done = await sending.send<Ticket>(method, to, body);
    if (done === null) return void refresh(path);
    const left = Object.entries(draft.changed).filter(([key]) => !keys(key));
    if (left.length === 0) await forget();
    else write({ changed: Object.fromEntries(left) });
    await keepDocument({ path, body: done.body, etag: done.etag, readAt: new Date().toISOString() });
    setSaved(true);
  };
  const command = (keys: (key: string) => boolean, body: object) =>
    send(keys, { method: 'POST', to: addressOf(addresses.commands, { id: ticket.id }), body });
  const { symptom: _symptom, whatChanged: _whatChanged, ...plain } = intake;
  return (
    <div class="stack">
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault();
          void send((key) => !isOfSymptom(key) && key !== 'changed', {
            method: 'PUT',
            to: path,
            body: updateOf(ticket, { intake: plain }),
            ifMatch: etag ?? '',
          });
        }}
      >
        <Questions
          chain={chain}
          answers={answers}
          onChange={change}
          contact={site?.contact ?? null}
          withTriage={false}
        />
        <div>
          <Button type="submit" kind="primary" disabled={sending.isBusy}>
            {t.saveAnswers}
          </Button>
        </div>
      </form>
      <details class="more">
        <summary>{t.correctSymptom}</summary>
        <div class="stack">
          <div class="questions">
            <Symptom chain={chain} answers={answers} onChange={change} />
          </div>
          <div>
            <Button
              disabled={sending.isBusy}
              onClick={() => void command(isOfSymptom, { type: 'amendIntake', symptom: intake.symptom })}
            >
              {t.saveSymptom}
            </Button>
          </div>
          <div class="questions">
            <Changed answers={answers} onChange={change} />
          </div>
          <div>
            <Button
              disabled={sending.isBusy || intake.whatChanged.length === 0}
              onClick={() =>
                void command((key) => key === 'changed', {
                  type: 'answerWhatChanged',
                  answers: intake.whatChanged,
                })
              }
            >
              {t.saveChanged}
            </Button>
          </div>
        </div>
      </details>
      <SendingResult sending={sending} />
      <Wipe label={t.asSaved} draft={draft} empty={{ changed: {} }} onWipe={forget} onUndo={write} />
      {isSaved && (
        <Notice tone="good" announce>
          {frameWords().saved}
        </Notice>
      )}
    </div>
  );
}
