import type { Escalation, MissingItem, TriageRecord, Waiver } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/message.ts';
import { completeness } from '../completeness.ts';
import type { EventOf } from '../events.ts';
import { currentEscalation, filed, replaceById, standingEvidence } from '../record.ts';
import { because, type Cause } from './refusal.ts';
import { firstOf, notClosed, noWatchRuns, rule } from './rule.ts';

/** What is missing and not waived. */
const unwaived = (record: TriageRecord, waivers: readonly Waiver[]): MissingItem[] =>
  completeness(record).filter(({ item }) => !waivers.some((waiver) => waiver.item === item));

function refuseIncomplete(record: TriageRecord, waivers: readonly Waiver[]): Cause | null {
  const missing = unwaived(record, waivers);
  if (missing.length === 0) return null;
  const { length: count } = missing;
  const said = count === 1 ? message('oneThingMissing') : message('thingsMissing', { count });
  return because('case-incomplete', said, { missing });
}

type HandedOver = Pick<Escalation, 'version' | 'question' | 'waivers' | 'waived' | 'takenBy'>;

/** The next version of the case, and what of it is missing and waived. */
function handingOver(
  record: TriageRecord,
  facts: Pick<Escalation, 'question' | 'waivers' | 'takenBy'>,
): HandedOver {
  const waived = completeness(record).map(({ item, place }) => ({ item, place }));
  return { version: record.escalations.length + 1, ...facts, waived };
}

const withVersion = (record: TriageRecord, event: EventOf<'escalate' | 'resubmit'>): TriageRecord => ({
  ...record,
  escalations: [...record.escalations, { ...event.outcome, ...filed(event), outcome: null }],
});

/** The record with this outcome at the escalation that is under way. */
export const withOutcome = (
  record: TriageRecord,
  outcome: NonNullable<Escalation['outcome']>,
): TriageRecord => ({
  ...record,
  escalations: record.escalations.map((each, at) =>
    at === record.escalations.length - 1 ? { ...each, outcome } : each,
  ),
});

export const escalate = rule('escalate', {
  ready: noWatchRuns,
  refuse: (record, event) => refuseIncomplete(record, event.waivers),
  outcome: (record, { question, waivers }) => handingOver(record, { question, waivers, takenBy: null }),
  apply: withVersion,
});

const openRequests = (record: TriageRecord) => record.requests.filter(({ answer }) => answer === null);

export const answerRequest = rule('answerRequest', {
  ready: firstOf(notClosed, (record) =>
    openRequests(record).length > 0 ? null : because('not-allowed-now', message('nothingAsked')),
  ),
  refuse: (record, event) => {
    const request = record.requests.find(({ id }) => id === event.requestId);
    if (request === undefined) return because('unknown-reference', message('requestUnknown'));
    if (request.answer !== null) return because('not-allowed-now', message('requestAnsweredAlready'));
    const known = new Set(standingEvidence(record).map(({ id }) => id));
    const unknown = event.evidenceIds.filter((id) => !known.has(id));
    return unknown.length === 0
      ? null
      : because('unknown-reference', message('evidenceNotOnTicket', { ids: unknown }));
  },
  apply: (record, event) => ({
    ...record,
    requests: replaceById(record.requests, event.requestId, (request) => ({
      ...request,
      answer: { text: event.text, evidenceIds: event.evidenceIds, ...filed(event) },
    })),
  }),
});

/** Waivers given with this version, and those of the version before for other items. */
function waiversNow(record: TriageRecord, added: readonly Waiver[]): Waiver[] {
  const earlier = currentEscalation(record)?.waivers ?? [];
  return [...earlier.filter(({ item }) => !added.some((waiver) => waiver.item === item)), ...added];
}

export const resubmit = rule('resubmit', {
  ready: (record) => {
    const open = openRequests(record).filter(({ kind }) => kind === 'information');
    return open.length === 0
      ? null
      : because('request-open', message('stillWaitsFor', { requests: open.map(({ text }) => text) }), {
          requestIds: open.map(({ id }) => id),
        });
  },
  refuse: (record, event) => refuseIncomplete(record, waiversNow(record, event.waivers)),
  outcome: (record, { question, waivers }) => {
    const before = currentEscalation(record);
    return handingOver(record, {
      question: question ?? before?.question ?? '',
      waivers: waiversNow(record, waivers),
      takenBy: before?.takenBy ?? null,
    });
  },
  apply: (record, event) =>
    withVersion(withOutcome(record, { kind: 'resubmitted', text: '', ...filed(event) }), event),
});

export const recall = rule('recall', {
  apply: (record, event) => withOutcome(record, { kind: 'recalled', text: event.reason, ...filed(event) }),
});
