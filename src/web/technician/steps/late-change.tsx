import { useMemo } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { TicketCommand } from '../../../../shared/contract/commands.ts';
import { isReason, longest } from '../../../../shared/contract/limits.ts';
import { lateFindings } from '../../../../shared/contract/triage-names.ts';
import { testKey } from '../../../../shared/isolation/test-record.ts';
import { conceivableChangesOf } from '../../../../state-machines/triage/changes/applicable.ts';
import type { ApplicableChange } from '../../../../state-machines/triage/changes/described.ts';
import { Button, LinkButton } from '../../parts/button.tsx';
import { Choices, Field, SelectField } from '../../parts/field.tsx';
import { Notice } from '../../parts/notice.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { Screen } from '../../parts/screen.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { changeWords } from '../../words/change-words.ts';
import { terms } from '../../words/terms.ts';
import { fieldTime, momentOf } from '../../words/zone-time.ts';
import { placeWords } from '../common/place-words.ts';
import { placeOf, triageAddress } from '../common/triage-addresses.ts';
import { lateWords } from './late-words.ts';
import { MayItStay, placesIn } from './other-change.tsx';
import { TicketPage } from './page.tsx';
import { QuestionPhoto } from './question-photo.tsx';
import { triageWords } from './words.ts';
import type { Work } from './work.ts';

/** A change that nobody declared, entered afterwards at the time at which it was made. */
export function LateChangeScreen({ ticketId = '' }: { ticketId?: string }) {
  return (
    <TicketPage ticketId={ticketId}>
      {(work) => (
        <>
          <LateChange work={work} />
          <QuestionPhoto work={work} />
        </>
      )}
    </TicketPage>
  );
}

type Draft = {
  which: string;
  /** Of a change in words: what it was made to, and whether it may stay. */
  at: string;
  mayStay: boolean;
  detail: string;
  madeBy: string;
  madeAt: string;
  ending: 'there' | 'undone';
  undoneAt: string;
  seen: (typeof lateFindings)[number];
};
const emptyDraft: Draft = {
  which: '',
  at: '',
  mayStay: false,
  detail: '',
  madeBy: '',
  madeAt: '',
  ending: 'there',
  undoneAt: '',
  seen: 'notKnown',
};

/** A moment that a field names; null where it names none. */
const momentIn = (field: string, zone: string): string | null => {
  const moment = momentOf(field, zone);
  return moment === 'invalid' ? null : moment;
};

/** The command that the form says; null while something is missing. */
function commandOf(draft: Draft, changes: readonly ApplicableChange[], zone: string): TicketCommand | null {
  const change =
    draft.which === inWordsOnly ? otherAt(draft) : changes.find((each) => keyOf(each) === draft.which);
  const madeAt = momentIn(draft.madeAt, zone);
  const undoneAt = draft.ending === 'there' ? null : momentIn(draft.undoneAt, zone);
  const madeBy = draft.madeBy.trim();
  if (change === undefined || madeAt === null || madeBy === '') return null;
  if (draft.ending === 'undone' && undoneAt === null) return null;
  const { kind, target, own } = change;
  return {
    type: 'enterLateChange',
    kind,
    target,
    detail: draft.detail.trim(),
    madeAt,
    madeBy,
    undoneAt,
    seen: draft.seen,
    ownKindId: own?.id ?? null,
    mayStay: draft.mayStay,
  };
}

const inWordsOnly = 'otherChange';

function otherAt({ at, detail }: Draft): Pick<ApplicableChange, 'kind' | 'target' | 'own'> | undefined {
  const target = placeOf(at);
  return target === null || !isReason(detail) ? undefined : { kind: inWordsOnly, target, own: null };
}

const keyOf = ({ kind, target, own }: ApplicableChange): string => testKey(kind, target, own);

function LateChange({ work }: { work: Work }) {
  const t = lateWords();
  const { route } = useLocation();
  const { id, triage } = work.ticket;
  const [draft, write, forget] = useDraftForm(`late change ${id}`, emptyDraft);
  const ownChanges = work.known.organisation?.settings.ownChanges;
  const changes = useMemo(
    () => conceivableChangesOf(triage, work.chain, { ownChanges }),
    [triage, work.chain, ownChanges],
  );
  const isOther = draft.which === inWordsOnly;
  const command = commandOf(draft, changes, work.zone);
  const refusal = command === null ? null : work.refusalOf(command);
  const enter = async () => {
    if (command === null || !(await work.send(command))) return;
    await forget();
    route(triageAddress(id), true);
  };
  return (
    <Screen title={t.title}>
      <p>{t.lead}</p>
      <SelectField
        label={t.which}
        value={draft.which}
        options={[
          { value: '', label: '–' },
          ...changes.map((each) => ({
            value: keyOf(each),
            label: `${changeWords(each)}: ${placeWords(work.chain, each.target)}`,
          })),
          { value: inWordsOnly, label: t.other },
        ]}
        onChoose={(which) => write({ which })}
      />
      {isOther && (
        <>
          <SelectField
            label={t.where}
            value={draft.at}
            options={[{ value: '', label: '–' }, ...placesIn(work.chain)]}
            onChoose={(at) => write({ at })}
          />
          <MayItStay value={draft.mayStay} onChoose={(mayStay) => write({ mayStay })} />
        </>
      )}
      <Field
        label={t.detail}
        optional={!isOther}
        value={draft.detail}
        maxLength={longest.line}
        onInput={({ currentTarget }) => write({ detail: currentTarget.value })}
      />
      <Field
        label={t.madeBy}
        value={draft.madeBy}
        maxLength={longest.line}
        onInput={({ currentTarget }) => write({ madeBy: currentTarget.value })}
      />
      <Field
        label={t.madeAt}
        type="datetime-local"
        value={draft.madeAt}
        max={fieldTime(new Date().toISOString(), work.zone)}
        onInput={({ currentTarget }) => write({ madeAt: currentTarget.value })}
      />
      <Choices
        label={t.isThere}
        value={draft.ending}
        options={[
          { value: 'there', label: t.there },
          { value: 'undone', label: t.undone },
        ]}
        onChoose={(ending) => write({ ending })}
      />
      {draft.ending === 'undone' && (
        <Field
          label={t.undoneAt}
          type="datetime-local"
          value={draft.undoneAt}
          onInput={({ currentTarget }) => write({ undoneAt: currentTarget.value })}
        />
      )}
      <Choices
        label={t.seen}
        value={draft.seen}
        options={lateFindings.map((value) => ({ value, label: terms().lateFinding[value] }))}
        onChoose={(seen) => write({ seen })}
      />
      {command === null && <Notice>{t.missing}</Notice>}
      {refusal !== null && <Refusal problem={refusal} />}
      <Button
        kind="primary"
        large
        disabled={command === null || refusal !== null}
        onClick={() => void enter()}
      >
        {t.enter}
      </Button>
      <LinkButton href={triageAddress(id)}>{triageWords().toQuestion}</LinkButton>
    </Screen>
  );
}
