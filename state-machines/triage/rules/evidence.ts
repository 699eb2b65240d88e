import { filed, replaceById } from '../record.ts';
import { because } from './refusal.ts';
import { notClosed, rule } from './rule.ts';

export const evidenceAdded = rule('evidenceAdded', {
  label: 'Add evidence',
  ready: notClosed,
  refuse: (record, { evidence }) => {
    const { watchId, changeId } = evidence.tie;
    if (record.evidence.some(({ id }) => id === evidence.id)) {
      return because('already-exists', 'There is an item of evidence under that id.');
    }
    if (watchId !== null && !record.watches.some(({ id }) => id === watchId)) {
      return because('unknown-reference', 'The ticket has no watch under that id.');
    }
    return changeId !== null && !record.changes.some(({ id }) => id === changeId)
      ? because('unknown-reference', 'The ticket has no change under that id.')
      : null;
  },
  apply: (record, event) => ({ ...record, evidence: [...record.evidence, event.evidence] }),
});

export const evidenceWithdrawn = rule('evidenceWithdrawn', {
  label: 'Withdraw an item of evidence',
  ready: notClosed,
  refuse: (record, event) => {
    const item = record.evidence.find(({ id }) => id === event.evidenceId);
    if (item === undefined) return because('unknown-reference', 'The ticket has no such evidence.');
    return item.withdrawn === null ? null : because('not-allowed-now', 'That item was withdrawn already.');
  },
  apply: (record, event) => {
    const withdrawn = { reason: event.reason, ...filed(event) };
    return {
      ...record,
      evidence: replaceById(record.evidence, event.evidenceId, (item) => ({ ...item, withdrawn })),
    };
  },
});
