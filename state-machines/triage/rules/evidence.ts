import { message } from '../../../shared/message/message.ts';
import { filed, replaceById } from '../record.ts';
import { because } from './refusal.ts';
import { notClosed, rule } from './rule.ts';

export const evidenceAdded = rule('evidenceAdded', {
  refuse: (record, { evidence }) => {
    const { watchId, changeId, shows } = evidence.tie;
    // The client signs the report of what was done, which is whole only once the ticket is closed.
    const closed = shows === 'signature' ? null : notClosed(record);
    if (closed !== null) return closed;
    if (record.evidence.some(({ id }) => id === evidence.id)) {
      return because('already-exists', message('evidenceIdTaken'));
    }
    if (watchId !== null && !record.watches.some(({ id }) => id === watchId)) {
      return because('unknown-reference', message('ticketHasNoSuchWatch'));
    }
    return changeId !== null && !record.changes.some(({ id }) => id === changeId)
      ? because('unknown-reference', message('ticketHasNoSuchChange'))
      : null;
  },
  apply: (record, event) => ({ ...record, evidence: [...record.evidence, event.evidence] }),
});

export const evidenceWithdrawn = rule('evidenceWithdrawn', {
  ready: notClosed,
  refuse: (record, event) => {
    const item = record.evidence.find(({ id }) => id === event.evidenceId);
    if (item === undefined) return because('unknown-reference', message('evidenceUnknown'));
    return item.withdrawn === null ? null : because('not-allowed-now', message('evidenceWithdrawnAlready'));
  },
  apply: (record, event) => {
    const withdrawn = { reason: event.reason, ...filed(event) };
    return {
      ...record,
      evidence: replaceById(record.evidence, event.evidenceId, (item) => ({ ...item, withdrawn })),
    };
  },
});
