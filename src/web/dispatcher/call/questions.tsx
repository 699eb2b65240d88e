import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import type { Chain } from '../../../../shared/contract/chain.ts';
import { longest } from '../../../../shared/contract/limits.ts';
import { symptomKinds, whatChangedKinds } from '../../../../shared/contract/triage-names.ts';
import { Button } from '../../parts/button.tsx';
import { Field, SelectField, TextField } from '../../parts/field.tsx';
import { Ticks } from '../../parts/tick.tsx';
import { terms } from '../../words/terms.ts';
import { Chips } from '../common/chips.tsx';
import { type Answers, comesAtARate, contentChoices, lasting, noAnswers, often } from './answers.ts';
import { HowItComes, OnlyWithOne } from './how-it-comes.tsx';
import { optionsOf } from './options.ts';
import { callWords } from './words.ts';

type Properties = {
  chain: Chain | null;
  answers: Answers;
  onChange: (part: Partial<Answers>) => void;
  contact: { name: string | null; phone: string | null } | null;
  /** What triage decides on: asked when a ticket is opened, and corrected by a step of their own later. */
  withTriage?: boolean;
};

/** What to ask: three questions, and the rest for whoever has the time. Each but the first may stay open. */
export function Questions({ chain, answers, onChange, contact, withTriage = true }: Properties) {
  const t = callWords();
  const devicesOf = (isAsked: (role: string) => boolean) =>
    (chain?.devices ?? [])
      .filter(({ role }) => isAsked(role))
      .map(({ id, name }) => ({ value: id, label: name }));
  const sources = devicesOf((role) => role === 'source');
  const displays = devicesOf((role) => role === 'display');
  return (
    <div class="questions">
      {withTriage && (
        <>
          <Seen answers={answers} onChange={onChange} />
          <Changed answers={answers} onChange={onChange} />
        </>
      )}
      <Rest isFolded={withTriage} hasAnswers={hasMore(answers)}>
        {withTriage && <SymptomFacts chain={chain} answers={answers} onChange={onChange} />}
        {sources.length > 0 && (
          <Ticks
            inRow
            label={t.sources}
            options={sources}
            values={answers.sources}
            onChange={(values) => onChange({ sources: values })}
          />
        )}
        {displays.length > 0 && (
          <Ticks
            inRow
            label={t.displays}
            options={displays}
            values={answers.displays}
            onChange={(values) => onChange({ displays: values })}
          />
        )}
        <Chips
          label={t.contentQ}
          options={optionsOf(contentChoices, t.content)}
          value={answers.content}
          onChoose={(content) => onChange({ content })}
        >
          <Field
            label={t.contentText}
            value={answers.contentText}
            onInput={({ currentTarget }) => onChange({ contentText: currentTarget.value })}
          />
        </Chips>
        <Field
          label={t.since}
          hint={t.sinceHint}
          maxLength={longest.line}
          value={answers.since}
          onInput={({ currentTarget }) => onChange({ since: currentTarget.value })}
        />
        <Chips
          label={t.worked}
          options={optionsOf(['yes', 'no', 'notKnown'] as const, t.yesNo)}
          value={answers.workedBefore}
          onChoose={(workedBefore) => onChange({ workedBefore })}
        />
        <TextField
          label={t.tried}
          value={answers.tried}
          onInput={({ currentTarget }) => onChange({ tried: currentTarget.value })}
        />
        <Caller answers={answers} onChange={onChange} contact={contact} />
        <TextField
          label={t.notes}
          value={answers.notes}
          onInput={({ currentTarget }) => onChange({ notes: currentTarget.value })}
        />
      </Rest>
    </div>
  );
}

/** What three questions ask; whatever else is answered stands in the rest. */
const askedFirst: ReadonlySet<string> = new Set<keyof Answers>([
  ...(['symptom', 'pattern', 'trigger', 'warmAfterMin', 'changed'] as const),
]);
const hasMore = (answers: Answers): boolean =>
  Object.entries(answers).some(
    ([key, value]) =>
      !askedFirst.has(key) && JSON.stringify(value) !== JSON.stringify(noAnswers[key as keyof Answers]),
  );

function Rest({
  isFolded,
  hasAnswers,
  children,
}: {
  isFolded: boolean;
  hasAnswers: boolean;
  children: ComponentChildren;
}) {
  // Once it was open it stays so, whatever is taken out again.
  const wasOpen = useRef(false);
  wasOpen.current ||= hasAnswers;
  if (!isFolded) return <>{children}</>;
  return (
    <details class="more" open={wasOpen.current}>
      <summary>{callWords().more}</summary>
      <div class="questions">{children}</div>
    </details>
  );
}

