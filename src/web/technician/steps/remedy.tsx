import { useState } from 'preact/hooks';
import { isReason, longest } from '../../../../shared/contract/limits.ts';
import type { Remedy } from '../../../../shared/contract/triage.ts';
import { openChange } from '../../../../state-machines/triage/record.ts';
import { Button } from '../../parts/button.tsx';
import { Choices, Field, TextField } from '../../parts/field.tsx';
import { Notice } from '../../parts/notice.tsx';
import { typed } from '../../parts/typed.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { placeWords } from '../common/place-words.ts';
import { caseWords } from './case-words.ts';
import { Question } from './question.tsx';
import { ReasonDialog } from './reason.tsx';
import { stepWords } from './step-words.ts';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** A step that is taken back with a reason, as a button with its dialog. */
export function TakeBack({
  work,
  label,
  title,
  suggestion = '',
  send,
}: {
  work: Work;
  label: string;
  title: string;
  suggestion?: string;
  send: (reason: string) => Promise<boolean>;
}) {
  const [isAsking, setAsking] = useState(false);
  return (
    <>
      <Button onClick={() => setAsking(true)}>{label}</Button>
      {isAsking && (
        <ReasonDialog
          about={`${title} ${work.ticket.id}`}
          title={title}
          suggestion={suggestion}
          action={label}
          refusal={work.refusal}
          onDone={() => setAsking(false)}
          onReason={send}
        />
      )}
    </>
  );
}

/** A culprit is named: how the ticket ends. */
export function RemedyQuestion({ work }: { work: Work }) {
  const t = caseWords();
  const { culprit } = work.ticket.triage;
  const [draft, write, forget] = useDraftForm(`remedy ${work.ticket.id}`, {
    kind: 'permanent' as 'permanent' | 'workaround',
    what: '',
    limits: '',
    acceptedBy: '',
  });
  const [isLacking, setLacking] = useState(false);
  const isWorkaround = draft.kind === 'workaround';
  const isFull =
    isReason(draft.what) && (!isWorkaround || (isReason(draft.limits) && draft.acceptedBy.trim() !== ''));
  const choose = async () => {
    setLacking(!isFull);
    if (!isFull) return;
    const what = draft.what.trim();
    const remedy: Remedy = isWorkaround
      ? {
          kind: 'workaround',
          what,
          limits: draft.limits.trim(),
          acceptedBy: draft.acceptedBy.trim(),
          acceptedAt: new Date().toISOString(),
        }
      : { kind: 'permanent', what };
    if (await work.send({ type: 'chooseRemedy', remedy })) await forget();
  };
  return (
    <Question
      work={work}
      title={culprit === null ? t.remedyTitle : t.remedyOf(placeWords(work.chain, culprit.place))}
      answers={
        <>
          {openChange(work.ticket.triage) !== null && <EndChange work={work} />}
          <Button kind="primary" large onClick={() => void choose()}>
            {t.choose}
          </Button>
          <TakeBack
            work={work}
            label={t.withdrawCulprit}
            title={t.withdrawCulpritTitle}
            send={(reason) => work.send({ type: 'withdrawCulprit', reason })}
          />
        </>
      }
    >
      {culprit !== null && (
        <Notice tone="good">
          <span>{typed(culprit.explanation)}</span>
        </Notice>
      )}
      <Choices
        label={t.remedyTitle}
        value={draft.kind}
        onChoose={(kind) => write({ kind })}
        options={[
          { value: 'permanent', label: t.permanent },
          { value: 'workaround', label: t.workaround },
        ]}
      />
      <TextField
        label={t.what}
        value={draft.what}
        maxLength={longest.reason}
        onInput={({ currentTarget }) => write({ what: currentTarget.value })}
      />
      {isWorkaround && (
        <>
          <TextField
            label={t.limits}
            value={draft.limits}
            maxLength={longest.reason}
            onInput={({ currentTarget }) => write({ limits: currentTarget.value })}
          />
          <Field
            label={t.acceptedBy}
            value={draft.acceptedBy}
            maxLength={longest.line}
            onInput={({ currentTarget }) => write({ acceptedBy: currentTarget.value })}
          />
        </>
      )}
      {isLacking && !isFull && (
        <Notice tone="caution" announce>
          {t.needsAll}
        </Notice>
      )}
    </Question>
  );
}

/** A change that was open when second line accepted the case is finished before the remedy. */
function EndChange({ work }: { work: Work }) {
  const t = stepWords();
  return (
    <>
      {work.may('restoreChange') && (
        <Button large onClick={() => void work.send({ type: 'restoreChange', note: '' })}>
          {t.back}
        </Button>
      )}
      {work.may('keepChange') && (
        <Button large onClick={() => void work.send({ type: 'keepChange', note: '', oneOfTwo: false })}>
          {t.stays}
        </Button>
      )}
      {work.may('withdrawChange') && (
        <TakeBack
          work={work}
          label={t.notMade}
          title={t.notMadeTitle}
          suggestion={t.notMadeReason}
          send={(reason) => work.send({ type: 'withdrawChange', reason })}
        />
      )}
    </>
  );
}

/** Takes the settled remedy back, to settle on another. */
export function WithdrawRemedy({ work }: { work: Work }) {
  const t = caseWords();
  return (
    <TakeBack
      work={work}
      label={t.withdrawRemedy}
      title={t.withdrawRemedyTitle}
      send={(reason) => work.send({ type: 'withdrawRemedy', reason })}
    />
  );
}

/** The fault did not show in a watch long enough. */
export function NoFaultForm({ work, onBack }: { work: Work; onBack: () => void }) {
  const t = caseWords();
  const [draft, write, forget] = useDraftForm(`no fault ${work.ticket.id}`, { what: '' });
  const choose = async () => {
    const what = draft.what.trim();
    if (isReason(what) && (await work.send({ type: 'chooseRemedy', remedy: { kind: 'noFaultFound', what } })))
      await forget();
  };
  return (
    <Question
      work={work}
      title={t.noFaultTitle}
      answers={
        <>
          <Button kind="primary" large disabled={!isReason(draft.what)} onClick={() => void choose()}>
            {t.choose}
          </Button>
          <Button onClick={onBack}>{triageWords().cancel}</Button>
        </>
      }
    >
      <p>{t.noFaultLead}</p>
      <TextField
        label={t.what}
        value={draft.what}
        maxLength={longest.reason}
        onInput={({ currentTarget }) => write({ what: currentTarget.value })}
      />
    </Question>
  );
}
