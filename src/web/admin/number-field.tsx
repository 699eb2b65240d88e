import { Field } from '../parts/field.tsx';

/** A number with its limits; the browser says so where it is outside. */
export function NumberField({
  label,
  hint,
  error,
  min,
  max,
  step,
  value,
  onChange,
}: {
  label: string;
  hint?: string;
  error: string | undefined;
  min: number;
  max: number;
  step?: number;
  value: number;
  onChange: (value: number) => void;
}) {
  return (
    <Field
      label={label}
      hint={hint}
      error={error}
      type="number"
      inputMode="decimal"
      required
      min={min}
      max={max}
      step={step ?? 'any'}
      value={value}
      onInput={({ currentTarget }) => {
        if (currentTarget.value !== '') onChange(currentTarget.valueAsNumber);
      }}
    />
  );
}
