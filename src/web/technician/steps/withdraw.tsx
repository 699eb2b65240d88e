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
      about={`withdraw ${occurrence.id}`}
      title={t.undoTitle}
      lead={t.undoLead}
      suggestion={t.undoReason}
      action={t.undoDo}
      onDone={onDone}
      onReason={(reason) => work.send({ type: 'withdrawOccurrence', occurrenceId: occurrence.id, reason })}
      refusal={work.refusal}
    />
  );
}
