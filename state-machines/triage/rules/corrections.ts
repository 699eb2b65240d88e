import type { Occurrence, TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/message.ts';
import { type EventOf, momentOf } from '../events.ts';
import { occurrencesOf, replaceById, runningWatch, signed } from '../record.ts';
import { findOccurrence, refuseOutside } from './occurrences.ts';
import { because, type Cause } from './refusal.ts';
import { noWatchRuns, rule } from './rule.ts';

/**
 * What somebody saw, put right. Nothing is taken out of the record, and what rested on it is decided anew in the same
 * transaction (decided-anew.ts).
 */

/** The running watch may be put right while it runs; nothing was decided on it yet. */
const refuseMeanwhile = (record: TriageRecord, watch: Watch): Cause | null =>
  runningWatch(record)?.id === watch.id ? null : noWatchRuns(record);

function refuseOccurrence(record: TriageRecord, occurrenceId: string): Cause | null {
  const found = findOccurrence(record, occurrenceId);
  if (found === null) return because('unknown-reference', message('occurrenceUnknown'));
  if (found.watch.voided !== null) return because('not-allowed-now', message('watchVoidedAlready'));
  return found.occurrence.withdrawn === null
    ? refuseMeanwhile(record, found.watch)
    : because('not-allowed-now', message('occurrenceWithdrawnAlready'));
}

function withOccurrence(
  record: TriageRecord,
  occurrenceId: string,
  change: { watch?: (of: Watch) => Watch; occurrence: (of: Occurrence) => Occurrence },
): TriageRecord {
  const changed = (watch: Watch): Watch => ({
    ...(change.watch?.(watch) ?? watch),
    occurrences: replaceById(watch.occurrences, occurrenceId, change.occurrence).sort(
      (a, b) => Date.parse(a.at) - Date.parse(b.at),
    ),
  });
  const isIn = (watch: Watch) => watch.occurrences.some(({ id }) => id === occurrenceId);
  return { ...record, watches: record.watches.map((watch) => (isIn(watch) ? changed(watch) : watch)) };
}

const anyOccurrence = (record: TriageRecord): Cause | null =>
  record.watches.some((watch) => occurrencesOf(watch).length > 0)
    ? null
    : because('no-occurrence', message('noOccurrenceToWithdraw'));

export const withdrawOccurrence = rule('withdrawOccurrence', {
  ready: anyOccurrence,
  refuse: (record, command) => refuseOccurrence(record, command.occurrenceId),
  apply: (record, event) =>
    withOccurrence(record, event.occurrenceId, {
      // Whether a try was made at all is in doubt then; dropping it never makes a retest look better.
      watch: (watch) => ({ ...watch, tries: Math.max(0, watch.tries - 1) }),
      occurrence: (each) => ({ ...each, withdrawn: { ...signed(event), reason: event.reason } }),
    }),
});

export const correctOccurrence = rule('correctOccurrence', {
  ready: anyOccurrence,
  refuse: (record, command) => {
    const cause = refuseOccurrence(record, command.occurrenceId);
    const watch = findOccurrence(record, command.occurrenceId)?.watch;
    if (cause !== null || watch === undefined) return cause;
    const watched = { from: watch.startedAt, to: watch.endedAt ?? momentOf(command) };
    return refuseOutside(watched, command.occurredAt);
  },
  apply: (record, event) =>
    withOccurrence(record, event.occurrenceId, {
      occurrence: (each) => ({
        ...each,
        at: event.occurredAt,
        corrections: [...each.corrections, { ...signed(event), reason: event.reason, was: each.at }],
      }),
    }),
});

export const voidWatch = rule('voidWatch', {
  ready: (record) =>
    record.watches.some(({ endedAt, voided }) => endedAt !== null && voided === null)
      ? noWatchRuns(record)
      : because('not-allowed-now', message('noWatchToVoid')),
  refuse: (record, command) => {
    const watch = record.watches.find(({ id }) => id === command.watchId);
    if (watch === undefined) return because('unknown-reference', message('watchUnknown'));
    return watch.voided === null ? null : because('not-allowed-now', message('watchVoidedAlready'));
  },
  apply: (record, event: EventOf<'voidWatch'>) => ({
    ...record,
    watches: replaceById(record.watches, event.watchId, (watch) => ({
      ...watch,
      voided: { ...signed(event), reason: event.reason },
    })),
  }),
});
