import type { ComponentChildren, JSX } from 'preact';
import { useId } from 'preact/hooks';
import { frameWords } from '../words/frame.ts';
import { useIntoSight } from './into-sight.ts';

type Common = {
  label: string;
  hint?: string | undefined;
  /** What is wrong with what is written here. */
  error?: string | undefined;
  /** Said beside the label, since most fields may be left empty. */
  optional?: boolean;
};

function Around({
  id,
  label,
  hint,
  error,
  optional = false,
  children,
}: Common & { id: string; children: ComponentChildren }) {
  const part = useIntoSight<HTMLDivElement>(error !== undefined);
  return (
    <div class="field" ref={part}>
      <label for={id}>
        {label}
        {optional && <span class="soft"> ({frameWords().optional})</span>}
      </label>
      {hint !== undefined && (
        <span class="soft" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {children}
      {error !== undefined && (
        <span class="field-error" id={`${id}-error`}>
          ✕ {error}
        </span>
      )}
    </div>
  );
}

const described = (id: string, { hint, error }: Common) => ({
  id,
  class: 'field-control',
  'aria-invalid': error !== undefined,
  'aria-describedby': [hint !== undefined && `${id}-hint`, error !== undefined && `${id}-error`]
    .filter((one) => one !== false)
    .join(' '),
});

type InputProps = Common & Omit<JSX.InputHTMLAttributes<HTMLInputElement>, 'label' | 'size'>;
export function Field({ label, hint, error, optional, ...rest }: InputProps) {
  const id = useId();
  const about = { label, hint, error, ...(optional === undefined ? {} : { optional }) };
  return (
    <Around id={id} {...about}>
      <input {...rest} {...described(id, about)} />
    </Around>
  );
}

type TextProps = Common & Omit<JSX.TextareaHTMLAttributes<HTMLTextAreaElement>, 'label'>;
export function TextField({ label, hint, error, optional, ...rest }: TextProps) {
  const id = useId();
  const about = { label, hint, error, ...(optional === undefined ? {} : { optional }) };
  return (
    <Around id={id} {...about}>
      <textarea {...rest} {...described(id, about)} />
    </Around>
  );
}

export type Option<Value extends string> = { value: Value; label: string };
type SelectProps<Value extends string> = Common & {
  options: readonly Option<Value>[];
  value: Value;
  onChoose: (value: Value) => void;
};
export function SelectField<Value extends string>({
  label,
  hint,
  error,
  optional,
  options,
  value,
  onChoose,
}: SelectProps<Value>) {
  const id = useId();
  const about = { label, hint, error, ...(optional === undefined ? {} : { optional }) };
  return (
    <Around id={id} {...about}>
      <select
        {...described(id, about)}
        value={value}
        onChange={({ currentTarget }) => onChoose(currentTarget.value as Value)}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </Around>
  );
}

/** One of a few, all of them seen at once. */
export function Choices<Value extends string>({
  label,
  options,
  value,
  onChoose,
}: {
  label: string;
  options: readonly Option<Value>[];
  value: Value | null;
  onChoose: (value: Value) => void;
}) {
  const name = useId();
  return (
    <fieldset class="choices field">
      <legend>{label}</legend>
      {options.map((option) => (
        <label class="choice" key={option.value}>
          <input
            type="radio"
            name={name}
            value={option.value}
            checked={option.value === value}
            onChange={() => onChoose(option.value)}
          />
          {option.label}
        </label>
      ))}
    </fieldset>
  );
}
