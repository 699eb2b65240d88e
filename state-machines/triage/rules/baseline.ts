import { message } from '../../../shared/message/message.ts';
import { filed, openChange, signed, standingSides } from '../record.ts';
import { because } from './refusal.ts';
import { firstOf, notClosed, noWatchRuns, rule } from './rule.ts';

export const reviewAudit = rule('reviewAudit', {
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
  ready: notClosed,
  apply: (record, event) => ({ ...record, whatChanged: { answers: event.answers, ...filed(event) } }),
});

export const recordAsFound = rule('recordAsFound', {
  ready: firstOf(noWatchRuns, (record) => {
    if (openChange(record) !== null) return because('change-open', message('chainNotAsFound'));
    return standingSides(record).length > 0 ? because('not-allowed-now', message('sideRestsOnChain')) : null;
  }),
  apply: (record, event) => ({
    ...record,
    asFound: { chainVersion: event.chainVersion, chain: event.chain, ...signed(event) },
  }),
});

export const note = rule('note', {
  apply: (record, event) => ({
    ...record,
    notes: [...record.notes, { text: event.text, ...signed(event) }],
  }),
});

export const amendIntake = rule('amendIntake', {
  ready: notClosed,
  apply: (record, event) => ({ ...record, symptom: event.symptom }),
});
