import type { TriageRecord, Wait } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/message.ts';
import { type EventOf, momentOf } from '../events.ts';
import { changeInPlace, filed } from '../record.ts';
import { because } from './refusal.ts';
import { noWatchRuns, rule } from './rule.ts';

/** The record with the wait that stands ended; one that has ended stays as it is. */
const ended = (
  record: TriageRecord,
  event: EventOf<'waitFor'> | EventOf<'resumeWork'>,
  how: Pick<NonNullable<Wait['ended']>, 'because' | 'note'>,
): Wait[] =>
  record.waits.map((wait) => (wait.ended === null ? { ...wait, ended: { ...how, ...filed(event) } } : wait));

/** Begins a wait, or puts another date or reason in the place of the one that stands. */
export const waitFor = rule('waitFor', {
  ready: noWatchRuns,
  refuse: (_record, command) =>
    Date.parse(command.until) <= Date.parse(momentOf(command))
      ? because('time-out-of-order', message('waitIsOver', { moment: command.until }))
      : null,
  outcome: (record) => {
    const change = changeInPlace(record);
    return { leftInPlace: change === null ? [] : [change.id] };
  },
  apply: (record, event) => {
    const { kind, what, actor, actorName, until, outcome } = event;
    const { round } = record;
    const wait: Wait = {
      round,
      kind,
      what,
      actor,
      actorName,
      until,
      ...outcome,
      ...filed(event),
      ended: null,
    };
    return { ...record, waits: [...ended(record, event, { because: 'revised', note: '' }), wait] };
  },
});

export const resumeWork = rule('resumeWork', {
  apply: (record, event) => ({
    ...record,
    waits: ended(record, event, { because: 'resumed', note: event.note }),
  }),
});
