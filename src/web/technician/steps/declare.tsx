import { useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { samePlace } from '../../../../shared/chain/place.ts';
import type { Settings } from '../../../../shared/contract/chain.ts';
import type { ChangeRecord } from '../../../../shared/contract/change.ts';
import type { TicketCommand } from '../../../../shared/contract/commands.ts';
import { isReason, longest } from '../../../../shared/contract/limits.ts';
import { testKey } from '../../../../shared/isolation/test-record.ts';
import { messageKey } from '../../../../shared/message/same.ts';
import { applicableChangesOf } from '../../../../state-machines/triage/changes/applicable.ts';
import type { ApplicableChange } from '../../../../state-machines/triage/changes/described.ts';
import { openChange } from '../../../../state-machines/triage/record.ts';
import { paths } from '../../api/paths.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Field, TextField } from '../../parts/field.tsx';
import { Notice } from '../../parts/notice.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { Screen } from '../../parts/screen.tsx';
import { isSettled, useDocument } from '../../store/documents.ts';
import { useDraftForm } from '../../store/use-draft.ts';
import { changeWords } from '../../words/change-words.ts';
import { inWords } from '../../words/sentence.tsx';
import { placeWords } from '../common/place-words.ts';
import { kindOf, placeOf, triageAddress } from '../common/triage-addresses.ts';
import { expectationOf, settingsTouched } from './declaration.ts';
import { OtherChangeForm } from './other-change.tsx';
import { TicketPage, ToQuestion } from './page.tsx';
import { Cautions, Question, WorkingQuestion } from './question.tsx';
import { QuestionPhoto } from './question-photo.tsx';
import { stepWords } from './step-words.ts';
import { usePlan } from './use-plan.ts';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** One change before it is made: what is expected of it, and the settings that it touches. */
export function DeclareScreen({
  ticketId = '',
  kind = '',
  place = '',
}: {
  ticketId?: string;
  kind?: string;
  place?: string;
}) {
  return (
    <TicketPage ticketId={ticketId}>
      {(work) => (
        <>
          <Declare key={kind + place} work={work} named={kind} place={decodeURIComponent(place)} />
          <QuestionPhoto work={work} />
        </>
      )}
    </TicketPage>
  );
}

function Declare({ work, named, place }: { work: Work; named: string; place: string }) {
  const target = placeOf(place);
  const { kind, ownKindId } = kindOf(named);
  const organisation = useDocument(paths.organisation);
  const isMeant = (change: Pick<ChangeRecord, 'kind' | 'target' | 'own'>) =>
    change.kind === kind &&
    (change.own?.id ?? null) === ownKindId &&
    target !== null &&
    samePlace(change.target, target);
  const open = openChange(work.ticket.triage);
  if (open !== null && isMeant(open)) return <ToQuestion ticketId={work.ticket.id} />;
  if (kind === 'otherChange' && target !== null) return <OtherChangeForm work={work} at={target} />;
  if (ownKindId !== null && !isSettled(organisation)) return <WorkingQuestion work={work} />;
  const ownChanges = organisation.body?.settings.ownChanges;
  const change = applicableChangesOf(work.ticket.triage, { ownChanges }).find(isMeant);
  if (change === undefined) {
    return (
      <Screen title={stepWords().unknownChange}>
        <div>
          <LinkButton href={triageAddress(work.ticket.id)}>{triageWords().toQuestion}</LinkButton>
        </div>
      </Screen>
    );
  }
  return <DeclareForm work={work} change={change} />;
}

type Draft = {
  expected: string | null;
  detail: string;
  becomes: Record<string, string>;
  own: string;
  ownTo: string;
};

function DeclareForm({ work, change }: { work: Work; change: ApplicableChange }) {
  const t = stepWords();
  const { route } = useLocation();
  const { plan } = usePlan(work);
  const { id } = work.ticket;
  const touched = settingsTouched(work, change);
  const [draft, write, forget] = useDraftForm<Draft>(
    `declare ${id} ${testKey(change.kind, change.target, change.own)}`,
    {
      expected: null,
      detail: '',
      becomes: touched?.becomes ?? {},
      own: '',
      ownTo: '',
    },
  );
  const [isTooShort, setTooShort] = useState(false);
  const ownKindId = change.own?.id ?? null;
  const expected = draft.expected ?? expectationOf(work, plan, { ...change, ownKindId });
  const settings =
    touched === null
      ? []
      : [...Object.entries(draft.becomes), [draft.own.trim(), draft.ownTo] as const].flatMap(([key, to]) =>
          key === '' || to.trim() === '' ? [] : [{ deviceId: touched.deviceId, key, to: to.trim() }],
        );
  const command: TicketCommand = {
    type: 'declareChange',
    kind: change.kind,
    target: change.target,
    detail: draft.detail.trim(),
    expected: expected.trim(),
    settings,
    ownKindId,
    mayStay: false,
  };
  const refusal = work.refusalOf(command);
  const declare = async () => {
    setTooShort(!isReason(expected));
    if (!isReason(expected) || !(await work.send(command))) return;
    await forget();
    route(triageAddress(id), true);
  };
  return (
    <Question
      work={work}
      title={`${changeWords(change)}: ${placeWords(work.chain, change.target)}`}
      answers={
        <>
          {refusal === null && (
            <Button kind="primary" large onClick={() => void declare()}>
              {t.declare}
            </Button>
          )}
          <LinkButton href={triageAddress(id)}>{triageWords().toQuestion}</LinkButton>
        </>
      }
    >
      {refusal !== null && work.refusal === null && <Refusal problem={refusal} />}
      <Cautions texts={change.caution} />
      <p class="to-do">{inWords(change.instructions)}</p>
      {change.needs.length > 0 && (
        <Notice>
          <strong>{triageWords().needs}</strong>
          <ul>
            {change.needs.map((need) => (
              <li key={messageKey(need)}>{inWords(need)}</li>
            ))}
          </ul>
        </Notice>
      )}
      {touched !== null && <SettingFields known={touched.known} draft={draft} write={write} />}
      <TextField
        label={t.expected}
        hint={t.expectedHint}
        value={expected}
        maxLength={longest.reason}
        error={isTooShort ? triageWords().tooShort : undefined}
        onInput={({ currentTarget }) => write({ expected: currentTarget.value })}
      />
      <Field
        label={t.detail}
        optional
        value={draft.detail}
        maxLength={longest.text}
        onInput={({ currentTarget }) => write({ detail: currentTarget.value })}
      />
    </Question>
  );
}

function SettingFields({
  known,
  draft,
  write,
}: {
  known: Settings;
  draft: Draft;
  write: (part: Partial<Draft>) => void;
}) {
  const t = stepWords();
  return (
    <fieldset class="field choices">
      <legend>{t.settingsTitle}</legend>
      {Object.entries(known).map(([key, value]) => (
        <Field
          key={key}
          label={key}
          hint={`${t.settingNow(String(value))}; ${t.becomes}`}
          value={draft.becomes[key] ?? ''}
          maxLength={longest.settingValue}
          onInput={({ currentTarget }) =>
            write({ becomes: { ...draft.becomes, [key]: currentTarget.value } })
          }
        />
      ))}
      <Field
        label={t.anotherSetting}
        hint={t.settingName}
        optional
        value={draft.own}
        maxLength={longest.settingKey}
        onInput={({ currentTarget }) => write({ own: currentTarget.value })}
      />
      {draft.own.trim() !== '' && (
        <Field
          label={draft.own}
          hint={t.becomes}
          value={draft.ownTo}
          maxLength={longest.settingValue}
          onInput={({ currentTarget }) => write({ ownTo: currentTarget.value })}
        />
      )}
    </fieldset>
  );
}
