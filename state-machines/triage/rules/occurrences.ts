import type { Occurrence, TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import { type Message, message } from '../../../shared/message/message.ts';
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
import { deviceNamed, rule } from './rule.ts';

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
  if (found === null) return because('unknown-reference', message('occurrenceUnknown'));
  return found.occurrence.withdrawn === null
    ? null
    : because('not-allowed-now', message('occurrenceWithdrawnAlready'));
}

const isLastOf = (watches: readonly Watch[], occurrenceId: string): boolean => {
  const standing = occurrencesIn(watches);
  return standing.length === 1 && standing[0]?.id === occurrenceId;
};

/** What in the record would be left without its proof. */
function refuseReliedUpon(record: TriageRecord, occurrenceId: string): Cause | null {
  const watch = findOccurrence(record, occurrenceId)?.watch;
  if (watch === undefined) return null;
  const reliedUpon = (said: Message) => because('not-allowed-now', said);
  for (const side of standingSides(record)) {
    const proof = record.watches.filter(({ id }) => side.watchIds.includes(id));
    if (isLastOf(proof, occurrenceId)) {
      return reliedUpon(message('sideRestsOnOccurrence', { device: deviceNamed(record, side.deviceId) }));
    }
  }
  const judged = record.changes.some(({ id, judgement }) => id === watch.changeId && judgement !== null);
  if (watch.purpose === 'retest' && judged) {
    return reliedUpon(message('verdictRestsOnOccurrence'));
  }
  const confirmation = record.culprit?.confirmation;
  if (
    confirmation?.kind === 'returned' &&
    confirmation.watchId === watch.id &&
    isLastOf([watch], occurrenceId)
  ) {
    return reliedUpon(message('confirmationRestsOnOccurrence'));
  }
  return null;
}

export const withdrawOccurrence = rule('withdrawOccurrence', {
  ready: (record) =>
    record.watches.some((watch) => occurrencesOf(watch).length > 0)
      ? null
      : because('no-occurrence', message('noOccurrenceToWithdraw')),
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
  const no = (said: Message) => because('not-allowed-now', said);
  if (watch.endedAt === null) return no(message('watchStillRunning'));
  if (watch.mode === 'trigger') return no(message('triesJudgedWhenMade'));
  if (watch.round !== record.round) return no(message('watchOfEarlierRound'));
  const change = record.changes.find(({ id }) => id === watch.changeId);
  if (watch.purpose === 'retest' && change !== undefined && change.judgement !== null) {
    return no(message('judgedOnThatWatch'));
  }
  const at = Date.parse(event.occurredAt);
  if (at < Date.parse(watch.startedAt) || at > Date.parse(watch.endedAt)) {
    return because(
      'time-out-of-order',
      message('momentOutsideWatch', { from: watch.startedAt, to: watch.endedAt }),
    );
  }
  return occurrencesOf(watch).some((each) => Math.abs(Date.parse(each.at) - at) < sameOccurrenceS * 1000)
    ? because('already-exists', message('occurrenceRecordedAlready'))
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
    return because('menu-answer-missing', message('menuAnswerMissing'));
  }
  const side = standingSides(record).find(({ deviceId }) => deviceId === watch.menuDeviceId);
  if (side === undefined || (side.side === 'input') === (event.menu === 'stayed')) return null;
  return because('side-contradiction', message('contradictsSideThere'), {
    place: { kind: 'device', deviceId: side.deviceId },
  });
}

export const confirmOccurrence = rule('confirmOccurrence', {
  ready: (record) =>
    record.watches.some((watch) => watch.endedAt !== null) &&
    standingEvidence(record).some(({ kind }) => kind === 'log')
      ? null
      : because('no-occurrence', message('needsEndedWatchAndLog')),
  refuse: (record, event) => {
    const watch = record.watches.find(({ id }) => id === event.watchId);
    if (watch === undefined) return because('unknown-reference', message('watchUnknown'));
    const log = standingEvidence(record).find(({ id }) => id === event.evidenceId);
    if (log?.kind !== 'log') return because('unknown-reference', message('logUnknown'));
    if (findOccurrence(record, event.occurrenceId) !== null) {
      return because('already-exists', message('occurrenceIdTaken'));
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
