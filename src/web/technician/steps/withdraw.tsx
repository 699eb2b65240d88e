import type { Occurrence } from '../../../../shared/contract/triage.ts';
import { ReasonDialog } from './reason.tsx';
import { watchWords } from './watch-words.ts';
import type { Work } from './work.ts';

/** Takes an occurrence back that was none. It stays in the record, with the reason. */
export function WithdrawDialog({
  work,
  occurrence,
  onDone,
}: {
  work: Work;
  occurrence: Occurrence;
  onDone: () => void;
}) {
  const t = watchWords();
  return (
    <ReasonDialog
      title={t.undoTitle}
      lead={t.undoLead}
      suggestion={t.undoReason}
      action={t.undoDo}
      onCancel={onDone}
      onReason={async (reason) => {
        if (await work.send({ type: 'withdrawOccurrence', occurrenceId: occurrence.id, reason })) onDone();
      }}
      refusal={work.refusal}
    />
  );
}