type Part = Pick<Properties, 'answers' | 'onChange'>;

export function Symptom({ chain, ...part }: Part & Pick<Properties, 'chain'>) {
  return (
    <>
      <Seen {...part} />
      <SymptomFacts chain={chain} {...part} />
    </>
  );
}

function Seen({ answers, onChange }: Part) {
  const t = callWords();
  return (
    <>
      <Chips
        label={t.see}
        options={optionsOf(symptomKinds, terms().symptom)}
        value={answers.symptom}
        onChoose={(symptom) => onChange({ symptom })}
        onClear={() => onChange({ symptom: null })}
      />
      <HowItComes answers={answers} onChange={onChange} />
    </>
  );
}

function SymptomFacts({ chain, answers, onChange }: Part & Pick<Properties, 'chain'>) {
  const t = callWords();
  return (
    <>
      {comesAtARate(answers) && (
        <Amount
          label={t.oftenQ}
          value={answers.times}
          unit={answers.timesPer}
          units={optionsOf(often, t.per)}
          onValue={(times) => onChange({ times })}
          onUnit={(timesPer) => onChange({ timesPer })}
        />
      )}
      <Amount
        label={t.longQ}
        value={answers.lasts}
        unit={answers.lastsIn}
        units={optionsOf(lasting, t.long)}
        onValue={(lasts) => onChange({ lasts })}
        onUnit={(lastsIn) => onChange({ lastsIn })}
      />
      <OnlyWithOne chain={chain} answers={answers} onChange={onChange} />
    </>
  );
}

function Amount<Unit extends string>({
  label,
  value,
  unit,
  units,
  onValue,
  onUnit,
}: {
  label: string;
  value: string;
  unit: Unit;
  units: { value: Unit; label: string }[];
  onValue: (value: string) => void;
  onUnit: (unit: Unit) => void;
}) {
  const t = callWords();
  return (
    <fieldset class="chips field">
      <legend>{label}</legend>
      <div class="amount">
        <Field
          label={t.count}
          inputMode="decimal"
          pattern="[0-9]*[.,]?[0-9]*"
          value={value}
          onInput={({ currentTarget }) => onValue(currentTarget.value)}
        />
        <SelectField label={t.unit} options={units} value={unit} onChoose={onUnit} />
      </div>
    </fieldset>
  );
}

export function Changed({ answers, onChange }: Part) {
  const t = callWords();
  const { changed } = answers;
  const set = (kind: string, part: object) =>
    onChange({ changed: changed.map((one) => (one.kind === kind ? { ...one, ...part } : one)) });
  return (
    <div class="stack">
      <Ticks
        inRow
        label={t.changedQ}
        options={optionsOf(whatChangedKinds, t.changed)}
        values={changed.map(({ kind }) => kind)}
        onChange={(kinds) =>
          onChange({
            changed: kinds.map(
              (kind) => changed.find((one) => one.kind === kind) ?? { kind, text: '', when: '' },
            ),
          })
        }
      />
      {changed
        .filter(({ kind }) => kind !== 'nothing' && kind !== 'notKnown')
        .map(({ kind, text, when }) => (
          <div class="amount" key={kind}>
            <Field
              label={t.changedText(t.changed[kind])}
              value={text}
              onInput={({ currentTarget }) => set(kind, { text: currentTarget.value })}
            />
            <Field
              label={t.changedWhen}
              maxLength={longest.words}
              value={when}
              onInput={({ currentTarget }) => set(kind, { when: currentTarget.value })}
            />
          </div>
        ))}
    </div>
  );
}

function Caller({ answers, onChange, contact }: Part & Pick<Properties, 'contact'>) {
  const t = callWords();
  return (
    <fieldset class="chips field">
      <legend>{t.caller}</legend>
      <div class="three">
        <Field
          label={t.callerName}
          maxLength={longest.line}
          value={answers.callerName}
          onInput={({ currentTarget }) => onChange({ callerName: currentTarget.value })}
        />
        <Field
          label={t.callerPhone}
          type="tel"
          maxLength={longest.phone}
          value={answers.callerPhone}
          onInput={({ currentTarget }) => onChange({ callerPhone: currentTarget.value })}
        />
        <Field
          label={t.callerRelation}
          maxLength={longest.words}
          value={answers.callerRelation}
          onInput={({ currentTarget }) => onChange({ callerRelation: currentTarget.value })}
        />
      </div>
      {contact !== null && contact.name !== null && contact.name !== answers.callerName && (
        <div>
          <Button
            onClick={() => onChange({ callerName: contact.name ?? '', callerPhone: contact.phone ?? '' })}
          >
            {t.callerIsContact}: {contact.name}
          </Button>
        </div>
      )}
    </fieldset>
  );
}
