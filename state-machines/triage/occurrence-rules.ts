import type { Occurrence, TriageRecord, Watch } from '../../shared/contract/triage.ts';
import type { EventOf } from './events.ts';
import {
  baselineWatches,
  occurrencesIn,
  occurrencesOf,
  replaceById,
  signed,
  standingSides,
} from './record.ts';
import { because, type Cause } from './refusal.ts';
import { noWatchRuns, rule } from './rule.ts';

type Found = { watch: Watch; occurrence: Occurrence };

function findOccurrence(record: TriageRecord, occurrenceId: string): Found | null {
  for (const watch of record.watches) {
    const occurrence = watch.occurrences.find(({ id }) => id === occurrenceId);
    if (occurrence !== undefined) return { watch, occurrence };
  }
  return null;
}

function withoutOccurrence(record: TriageRecord, event: EventOf<'withdrawOccurrence'>): TriageRecord {
  const withdrawn = { ...signed(event), reason: event.reason };
  const watches = record.watches.map((watch) => {
    if (!watch.occurrences.some(({ id }) => id === event.occurrenceId)) return watch;
    // Whether a try was made at all is in doubt then; dropping it never makes a retest look better.
    const tries = Math.max(0, watch.tries - 1);
    const occurrences = replaceById(watch.occurrences, event.occurrenceId, (each) => ({
      ...each,
      withdrawn,
    }));
    return { ...watch, tries, occurrences };
  });
  return { ...record, watches };
}

function refuseUnknown(record: TriageRecord, occurrenceId: string): Cause | null {
  const found = findOccurrence(record, occurrenceId);
  if (found === null) return because('unknown-reference', 'There is no occurrence under that id.');
  return found.occurrence.withdrawn === null
    ? null
    : because('not-allowed-now', 'That occurrence was withdrawn already.');
}

const isLastOf = (watches: readonly Watch[], occurrenceId: string): boolean => {
  const standing = occurrencesIn(watches);
  return standing.length === 1 && standing[0]?.id === occurrenceId;
};

/** What in the record would be left without its proof. */
function refuseReliedUpon(record: TriageRecord, occurrenceId: string): Cause | null {
  const watch = findOccurrence(record, occurrenceId)?.watch;
  if (watch === undefined) return null;
  const reliedUpon = (what: string) => because('not-allowed-now', `${what} rests on this occurrence.`);
  for (const side of standingSides(record)) {
    const proof = record.watches.filter(({ id }) => side.watchIds.includes(id));
    if (isLastOf(proof, occurrenceId)) {
      return reliedUpon(`The side concluded at ${side.deviceId}, which has to be taken back first,`);
    }
  }
  const judged = record.changes.some(({ id, judgement }) => id === watch.changeId && judgement !== null);
  if (watch.purpose === 'retest' && judged) {
    return reliedUpon('The verdict on a change, which can be overridden with a reason,');
  }
  const confirmation = record.culprit?.confirmation;
  if (
    confirmation?.kind === 'returned' &&
    confirmation.watchId === watch.id &&
    isLastOf([watch], occurrenceId)
  ) {
    return reliedUpon('The confirmation of the culprit');
  }
  return record.reproductionAccepted && isLastOf(baselineWatches(record), occurrenceId)
    ? reliedUpon('The reproduction of the fault')
    : null;
}

export const withdrawOccurrence = rule('withdrawOccurrence', {
  label: 'Withdraw an occurrence that was recorded by mistake',
  ready: (record) =>
    record.watches.some((watch) => occurrencesOf(watch).length > 0)
      ? null
      : because('no-occurrence', 'There is no occurrence to withdraw.'),
  refuse: (record, event) =>
    refuseUnknown(record, event.occurrenceId) ?? refuseReliedUpon(record, event.occurrenceId),
  apply: withoutOccurrence,
});

/** Withdrawing the only occurrence undoes the reproduction: the ticket goes back to watching for the fault. */
export const withdrawReproduction = rule('withdrawOccurrence', {
  label: 'Withdraw the only occurrence and watch for the fault again',
  ready: (record) =>
    noWatchRuns(record) ??
    (standingSides(record).length > 0 ? because('not-allowed-now', 'A side rests on what was seen.') : null),
  refuse: (record, event) =>
    isLastOf(baselineWatches(record), event.occurrenceId)
      ? null
      : because('not-allowed-now', 'That is not the occurrence the reproduction rests on.'),
  apply: (record, event) => ({ ...withoutOccurrence(record, event), reproductionAccepted: false }),
});
