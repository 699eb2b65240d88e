import { useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { Place } from '../../../../shared/contract/chain.ts';
import { isReason, longest } from '../../../../shared/contract/limits.ts';
import type { CompletenessItem, MissingItem, Waiver } from '../../../../shared/contract/triage.ts';
import { messageKey } from '../../../../shared/message/same.ts';
import { runningWatch } from '../../../../state-machines/triage/record.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Field, TextField } from '../../parts/field.tsx';
import { Notice } from '../../parts/notice.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { inWords, Sentence } from '../../words/sentence.tsx';
import { terms } from '../../words/terms.ts';
import { evidenceAddress, placeAddress, visitAddress } from '../common/addresses.ts';
import { triageAddress } from '../common/triage-addresses.ts';
import { caseWords } from './case-words.ts';
import { TicketPage, ToQuestion } from './page.tsx';
import { Question } from './question.tsx';
import { QuestionPhoto } from './question-photo.tsx';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** Handing the case to second line: the question, and what is missing or can't be had. */
export function EscalateScreen({ ticketId = '' }: { ticketId?: string }) {
  return (
    <TicketPage ticketId={ticketId}>
      {(work) =>
        work.ticket.state.startsWith('escalated') ? (
          <ToQuestion ticketId={ticketId} />
        ) : (
          <>
            <Escalate work={work} />
            <QuestionPhoto work={work} />
          </>
        )
      }
    </TicketPage>
  );
}

export type WaivedDraft = Partial<Record<CompletenessItem, string>>;
/** The reasons given, item by item; without those that say nothing. */
export const waiversOf = (waived: WaivedDraft): Waiver[] =>
  (Object.entries(waived) as [CompletenessItem, string][]).flatMap(([item, reason]) =>
    isReason(reason) ? [{ item, reason: reason.trim() }] : [],
  );

function Escalate({ work }: { work: Work }) {
  const t = caseWords();
  const { route } = useLocation();
  const [draft, write, forget] = useDraftForm(`escalate ${work.ticket.id}`, {
    question: '',
    waived: {} as WaivedDraft,
  });
  const [isTooShort, setTooShort] = useState(false);
  const address = triageAddress(work.ticket.id);
  const send = async () => {
    const question = draft.question.trim();
    setTooShort(!isReason(question));
    if (!isReason(question)) return;
    if (await work.send({ type: 'escalate', question, waivers: waiversOf(draft.waived) })) {
      await forget();
      route(address, true);
    }
  };
  return (
    <Question
      work={work}
      title={t.escalateTitle}
      answers={
        <>
          <Button kind="primary" large onClick={() => void send()}>
            {t.send}
          </Button>
          <LinkButton href={address}>{triageWords().toQuestion}</LinkButton>
        </>
      }
    >
      {runningWatch(work.ticket.triage) !== null && <Notice tone="caution">{t.watchFirst}</Notice>}
      <TextField
        label={t.question}
        hint={t.questionHint}
        value={draft.question}
        maxLength={longest.reason}
        error={isTooShort ? triageWords().tooShort : undefined}
        onInput={({ currentTarget }) => write({ question: currentTarget.value })}
      />
      <MissingItems
        missing={work.ticket.missing}
        waived={draft.waived}
        onChange={(waived) => write({ waived })}
        ticketId={work.ticket.id}
      />
      <p class="soft">{t.uploadsFirst}</p>
    </Question>
  );
}

/** The screen of the visit on which a missing thing is written down or photographed. */
const whereToAdd = (ticketId: string, item: CompletenessItem, place: Place | null): string => {
  if (item === 'logs') return evidenceAddress(ticketId, 'log');
  return place === null || place.kind === 'chain' ? visitAddress(ticketId) : placeAddress(ticketId, place);
};

/** What a case would still miss; each kind of thing can be ticked as not to be had, with the reason. */
export function MissingItems({
  missing,
  waived,
  onChange,
  ticketId,
}: {
  missing: readonly MissingItem[];
  waived: WaivedDraft;
  onChange: (waived: WaivedDraft) => void;
  ticketId: string;
}) {
  const t = caseWords();
  const items = [...new Set(missing.map(({ item }) => item))];
  if (items.length === 0) return <Notice tone="good">{t.complete}</Notice>;
  const toggle = (item: CompletenessItem, isOn: boolean) => {
    const { [item]: _, ...others } = waived;
    onChange(isOn ? { ...others, [item]: '' } : others);
  };
  return (
    <section class="stack">
      <h2>{t.missing(items.length)}</h2>
      <p>{t.missingLead}</p>
      {items.map((item) => (
        <div key={item} class="card">
          <h3>{terms().completenessItem[item]}</h3>
          <ul>
            {missing
              .filter((each) => each.item === item)
              .map(({ text, place }) => (
                <li key={messageKey(text)}>
                  <Sentence>{text}</Sentence>{' '}
                  <a class="add-it" href={whereToAdd(ticketId, item, place)}>
                    {t.addIt}
                    <span class="for-readers-only">: {inWords(text)}</span>
                  </a>
                </li>
              ))}
          </ul>
          <label class="choice">
            <input
              type="checkbox"
              checked={waived[item] !== undefined}
              onChange={({ currentTarget }) => toggle(item, currentTarget.checked)}
            />
            {t.waive}
            <span class="for-readers-only">: {terms().completenessItem[item]}</span>
          </label>
          {waived[item] !== undefined && (
            <Field
              label={t.waiveWhy(terms().completenessItem[item])}
              value={waived[item]}
              maxLength={longest.reason}
              error={isReason(waived[item]) ? undefined : triageWords().tooShort}
              onInput={({ currentTarget }) => onChange({ ...waived, [item]: currentTarget.value })}
            />
          )}
        </div>
      ))}
    </section>
  );
}
