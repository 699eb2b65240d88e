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
