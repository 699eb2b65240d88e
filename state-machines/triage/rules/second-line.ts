import type { SupportRequest, TriageRecord } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/message.ts';
import { currentEscalation, filed } from '../record.ts';
import { refuseUnknownPlace, setAside } from './culprit.ts';
import { withOutcome } from './escalation.ts';
import { because, type Cause } from './refusal.ts';
import { rule } from './rule.ts';

export const takeCase = rule('takeCase', {
  refuse: (record, event) =>
    currentEscalation(record)?.takenBy === event.by
      ? because('not-allowed-now', message('caseTakenAlready'))
      : null,
  apply: (record, event) => ({
    ...record,
    escalations: record.escalations.map((each, at) =>
      at === record.escalations.length - 1 ? { ...each, takenBy: event.by } : each,
    ),
  }),
});

function refuseTaken(record: TriageRecord, requestIds: readonly string[]): Cause | null {
  const known = new Set(record.requests.map(({ id }) => id));
  return requestIds.some((id) => known.has(id)) || new Set(requestIds).size < requestIds.length
    ? because('already-exists', message('requestIdTaken'))
    : null;
}

export const askForMore = rule('askForMore', {
  refuse: (record, event) =>
    refuseTaken(
      record,
      event.requests.map(({ requestId }) => requestId),
    ),
  apply: (record, event) => {
    const asked = event.requests.map(
      ({ requestId, item, text }): SupportRequest => ({
        id: requestId,
        kind: 'information',
        item,
        text,
        change: null,
        ...filed(event),
        answer: null,
      }),
    );
    return { ...record, requests: [...record.requests, ...asked] };
  },
});

export const directStep = rule('directStep', {
  refuse: (record, event) =>
    refuseTaken(record, [event.requestId]) ??
    (event.change === null ? null : refuseUnknownPlace(record, event.change.target)),
  apply: (record, event) => {
    const step: SupportRequest = {
      id: event.requestId,
      kind: 'step',
      item: null,
      text: event.text,
      change: event.change,
      ...filed(event),
      answer: null,
    };
    const outcome = { kind: 'stepDirected', text: event.text, ...filed(event) } as const;
    return withOutcome({ ...record, requests: [...record.requests, step] }, outcome);
  },
});

export const acceptCase = rule('acceptCase', {
  refuse: (record, event) => (event.place === null ? null : refuseUnknownPlace(record, event.place)),
  apply: (record, event) => {
    const outcome = { kind: 'accepted', text: event.finding, ...filed(event) } as const;
    return {
      ...setAside(withOutcome(record, outcome), event, event.finding, 'caseAccepted'),
      resumeAt: null,
      culprit: {
        place: event.place ?? { kind: 'chain' },
        explanation: event.finding,
        changeId: null,
        confirmation: { kind: 'notDone', reason: event.finding },
        namedBy: 'support',
        ...filed(event),
      },
    };
  },
});

export const handBack = rule('handBack', {
  apply: (record, event) => withOutcome(record, { kind: 'handedBack', text: event.reason, ...filed(event) }),
});
