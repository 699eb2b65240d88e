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

/** What the API found wrong here. */
export function Faults({ texts }: { texts: readonly string[] }) {
  if (texts.length === 0) return null;
  return (
    <ul class="field-error faults">
      {texts.map((text) => (
        <li key={text}>✕ {text}</li>
      ))}
    </ul>
  );
}
