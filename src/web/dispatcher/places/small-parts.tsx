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
