import type { Offer } from '../../../../shared/contract/plan.ts';
import type { TriageRecord } from '../../../../shared/contract/triage.ts';
import { message } from '../../../../shared/message/message.ts';
import { completeness } from '../../completeness.ts';
import { currentEscalation } from '../../record.ts';
import type { Asked } from '../asked.ts';
import { offering, type Stage, stage } from '../offer.ts';

/** Second line has the case: what they ask, the way to send it again, or to take it back. */
export function escalatedStage({ record, state }: Asked): Stage {
  const asked = record.requests.filter(({ answer }) => answer === null);
  const others = [resubmitOffer(record), offering({ type: 'recall' })];
  if (state !== 'escalated.moreRequested') return stage(message('secondLineHasCase'), others.toReversed());
  if (asked.length === 0) return stage(message('everyQuestionAnswered'), others);
  const questions = asked.map(({ text }) => text);
  return stage(message('secondLineAsks', { questions }), [...answerOffers(record), ...others]);
}

/** An answer to each thing that second line still waits for. */
export const answerOffers = ({ requests }: TriageRecord): Offer[] =>
  requests
    .filter(({ answer }) => answer === null)
    .map(({ id, text }) =>
      offering(
        { type: 'answerRequest', requestId: id, evidenceIds: [] },
        { text: message('answerSecondLine', { question: text }) },
      ),
    );

/** The case once more, with a reason for what is missing and was not waived before. */
function resubmitOffer(record: TriageRecord): Offer {
  const waived = new Set(currentEscalation(record)?.waivers.map(({ item }) => item));
  const missing = [...new Set(completeness(record).map(({ item }) => item))];
  return offering({
    type: 'resubmit',
    waivers: missing.filter((item) => !waived.has(item)).map((item) => ({ item })),
  });
}
