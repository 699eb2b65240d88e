import type { TriageRecord } from '../../../shared/contract/triage.ts';
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
      return step(
        'The culprit is named. Settle on a repair; or on a workaround that the client accepts in so many words.',
        ['chooseRemedy'],
      );
    case 'remedy':
      return step('Do the repair, describe the chain as you leave it, and watch whether it holds.', [
        'finishRemedy',
      ]);
    case 'verify':
      return verifyStep(record);
    case 'escalated':
      return escalatedStep(record, state);
    default:
      return step('The ticket is closed.', []);
  }
}

function escalatedStep({ requests }: TriageRecord, state: string): Step {
  const asked = requests.filter(({ answer }) => answer === null);
  if (state === 'escalated.moreRequested' && asked.length > 0) {
    return step(`Second line asks: ${asked.map(({ text }) => text).join('; ')}`, [
      'answerRequest',
      'resubmit',
    ]);
  }
  return state === 'escalated.moreRequested'
    ? step('Every question of second line has its answer: send the case again.', ['resubmit'])
    : step('Second line has the case. Nothing has to be done here meanwhile; leave the chain as it is.', []);
}
