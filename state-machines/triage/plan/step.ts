import type { TriageRecord } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/message.ts';
import { substituteStep, verifyStep } from './change-steps.ts';
import { baselineStep, reproduceStep, sideWatchStep } from './early-steps.ts';
import type { Known } from './known.ts';
import { type Step, step } from './step-form.ts';

/** The step that a state asks for; null where the next test is what is asked for. @param now UTC, ISO 8601 */
export function stepOf(record: TriageRecord, state: string, known: Known, now: string): Step | null {
  const [first] = state.split('.');
  switch (first) {
    case 'baseline':
      return baselineStep(record, known);
    case 'reproduce':
      return reproduceStep(record, now);
    case 'locateSide':
      return sideWatchStep(record, known.chain);
    case 'substitute':
      return substituteStep(record, state, known.chain, now);
    case 'culpritFound':
      return step(message('culpritNamed'), ['chooseRemedy']);
    case 'remedy':
      return step(message('doTheRepair'), ['finishRemedy']);
    case 'verify':
      return verifyStep(record);
    case 'escalated':
      return escalatedStep(record, state);
    default:
      return step(message('ticketClosed'), []);
  }
}

function escalatedStep({ requests }: TriageRecord, state: string): Step {
  const asked = requests.filter(({ answer }) => answer === null);
  if (state === 'escalated.moreRequested' && asked.length > 0) {
    const questions = asked.map(({ text }) => text);
    return step(message('secondLineAsks', { questions }), ['answerRequest', 'resubmit']);
  }
  return state === 'escalated.moreRequested'
    ? step(message('everyQuestionAnswered'), ['resubmit'])
    : step(message('secondLineHasCase'), []);
}
