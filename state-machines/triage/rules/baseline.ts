import { filed, openChange, signed, standingSides } from '../record.ts';
import { because } from './refusal.ts';
import { firstOf, notClosed, noWatchRuns, rule } from './rule.ts';

export const reviewAudit = rule('reviewAudit', {
  label: 'Say that you have looked at the audit of the chain',
  outcome: (_record, { known: { audit } }) => audit,
  apply: (record, event) => ({
    ...record,
    audit: {
      chainVersion: event.chainVersion,
      findings: event.outcome.findings,
      firmwareBelowLevel: event.outcome.firmwareBelowLevel,
      note: event.note,
      ...filed(event),
    },
  }),
});

export const answerWhatChanged = rule('answerWhatChanged', {
  label: 'Write down what has changed since it last worked',
  ready: notClosed,
  apply: (record, event) => ({ ...record, whatChanged: { answers: event.answers, ...filed(event) } }),
});

export const recordAsFound = rule('recordAsFound', {
  label: 'Record the chain as you found it',
  ready: firstOf(noWatchRuns, (record) => {
    if (openChange(record) !== null)
      return because('change-open', 'A change is open: the chain is not as found.');
    return standingSides(record).length > 0
      ? because('not-allowed-now', 'A side was concluded on the chain as recorded: take that back first.')
      : null;
  }),
  apply: (record, event) => ({
    ...record,
    asFound: { chainVersion: event.chainVersion, chain: event.chain, ...signed(event) },
  }),
});

export const note = rule('note', {
  label: 'Add a note',
  apply: (record, event) => ({
    ...record,
    notes: [...record.notes, { text: event.text, ...signed(event) }],
  }),
});

export const amendIntake = rule('amendIntake', {
  label: 'Correct the symptom',
  ready: notClosed,
  apply: (record, event) => ({ ...record, symptom: event.symptom }),
});
