import { useState } from 'preact/hooks';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import { isReason, longest } from '../../../shared/contract/limits.ts';
import { isConnected } from '../api/connection.ts';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { Field } from '../parts/field.tsx';
import { Notice } from '../parts/notice.tsx';
import { SendingResult, useSending } from '../parts/sending.tsx';
import { refresh } from '../store/documents.ts';
import { useDraftForm } from '../store/use-draft.ts';
import { frameWords } from '../words/frame.ts';
import { evidenceWords } from './evidence-words.ts';

/** Takes an item out of what counts, with the reason; it stays readable. Needs a connection. */
export function WithdrawEvidence({
  ticketId,
  evidenceId,
  onDone,
}: {
  ticketId: string;
  evidenceId: string;
  onDone: () => void;
}) {
  const t = evidenceWords();
  const [{ reason }, write, forget] = useDraftForm(`withdraw ${evidenceId}`, { reason: '' });
  const [isTooShort, setTooShort] = useState(false);
  const sending = useSending();
  const withdraw = async () => {
    setTooShort(!isReason(reason));
    if (!isReason(reason)) return;
    const done = await sending.send('POST', addressOf(addresses.withdrawEvidence, { id: evidenceId }), {
      body: { reason: reason.trim() },
    });
    if (done === null) return;
    await forget();
    await Promise.all([refresh(paths.evidence(ticketId)), refresh(paths.ticket(ticketId))]);
    onDone();
  };
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void withdraw();
      }}
    >
      {!isConnected.value && <Notice tone="caution">{t.withdrawNeedsConnection}</Notice>}
      <Field
        label={t.reason}
        value={reason}
        maxLength={longest.reason}
        {...(isTooShort ? { error: t.reasonTooShort } : {})}
        onInput={({ currentTarget }) => write({ reason: currentTarget.value })}
      />
      <div class="row">
        <Button type="submit" kind="danger" disabled={sending.isBusy}>
          {t.withdraw}
        </Button>
        <Button onClick={onDone}>{frameWords().cancel}</Button>
      </div>
      <SendingResult sending={sending} />
    </form>
  );
}
