import type { Occurrence, TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import type { CompleteCommandOf, EventOf } from '../events.ts';
import {
  occurrencesIn,
  occurrencesOf,
  replaceById,
  signed,
  standingEvidence,
  standingSides,
} from '../record.ts';
import { because, type Cause } from './refusal.ts';
import { rule } from './rule.ts';

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
  return null;
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

/** A log and a person who both tell of one occurrence differ by less than this, seconds; assumed. */
const sameOccurrenceS = 10;

/** Why a watch can't take another occurrence from a log; null when it can. */
function refuseWatchOf(
  record: TriageRecord,
  watch: Watch,
  event: CompleteCommandOf<'confirmOccurrence'>,
): Cause | null {
  const no = (detail: string) => because('not-allowed-now', detail);
  if (watch.endedAt === null) return no('That watch is still running: record what you see.');
  if (watch.mode === 'trigger') return no('In a watch by tries each try was judged when it was made.');
  if (watch.round !== record.round) return no('That watch belongs to an earlier round.');
  const change = record.changes.find(({ id }) => id === watch.changeId);
  if (watch.purpose === 'retest' && change !== undefined && change.judgement !== null) {
    return no('The change was judged on that watch: judge it again by hand and give the log as the reason.');
  }
  const at = Date.parse(event.occurredAt);
  if (at < Date.parse(watch.startedAt) || at > Date.parse(watch.endedAt)) {
    return because('time-out-of-order', `The watch went from ${watch.startedAt} to ${watch.endedAt}.`);
  }
  return occurrencesOf(watch).some((each) => Math.abs(Date.parse(each.at) - at) < sameOccurrenceS * 1000)
    ? because('already-exists', 'That occurrence is recorded already.')
    : null;
}

/** In a watch for the side, whoever watched has to say what the menu did, and not against what was concluded from it. */
function refuseMenu(
  record: TriageRecord,
  watch: Watch,
  event: CompleteCommandOf<'confirmOccurrence'>,
): Cause | null {
  if (watch.purpose !== 'side') return null;
  if (event.menu === null) {
    return because('menu-answer-missing', 'Did the menu stay in the picture, or did it vanish too?');
  }
  const side = standingSides(record).find(({ deviceId }) => deviceId === watch.menuDeviceId);
  if (side === undefined || (side.side === 'input') === (event.menu === 'stayed')) return null;
  return because(
    'side-contradiction',
    'That contradicts the side concluded there: take the side back first.',
    {
      place: { kind: 'device', deviceId: side.deviceId },
    },
  );
}

export const confirmOccurrence = rule('confirmOccurrence', {
  label: 'Confirm an occurrence that a log shows',
  ready: (record) =>
    record.watches.some((watch) => watch.endedAt !== null) &&
    standingEvidence(record).some(({ kind }) => kind === 'log')
      ? null
      : because('no-occurrence', 'That takes a watch that has ended and a log.'),
  refuse: (record, event) => {
    const watch = record.watches.find(({ id }) => id === event.watchId);
    if (watch === undefined) return because('unknown-reference', 'There is no watch under that id.');
    const log = standingEvidence(record).find(({ id }) => id === event.evidenceId);
    if (log?.kind !== 'log') return because('unknown-reference', 'There is no log under that id.');
    if (findOccurrence(record, event.occurrenceId) !== null) {
      return because('already-exists', 'There is an occurrence under that id.');
    }
    return refuseWatchOf(record, watch, event) ?? refuseMenu(record, watch, event);
  },
  apply: (record, { watchId, occurrenceId, occurredAt, durationS, menu, description }) => ({
    ...record,
    watches: replaceById(record.watches, watchId, (watch) => ({
      ...watch,
      occurrences: [
        ...watch.occurrences,
        { id: occurrenceId, at: occurredAt, durationS, menu, description, withdrawn: null },
      ].sort((a, b) => Date.parse(a.at) - Date.parse(b.at)),
    })),
  }),
});
