import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { isReason, longest } from '../../../../shared/contract/limits.ts';
import type { Problem } from '../../../../shared/contract/problem.ts';
import { Button } from '../../parts/button.tsx';
import { Dialog } from '../../parts/dialog.tsx';
import { TextField } from '../../parts/field.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { triageWords } from './words.ts';

/** A step that says why: a reason is asked for, and mostly there already. */
export function ReasonDialog({
  title,
  lead,
  suggestion = '',
  action,
  refusal,
  onReason,
  onCancel,
  children,
}: {
  title: string;
  lead?: string;
  suggestion?: string;
  action: string;
  refusal: Problem | null;
  onReason: (reason: string) => Promise<void>;
  onCancel: () => void;
  children?: ComponentChildren;
}) {
  const t = triageWords();
  const [reason, setReason] = useState(suggestion);
  const [isTooShort, setTooShort] = useState(false);
  return (
    <Dialog title={title} onClose={onCancel}>
      {lead !== undefined && <p>{lead}</p>}
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault();
          setTooShort(!isReason(reason));
          if (isReason(reason)) void onReason(reason.trim());
        }}
      >
        {children}
        <TextField
          label={t.reason}
          value={reason}
          error={isTooShort ? t.tooShort : undefined}
          maxLength={longest.reason}
          onInput={({ currentTarget }) => setReason(currentTarget.value)}
        />
        {refusal !== null && <Refusal problem={refusal} />}
        <Button type="submit" kind="primary" large>
          {action}
        </Button>
      </form>
    </Dialog>
  );
}
