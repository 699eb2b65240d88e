import { useEffect, useState } from 'preact/hooks';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import { paths } from '../api/paths.ts';
import { session } from '../api/session.ts';
import { Button } from '../parts/button.tsx';
import { Notice } from '../parts/notice.tsx';
import { SendingResult, useSending } from '../parts/sending.tsx';
import { refresh } from '../store/documents.ts';
import { commandWord, terms } from '../words/terms.ts';
import { AcceptForm, HandBackForm } from './accept-form.tsx';
import { actionWords } from './action-words.ts';
import { AskForm } from './ask-form.tsx';
import type { CaseFacts } from './case-facts.ts';
import { DirectForm } from './direct-form.tsx';
import type { FormProperties } from './form-properties.ts';
import { pickedStep } from './picked-step.ts';

const forms = {
  askForMore: AskForm,
  directStep: DirectForm,
  acceptCase: AcceptForm,
  handBack: HandBackForm,
} as const;
type FormName = keyof typeof forms;
const formNames = Object.keys(forms) as FormName[];

/** What second line can do with the case now; while it is with somebody else, what they can do. */
export function Actions({ facts }: { facts: CaseFacts }) {
  const t = actionWords();
  const { ticket, nameOf } = facts;
  const [open, setOpen] = useState<FormName | null>(null);
  const [done, setDone] = useState<string | null>(null);
  const sending = useSending();
  const isPicked = pickedStep.value?.ticketId === ticket.id;
  useEffect(() => {
    if (!isPicked) return;
    setDone(null);
    setOpen('directStep');
  }, [isPicked]);
  const allowed = new Set(ticket.allowedNow.map(({ type }) => type));
  const send: FormProperties['send'] = async (command) => {
    setDone(null);
    const answer = await sending.send('POST', addressOf(addresses.commands, { id: ticket.id }), {
      body: command,
    });
    if (answer === null) return false;
    setOpen(null);
    setDone(t.done[command.type as keyof typeof t.done] ?? t.done.takeCase);
    await refresh(paths.ticket(ticket.id));
    return true;
  };
  const takenBy = ticket.triage.escalations.at(-1)?.takenBy ?? null;
  const isMine = takenBy !== null && takenBy === session.value?.member.id;
  const Form = open === null ? null : forms[open];
  const canAct = allowed.has('takeCase') || formNames.some((name) => allowed.has(name));
  return (
    <section class="card case-actions not-printed" aria-labelledby="actions-title">
      <h2 id="actions-title">{t.whatYouCanDo}</h2>
      {ticket.state.startsWith('escalated') && (
        <p>{takenBy === null ? t.takenByNobody : isMine ? t.takenByYou : t.takenBy(nameOf(takenBy))}</p>
      )}
      {!canAct && (
        <>
          <p>{t.notWithYou}</p>
          <ul>
            {ticket.allowedNow.map((command) => (
              <li key={command.type}>{commandWord(command)}</li>
            ))}
          </ul>
        </>
      )}
      {allowed.has('takeCase') && !isMine && (
        <Button kind="primary" disabled={sending.isBusy} onClick={() => void send({ type: 'takeCase' })}>
          {terms().command.takeCase}
        </Button>
      )}
      {formNames
        .filter((name) => allowed.has(name))
        .map((name) => (
          <Button
            key={name}
            aria-expanded={open === name}
            onClick={() => {
              sending.clear();
              setDone(null);
              setOpen(open === name ? null : name);
            }}
          >
            {terms().command[name]}
          </Button>
        ))}
      {done !== null && (
        <Notice tone="good" announce>
          {done}
        </Notice>
      )}
      {Form !== null && <Form facts={facts} send={send} isBusy={sending.isBusy} />}
      <SendingResult sending={sending} />
    </section>
  );
}
