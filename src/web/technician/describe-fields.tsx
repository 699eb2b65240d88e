import type { Place } from '../../../shared/contract/chain.ts';
import { hdrKinds, threeStates } from '../../../shared/contract/chain-names.ts';
import { longest } from '../../../shared/contract/limits.ts';
import { dynamicRangeNames } from '../../../shared/message/figures.ts';
import { Choices, Field, SelectField } from '../parts/field.tsx';
import { chainWords } from '../place/chain-words.ts';
import { categoryChoices, terms } from '../words/terms.ts';
import { lengthFrom } from './common/length.ts';
import { countFrom, countNames, type FieldName, hdrKindsOf, type Values } from './corrections.ts';
import { describeWords } from './describe-words.ts';
import { ScanButton } from './scan-button.tsx';

/** What of a device or a cable is corrected on site. */
export function DescribeFields({
  place,
  shown,
  set,
}: {
  place: Place;
  shown: Values;
  set: (name: FieldName, value: string) => void;
}) {
  const t = describeWords();
  const { threeState } = chainWords();
  const text = (name: 'serial' | 'firmware') => ({
    label: t.fields[name],
    value: shown[name] ?? '',
    autocomplete: 'off',
    autocapitalize: 'none' as const,
    spellcheck: false,
    maxLength: longest.line,
    onInput: ({ currentTarget }: { currentTarget: HTMLInputElement }) => set(name, currentTarget.value),
  });
  if (place.kind !== 'link') {
    return (
      <>
        <Field {...text('serial')} />
        <ScanButton onFound={(code) => set('serial', code)} />
        <Field {...text('firmware')} hint={t.firmwareHint} />
        <SelectField
          label={t.fields.hdr}
          value={shown.hdr ?? ''}
          onChoose={(value) => set('hdr', value)}
          options={[...new Set([...usualHdr, shown.hdr ?? ''])].map((value) => ({
            value,
            label: hdrWords(value),
          }))}
        />
      </>
    );
  }
  const seated = (name: 'sourceSeated' | 'sinkSeated') => (
    <Choices
      label={t.fields[name]}
      value={shown[name] ?? 'unknown'}
      onChoose={(value) => set(name, value)}
      options={threeStates.map((value) => ({ value, label: threeState[value] }))}
    />
  );
  return (
    <>
      {seated('sourceSeated')}
      {seated('sinkSeated')}
      <Field
        label={t.fields.lengthM}
        inputMode="decimal"
        value={shown.lengthM ?? ''}
        {...(lengthFrom(shown.lengthM ?? '') === null ? { error: t.noLength } : {})}
        onInput={({ currentTarget }) => set('lengthM', currentTarget.value)}
      />
      <SelectField
        label={t.fields.category}
        value={shown.category ?? 'unknown'}
        onChoose={(value) => set('category', value)}
        options={Object.entries(categoryChoices()).map(([value, label]) => ({ value, label }))}
      />
      <Choices
        label={t.fields.certified}
        value={shown.certified ?? 'no'}
        onChoose={(value) => set('certified', value)}
        options={(['yes', 'no'] as const).map((value) => ({ value, label: t.certified[value] }))}
      />
      {countNames
        // A length that is rated says something beside a rate alone.
        .filter((name) => name !== 'ratedLengthM' || (shown.ratedGbps ?? '') !== '')
        .map((name) => (
          <Field
            key={name}
            label={t.fields[name]}
            inputMode={name === 'couplers' || name === 'gaugeAwg' ? 'numeric' : 'decimal'}
            value={shown[name] ?? ''}
            {...(countFrom(name, shown[name] ?? '') === null ? { error: t.noCount[name] } : {})}
            onInput={({ currentTarget }) => set(name, currentTarget.value)}
          />
        ))}
    </>
  );
}

/** What devices usually do, as values of the form. */
const usualHdr: readonly string[] = [
  '',
  'none',
  ...[['hdr10'], ['hdr10', 'hlg'], ['hdr10', 'hlg', 'st2094-10'], ['hdr10', 'hlg', 'st2094-40']].map(
    (kinds) => kinds.join(' '),
  ),
  hdrKinds.join(' '),
];

function hdrWords(value: string): string {
  const t = describeWords();
  const kinds = hdrKindsOf(value);
  if (kinds === undefined) return t.notLookedUp;
  return kinds.length === 0 ? t.noHdr : kinds.map((kind) => dynamicRangeNames[kind]).join(', ');
}

/** A value as it is read beside another. */
export function valueWords(name: FieldName, value = ''): string {
  const t = describeWords();
  const { threeState } = chainWords();
  if (name === 'hdr') return hdrWords(value);
  if (value === '') return t.nothing;
  if (name === 'sourceSeated' || name === 'sinkSeated')
    return (threeState as Record<string, string>)[value] ?? value;
  if (name === 'category') return (terms().category as Record<string, string>)[value] ?? value;
  if (name === 'certified') return (t.certified as Record<string, string>)[value] ?? value;
  return name === 'lengthM' ? `${value} m` : value;
}
