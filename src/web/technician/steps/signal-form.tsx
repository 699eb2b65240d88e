import { encodings } from '../../../../shared/contract/chain-names.ts';
import type { Conversion, SignalField, SignalSeen } from '../../../../shared/contract/look.ts';
import { conversions, hdrKinds, negotiatedProtections } from '../../../../shared/contract/look-names.ts';
import { SelectField } from '../../parts/field.tsx';
import { Ticks } from '../../parts/tick.tsx';
import { terms } from '../../words/terms.ts';
import { lookWords } from './look-words.ts';

type Signal = Extract<SignalSeen, { kind: 'signal' }>;
export const nothingTold: Signal = {
  kind: 'signal',
  resolution: null,
  refreshHz: null,
  bitsPerComponent: null,
  encoding: null,
  hdr: null,
  protection: null,
  linkGbps: null,
};

/** What a page can say of a field, as text: heights that pages name, usual rates, and what standards list. */
const choices: Record<SignalField, readonly string[]> = {
  resolution: ['1280×720', '1920×1080', '3840×2160', '4096×2160', '7680×4320'],
  refreshHz: ['24', '25', '30', '50', '60', '100', '120'],
  bitsPerComponent: ['8', '10', '12', '16'],
  encoding: encodings,
  hdr: hdrKinds,
  protection: negotiatedProtections,
  linkGbps: ['9', '18', '24', '32', '40', '48'],
};

const encodingNames: Record<string, string> = {
  rgb: 'RGB',
  ycbcr444: 'YCbCr 4:4:4',
  ycbcr422: 'YCbCr 4:2:2',
  ycbcr420: 'YCbCr 4:2:0',
};
function nameOf(field: SignalField, value: string): string {
  if (field === 'hdr') return terms().hdrKind[value as (typeof hdrKinds)[number]];
  if (field === 'encoding') return encodingNames[value] ?? value;
  return value;
}

const capitalised = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);

function readAs(field: SignalField, text: string): Partial<Signal> {
  if (text === '') return { [field]: null };
  if (field === 'resolution') {
    const [widthPx = 0, heightPx = 0] = text.split('×').map(Number);
    return { resolution: { widthPx, heightPx } };
  }
  const isNumber = field === 'refreshHz' || field === 'bitsPerComponent' || field === 'linkGbps';
  return { [field]: isNumber ? Number(text) : text };
}
function textOf(field: SignalField, signal: Signal): string {
  const value = signal[field];
  if (value === null) return '';
  return typeof value === 'object' ? `${value.widthPx}×${value.heightPx}` : String(value);
}

/** One end of a device: no signal, or what its page says in the fields that bear on the fault. */
export function SignalFields({
  title,
  fields,
  seen,
  onChange,
}: {
  title: string;
  fields: readonly SignalField[];
  seen: SignalSeen | null;
  onChange: (seen: SignalSeen | null) => void;
}) {
  const t = lookWords();
  return (
    <fieldset class="stack">
      <legend>{title}</legend>
      <SelectField
        label={t.atAll}
        options={[
          { value: 'signal', label: t.signal },
          { value: 'noSignal', label: t.noSignal },
          { value: 'notTold', label: t.notTold },
        ]}
        value={seen?.kind ?? 'notTold'}
        onChoose={(kind) =>
          onChange(kind === 'notTold' ? null : kind === 'noSignal' ? { kind: 'noSignal' } : nothingTold)
        }
      />
      {seen?.kind === 'signal' &&
        fields.map((field) => (
          <SelectField
            key={field}
            label={capitalised(terms().signalField[field])}
            options={[
              { value: '', label: t.notTold },
              ...choices[field].map((value) => ({ value, label: nameOf(field, value) })),
            ]}
            value={textOf(field, seen)}
            onChoose={(text) => onChange({ ...seen, ...readAs(field, text) })}
          />
        ))}
    </fieldset>
  );
}

/** What a device is set to do to the picture: no loss, since it is meant. */
export function Intended({
  chosen,
  onChange,
}: {
  chosen: readonly Conversion[];
  onChange: (chosen: Conversion[]) => void;
}) {
  return (
    <Ticks
      label={lookWords().meant}
      options={conversions.map((value) => ({ value, label: terms().conversion[value] }))}
      values={chosen}
      onChange={onChange}
    />
  );
}
