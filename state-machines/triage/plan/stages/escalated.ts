import { namedPlace } from '../../../../shared/chain/named-place.ts';
import { samePlace } from '../../../../shared/chain/place.ts';
import type { Offer } from '../../../../shared/contract/plan.ts';
import type { SupportRequest, TriageRecord } from '../../../../shared/contract/triage.ts';
import { type Message, message } from '../../../../shared/message/message.ts';
import { completeness } from '../../completeness.ts';
import { currentEscalation, openChange, runningWatch, standingSides } from '../../record.ts';
import type { Asked } from '../asked.ts';
import { offering, type Stage, stage } from '../offer.ts';
import { declareChange } from '../steps.ts';
import { escalateOffer } from './hand-over.ts';

type Directed = NonNullable<SupportRequest['change']>;

/** Second line has the case: what they ask, the way to send it again, or to take it back. */
export function escalatedStage({ record, state }: Asked): Stage {
  const asked = record.requests.filter(({ answer }) => answer === null);
  const others = [resubmitOffer(record), offering({ type: 'recall' }), offering({ type: 'note' })];
  if (state !== 'escalated.moreRequested')
    return stage(message('secondLineHasCase'), [...answerOffers(record), ...others.toReversed()]);
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

const isDoneSince = ({ changes }: TriageRecord, { kind, target }: Directed, at: string): boolean =>
  changes.some(
    (change) =>
      change.kind === kind &&
      samePlace(change.target, target) &&
      change.finishedAt !== null &&
      change.declaredAt >= at,
  );

/** What second line said when it gave the case back: their step comes first, and nothing of theirs is out of sight. */
export function withSecondLine(asked: Asked, own: Stage): Stage {
  const { record } = asked;
  const given = currentEscalation(record)?.outcome ?? null;
  const open = record.requests.filter(({ answer }) => answer === null);
  const answers = answerOffers(record);
  if (open.length > 0) {
    const said = open.map(({ text }) => message('secondLineDirects', { step: text }));
    const first = isFree(asked) ? open.flatMap((request) => directedOffers(asked, request)) : [];
    return withWords(own, said, [...first, ...own.offers, ...answers]);
  }
  if (given?.kind === 'handedBack' && !isWorkedOnSince(record, given.at))
    return withWords(own, [message('secondLineHandedBack', { reason: given.text })], own.offers);
  return given?.kind === 'stepDirected' && isAllAnswered(asked) ? sentAgain(asked, own) : own;
}

/** Every step that second line directed is answered, nothing has been done since, and none of them showed the culprit. */
function isAllAnswered(asked: Asked): boolean {
  const last = asked.record.requests.findLast(({ kind }) => kind === 'step')?.answer?.at;
  return last !== undefined && !asked.isShown && isFree(asked) && !isWorkedOnSince(asked.record, last);
}

/** They wait for the case. */
function sentAgain({ record }: Asked, own: Stage): Stage {
  const question = currentEscalation(record)?.question;
  const again = escalateOffer(record, typeof question === 'string' ? question : undefined);
  return withWords(own, [message('everyQuestionAnswered')], [again, ...own.offers]);
}

const withWords = (own: Stage, said: Message[], offers: readonly Offer[]): Stage => ({
  ...own,
  sentence: message('sentences', { sentences: [...said, own.sentence] }),
  offers,
});

/** Neither a watch nor a change has to be brought to its end first. */
const isFree = ({ record, state }: Asked): boolean =>
  openChange(record) === null && runningWatch(record) === null && state !== 'baseline';

const isWorkedOnSince = ({ watches, changes }: TriageRecord, at: string): boolean =>
  watches.some(({ startedAt }) => startedAt >= at) || changes.some(({ declaredAt }) => declaredAt >= at);

/** The change that second line asks for, where one can be declared; else, and once it was made, the answer to them. */
function directedOffers({ record, state, known: { chain } }: Asked, request: SupportRequest): Offer[] {
  const answer = answerOffers(record).filter(({ steps: [step] }) => step?.requestId === request.id);
  const { change } = request;
  if (change === null || isDoneSince(record, change, request.at)) return answer;
  const declare = declareChange(change.kind, change.target);
  const about = {
    text: message('changeOrder', { change: change.kind, place: namedPlace(chain, change.target) }),
    why: message('secondLineDirects', { step: request.text }),
  };
  if (state === 'substitute.ready') return [offering(declare, about), ...answer];
  return state === 'locateSide' && standingSides(record).length > 0
    ? [offering([{ type: 'beginSubstitution' }, declare], about), ...answer]
    : [];
}

/** The case once more, with a reason for what is missing and was not waived before. */
function resubmitOffer(record: TriageRecord): Offer {
  const waived = new Set(currentEscalation(record)?.waivers.map(({ item }) => item));
  const missing = [...new Set(completeness(record).map(({ item }) => item))];
  return offering({
    type: 'resubmit',
    waivers: missing.filter((item) => !waived.has(item)).map((item) => ({ item })),
  });
}
