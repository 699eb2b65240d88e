import { placeKey } from '../../../../shared/chain/place.ts';
import type { Chain, Place } from '../../../../shared/contract/chain.ts';
import { linkConstructions } from '../../../../shared/contract/chain-names.ts';
import { longest } from '../../../../shared/contract/limits.ts';
import { Choices, Field, SelectField } from '../../parts/field.tsx';
import { Tick } from '../../parts/tick.tsx';
import { categoryChoices, terms } from '../../words/terms.ts';
import { lengthFrom } from '../common/length.ts';
import { placeWords } from '../common/place-words.ts';
import { placeOf } from '../common/triage-addresses.ts';
import { type InstalledDraft, type PartDraft, partAt, replaceable } from './installed.ts';
import { installedWords } from './installed-words.ts';

type Parts = InstalledDraft['parts'];

/** What a repair put into the chain in place of what was there. */
export function InstalledParts({
  chain,
  likely,
  today,
  parts,
  onChange,
}: {
  chain: Chain;
  /** What the remedy is about; it is offered first. */
  likely: Place | null;
  /** By the calendar of the place. */
  today: string;
  parts: Parts;
  onChange: (parts: Parts) => void;
}) {
  const t = installedWords();
  const first = likely === null ? [] : [placeKey(likely)];
  const keys = [...new Set([...first, ...Object.keys(parts)])];
  const others = replaceable(chain).filter(([key]) => !keys.includes(key));
  const nameOf = (key: string): string => {
    const place = placeOf(key);
    return place === null ? key : placeWords(chain, place);
  };
  const put = (key: string, isIn: boolean) => {
    const { [key]: _, ...rest } = parts;
    const place = placeOf(key);
    onChange(isIn && place !== null ? { ...rest, [key]: partAt(chain, place, today) } : rest);
  };
  return (
    <>
      <fieldset class="choices field">
        <legend>{t.another}</legend>
        <span class="soft">{t.anotherHint}</span>
        {keys.map((key) => (
          <Tick
            key={key}
            label={nameOf(key)}
            isOn={parts[key] !== undefined}
            onChange={(isOn) => put(key, isOn)}
          />
        ))}
      </fieldset>
      {Object.entries(parts).map(([key, part]) => (
        <fieldset class="choices field part-now" key={key}>
          <legend>{keys.length > 1 ? t.now(nameOf(key)) : t.nowThere}</legend>
          <PartFields
            isCable={placeOf(key)?.kind === 'link'}
            part={part}
            set={(more) => onChange({ ...parts, [key]: { ...part, ...more } })}
          />
        </fieldset>
      ))}
      <SelectField
        label={t.more}
        optional
        value=""
        options={[
          { value: '', label: t.choose },
          ...others.map(([key, place]) => ({ value: key, label: placeWords(chain, place) })),
        ]}
        onChoose={(key) => put(key, true)}
      />
    </>
  );
}

function PartFields({
  isCable,
  part,
  set,
}: {
  isCable: boolean;
  part: PartDraft;
  set: (part: Partial<PartDraft>) => void;
}) {
  const t = installedWords();
  if (!isCable)
    return (
      <>
        {(['model', 'serial', 'firmware'] as const).map((name) => (
          <Field
            key={name}
            label={t[name]}
            optional
            value={part[name]}
            maxLength={longest.line}
            autocomplete="off"
            onInput={({ currentTarget }) => set({ [name]: currentTarget.value })}
          />
        ))}
      </>
    );
  return (
    <>
      <Choices
        label={t.construction}
        value={part.construction}
        onChoose={(construction) => set({ construction })}
        options={linkConstructions.map((value) => ({ value, label: terms().construction[value] }))}
      />
      <div class="length-and-day">
        <Field
          label={t.length}
          inputMode="decimal"
          value={part.lengthM}
          error={lengthFrom(part.lengthM) === null ? t.noLength : undefined}
          onInput={({ currentTarget }) => set({ lengthM: currentTarget.value })}
        />
        <Field
          label={t.installedOn}
          type="date"
          value={part.installedOn}
          onInput={({ currentTarget }) => set({ installedOn: currentTarget.value })}
        />
      </div>
      <SelectField
        label={t.category}
        value={part.category}
        options={Object.entries(categoryChoices()).map(([value, label]) => ({
          value: value as PartDraft['category'],
          label,
        }))}
        onChoose={(category) => set({ category })}
      />
      {part.category !== 'unknown' && (
        <Tick label={t.certified} isOn={part.certified} onChange={(certified) => set({ certified })} />
      )}
      <Tick label={t.fittedRight} isOn={part.fittedRight} onChange={(fittedRight) => set({ fittedRight })} />
    </>
  );
}
