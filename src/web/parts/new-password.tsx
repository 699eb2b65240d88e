import { shortest } from '../../../shared/contract/limits.ts';
import { Field } from './field.tsx';

type Properties = { label: string; hint: string; value: string; onType: (password: string) => void };

/** Where a password is made up: as long as the contract wants it, and kept by a password manager as a new one. */
export function NewPassword({ label, hint, value, onType }: Properties) {
  return (
    <Field
      label={label}
      hint={hint}
      type="password"
      required
      minLength={shortest.password}
      autocomplete="new-password"
      value={value}
      onInput={({ currentTarget }) => onType(currentTarget.value)}
    />
  );
}
