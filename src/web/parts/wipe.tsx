import { useState } from 'preact/hooks';
import { frameWords } from '../words/frame.ts';
import { Button } from './button.tsx';

/** Takes away all that was typed into a form; until the screen is left, the same button brings it back. */
export function Wipe<Draft extends object>({
  label,
  draft,
  empty,
  onWipe,
  onUndo,
}: {
  label?: string;
  draft: Draft | null;
  empty: Draft;
  onWipe: () => Promise<void>;
  onUndo: (draft: Draft) => void;
}) {
  const t = frameWords();
  const [wiped, setWiped] = useState<Draft | null>(null);
  const isEmpty = draft === null || JSON.stringify(draft) === JSON.stringify(empty);
  if (!isEmpty)
    return (
      <Button
        onClick={() => {
          setWiped(draft);
          void onWipe();
        }}
      >
        {label ?? t.wipe}
      </Button>
    );
  if (wiped === null) return null;
  return (
    <span class="row" role="status">
      <span>{t.wiped}</span>
      <Button
        onClick={() => {
          onUndo(wiped);
          setWiped(null);
        }}
      >
        {t.bringBack}
      </Button>
    </span>
  );
}
