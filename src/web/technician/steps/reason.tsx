import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { isReason, longest } from '../../../../shared/contract/limits.ts';
import type { Problem } from '../../../../shared/contract/problem.ts';
import { Button } from '../../parts/button.tsx';
import { Dialog } from '../../parts/dialog.tsx';
import { TextField } from '../../parts/field.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { triageWords } from './words.ts';

/** A step that says why: a reason is asked for, and mostly there already. What is typed is kept until it is sent. */
export function ReasonDialog({
  about,
  title,
  lead,
  suggestion = '',
  action,
  refusal,
  onReason,
  onDone,
  children,
}: {
  /** What the reason is given for: its words are kept under it. */
  about: string;
  title: string;
  lead?: string;
  suggestion?: string;
  action: string;
  refusal: Problem | null;
  /** @returns whether the step was taken */
  onReason: (reason: string) => Promise<boolean>;
  onDone: () => void;
  children?: ComponentChildren;
}) {
  const t = triageWords();
  const [{ reason }, write, forget] = useDraftForm(`reason ${about}`, { reason: suggestion });
  const [isTooShort, setTooShort] = useState(false);
  const send = async () => {
    setTooShort(!isReason(reason));
    if (!isReason(reason) || !(await onReason(reason.trim()))) return;
    await forget();
    onDone();
  };
  return (
    <Dialog title={title} onClose={onDone}>
      {lead !== undefined && <p>{lead}</p>}
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        {children}
        <TextField
          label={t.reason}
          value={reason}
          error={isTooShort ? t.tooShort : undefined}
          maxLength={longest.reason}
          onInput={({ currentTarget }) => write({ reason: currentTarget.value })}
        />
        {refusal !== null && <Refusal problem={refusal} />}
        <Button type="submit" kind="primary" large>
          {action}
        </Button>
      </form>
    </Dialog>
  );
}
