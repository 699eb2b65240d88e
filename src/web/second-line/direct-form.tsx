import { useEffect, useRef } from 'preact/hooks';
import { testKey } from '../../../shared/isolation/test-record.ts';
import { messageKey } from '../../../shared/message/same.ts';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { Notice } from '../parts/notice.tsx';
import { placeWord } from '../place/place-words.ts';
import { useDocument } from '../store/documents.ts';
import { useDraftForm } from '../store/use-draft.ts';
import { changeWords } from '../words/change-words.ts';
import { inWords, said } from '../words/sentence.tsx';
import { lengthOfTime } from '../words/times.ts';
import { actionWords } from './action-words.ts';
import type { FormProperties } from './form-properties.ts';
import { pickedStep } from './picked-step.ts';

/** One step for the technician, as a change of the triage where there is one that applies. */
export function DirectForm({ facts, send, isBusy }: FormProperties) {
  const t = actionWords();
  const { ticket, chain } = facts;
  const changes = useDocument(paths.applicableChanges(ticket.id)).body?.items ?? [];
  const [draft, change, forget] = useDraftForm(`direct ${ticket.id}`, { change: '', text: '' });
  const keyOf = ({ kind, target, own }: (typeof changes)[number]) => testKey(kind, target, own);
  const nameOf = (each: (typeof changes)[number]) => `${changeWords(each)}: ${placeWord(chain, each.target)}`;
  const chosen = changes.find((each) => keyOf(each) === draft.change);
  const choose = (key: string) => {
    const picked = changes.find((each) => keyOf(each) === key);
    const wasOffered = draft.text.trim() === '' || changes.some((each) => nameOf(each) === draft.text);
    change({
      change: key,
      ...(wasOffered ? { text: picked === undefined ? '' : nameOf(picked) } : {}),
    });
  };
  const form = useRef<HTMLFormElement>(null);
  const wantedKey = pickedStep.value?.ticketId === ticket.id ? pickedStep.value.key : null;
  useEffect(() => {
    if (wantedKey === null || changes.length === 0) return;
    choose(wantedKey);
    pickedStep.value = null;
    form.current?.scrollIntoView({ block: 'nearest' });
    form.current?.querySelector('textarea')?.focus();
  }, [wantedKey, changes.length]);
  return (
    <form
      ref={form}
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        // An own kind goes in words: the organisation may take it away before the step is done.
        const wanted =
          chosen !== undefined && chosen.own == null ? { kind: chosen.kind, target: chosen.target } : null;
        void send({ type: 'directStep', text: draft.text.trim(), change: wanted }).then((isAccepted) =>
          isAccepted ? forget() : undefined,
        );
      }}
    >
      <SelectField
        label={t.whichStep}
        value={chosen === undefined ? '' : draft.change}
        onChoose={choose}
        options={[
          { value: '', label: t.inWordsOnly },
          ...changes.map((each) => ({
            value: keyOf(each),
            label: each.tried ? `${nameOf(each)} (${t.tried})` : nameOf(each),
          })),
        ]}
      />
      {chosen !== undefined && (
        <Notice tone={chosen.caution.length > 0 ? 'caution' : 'plain'}>
          <span>{inWords(chosen.instructions)}</span>
          <span>
            {t.takes(lengthOfTime(chosen.setupMin), lengthOfTime(chosen.restoreMin))}
            {chosen.needs.length > 0 &&
              ` ${t.needsKit(chosen.needs.map((need) => said(need).text).join(', '))}`}
          </span>
          {chosen.caution.map((text) => (
            <span key={messageKey(text)}>{inWords(text)}</span>
          ))}
        </Notice>
      )}
      <TextField
        label={t.stepInWords}
        hint={t.stepHint}
        rows={4}
        required
        value={draft.text}
        onInput={({ currentTarget }) => change({ text: currentTarget.value })}
      />
      <Button type="submit" kind="primary" disabled={isBusy || draft.text.trim() === ''}>
        {t.giveBackForStep}
      </Button>
    </form>
  );
}
