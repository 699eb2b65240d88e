import type { ComponentChildren } from 'preact';
import type { Option } from './field.tsx';

/** Yes or no, as a box to tick. */
export function Tick({
  label,
  isOn,
  onChange,
}: {
  label: string;
  isOn: boolean;
  onChange: (isOn: boolean) => void;
}) {
  return (
    <label class="choice">
      <input type="checkbox" checked={isOn} onChange={() => onChange(!isOn)} />
      {label}
    </label>
  );
}

/** Any of a few, to be ticked: one below the other, or as short chips in a row. */
export function Ticks<Value extends string>({
  label,
  hint,
  options,
  values,
  onChange,
  inRow = false,
}: {
  label: ComponentChildren;
  hint?: string;
  options: readonly Option<Value>[];
  values: readonly Value[];
  onChange: (values: Value[]) => void;
  inRow?: boolean;
}) {
  const ticks = options.map(({ value, label: name }) => (
    <Tick
      key={value}
      label={name}
      isOn={values.includes(value)}
      onChange={(isOn) => onChange(isOn ? [...values, value] : values.filter((one) => one !== value))}
    />
  ));
  return (
    <fieldset class={`${inRow ? 'chips' : 'choices'} field`}>
      <legend>{label}</legend>
      {hint !== undefined && <span class="soft">{hint}</span>}
      {inRow ? <div class="row">{ticks}</div> : ticks}
    </fieldset>
  );
}
