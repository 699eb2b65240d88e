import { openChange, runningWatch } from '../../../../state-machines/triage/record.ts';
import { CaptureButton } from '../common/capture.tsx';
import { captureWords } from '../common/capture-words.ts';
import type { Work } from './work.ts';

/**
 * The camera beside every question, and how many pictures it has taken by now; what runs is what they show. A closed
 * ticket takes none.
 */
export function QuestionPhoto({ work: { ticket } }: { work: Work }) {
  if (ticket.state === 'closed') return null;
  const changeId = openChange(ticket.triage)?.id ?? null;
  const watchId = runningWatch(ticket.triage)?.id ?? null;
  return (
    <div class="question-photo not-printed">
      <CaptureButton key={`${changeId} ${watchId}`} ticket={ticket} tie={{ changeId, watchId }}>
        {captureWords().photoHere}
      </CaptureButton>
    </div>
  );
}
