import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import type { Option } from '../../parts/field.tsx';

/** One of a few as short chips in a row. Choosing what is chosen already takes it back where `onClear` is given. */
export function Chips<Value extends string>({
  label,
  options,
  value,
  onChoose,
  onClear,
  children,
}: {
  label: ComponentChildren;
  options: readonly Option<Value>[];
  value: Value | null;
  onChoose: (value: Value) => void;
  onClear?: () => void;
  children?: ComponentChildren;
}) {
  const name = useId();
  return (
    <fieldset class="chips field">
      <legend>{label}</legend>
      <div class="row">
        {options.map((option) => (
          <label class="choice" key={option.value}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === value}
              onChange={() => onChoose(option.value)}
              onClick={() => option.value === value && onClear?.()}
            />
            {option.label}
          </label>
        ))}
      </div>
      {children}
    </fieldset>
  );
}

/** Any of a few, to be ticked. */
export function Ticks<Value extends string>({
  label,
  hint,
  options,
  values,
  onChange,
}: {
  label: ComponentChildren;
  hint?: string;
  options: readonly Option<Value>[];
  values: readonly Value[];
  onChange: (values: Value[]) => void;
}) {
  return (
    <fieldset class="chips field">
      <legend>{label}</legend>
      {hint !== undefined && <span class="soft">{hint}</span>}
      <div class="row">
        {options.map((option) => {
          const isTicked = values.includes(option.value);
          return (
            <label class="choice" key={option.value}>
              <input
                type="checkbox"
                checked={isTicked}
                onChange={() =>
                  onChange(
                    isTicked ? values.filter((one) => one !== option.value) : [...values, option.value],
                  )
                }
              />
              {option.label}
            </label>
          );
        })}
      </div>
    </fieldset>
  );
}
