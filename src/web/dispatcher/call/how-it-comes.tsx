import { findDevice, sourcesOf } from '../../../../shared/chain/graph.ts';
import type { Chain } from '../../../../shared/contract/chain.ts';
import { longest } from '../../../../shared/contract/limits.ts';
import { Field } from '../../parts/field.tsx';
import { terms } from '../../words/terms.ts';
import { Chips } from '../common/chips.tsx';
import { type Answers, onlyWithChoices, patternChoices, triggerChoices } from './answers.ts';
import { optionsOf } from './options.ts';
import { patternWords } from './pattern-words.ts';

type Properties = {
  chain: Chain | null;
  answers: Answers;
  onChange: (part: Partial<Answers>) => void;
};

/** How the fault comes: one tap, and a second one where the first answer asks for more. */
export function HowItComes({ answers, onChange }: Omit<Properties, 'chain'>) {
  const t = patternWords();
  return (
    <>
      <Chips
        label={t.how}
        options={optionsOf(patternChoices, t.patterns)}
        value={answers.pattern}
        onChoose={(pattern) => onChange({ pattern })}
      />
      {answers.pattern === 'trigger' && (
        <Chips
          label={t.when}
          options={optionsOf(triggerChoices, terms().patternTrigger)}
          value={answers.trigger}
          onChoose={(trigger) => onChange({ trigger })}
        />
      )}
      {answers.pattern === 'warm' && (
        <Field
          label={t.warmAfter}
          inputMode="decimal"
          pattern="[0-9]*[.,]?[0-9]*"
          value={answers.warmAfterMin}
          onInput={({ currentTarget }) => onChange({ warmAfterMin: currentTarget.value })}
        />
      )}
    </>
  );
}

/** Whether it shows with one source, title or application only, and which. */
export function OnlyWithOne({ chain, answers, onChange }: Properties) {
  const t = patternWords();
  const sources = chain === null ? [] : sourcesOf(chain).map(({ id, name }) => ({ value: id, label: name }));
  return (
    <Chips
      label={t.onlyWith}
      options={optionsOf(onlyWithChoices, t.onlyWithOne)}
      value={answers.onlyWith}
      onChoose={(onlyWith) => onChange({ onlyWith, onlyWithWhat: '', onlyWithDevice: null })}
    >
      {answers.onlyWith === 'source' && sources.length > 0 && chain !== null && (
        <Chips
          label={t.which}
          options={sources}
          value={answers.onlyWithDevice}
          onChoose={(id) => onChange({ onlyWithDevice: id, onlyWithWhat: findDevice(chain, id)?.name ?? '' })}
        />
      )}
      {(answers.onlyWith === 'title' || answers.onlyWith === 'application') && (
        <Field
          label={t.which}
          maxLength={longest.line}
          value={answers.onlyWithWhat}
          onInput={({ currentTarget }) => onChange({ onlyWithWhat: currentTarget.value })}
        />
      )}
    </Chips>
  );
}
