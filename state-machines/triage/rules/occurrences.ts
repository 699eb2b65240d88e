import type { Occurrence, TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import { isLoggedOf } from '../../../shared/logs/same-occurrence.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import type { CompleteCommandOf } from '../events.ts';
import { occurrencesOf, replaceById, standingEvidence, standingSides } from '../record.ts';
import { because, type Cause } from './refusal.ts';
import { rule } from './rule.ts';

type Found = { watch: Watch; occurrence: Occurrence };

export function findOccurrence(record: TriageRecord, occurrenceId: string): Found | null {
  for (const watch of record.watches) {
    const occurrence = watch.occurrences.find(({ id }) => id === occurrenceId);
    if (occurrence !== undefined) return { watch, occurrence };
  }
  return null;
}

/** Refuses a moment at which a watch was not running. */
export function refuseOutside(watched: { from: string; to: string }, moment: string): Cause | null {
  const at = Date.parse(moment);
  return at < Date.parse(watched.from) || at > Date.parse(watched.to)
    ? because('time-out-of-order', message('momentOutsideWatch', watched))
    : null;
}

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
  if (watch.voided !== null) return no(message('watchVoidedAlready'));
  const outside = refuseOutside({ from: watch.startedAt, to: watch.endedAt }, event.occurredAt);
  if (outside !== null) return outside;
  return occurrencesOf(watch).some((each) => isLoggedOf(each.at, event.occurredAt))
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

const someWatchEndedWithLog = (record: TriageRecord): Cause | null =>
  record.watches.some((watch) => watch.endedAt !== null) &&
  standingEvidence(record).some(({ kind }) => kind === 'log')
    ? null
    : because('no-occurrence', message('needsEndedWatchAndLog'));

const refuseNoLog = (record: TriageRecord, evidenceId: string): Cause | null =>
  standingEvidence(record).find(({ id }) => id === evidenceId)?.kind === 'log'
    ? null
    : because('unknown-reference', message('logUnknown'));

export const confirmOccurrence = rule('confirmOccurrence', {
  ready: someWatchEndedWithLog,
  refuse: (record, event) => {
    const watch = record.watches.find(({ id }) => id === event.watchId);
    if (watch === undefined) return because('unknown-reference', message('watchUnknown'));
    const unknown = refuseNoLog(record, event.evidenceId);
    if (unknown !== null) return unknown;
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
        { id: occurrenceId, at: occurredAt, corrections: [], durationS, menu, description, withdrawn: null },
      ].sort((a, b) => Date.parse(a.at) - Date.parse(b.at)),
    })),
  }),
});

/** What a log shows at that moment was said not to be the fault. */
export const isLoggedAsNone = ({ loggedAsNone = [] }: Watch, moment: string): boolean =>
  loggedAsNone.some(({ at }) => isLoggedOf(at, moment));

export const answerLogged = rule('answerLogged', {
  ready: someWatchEndedWithLog,
  refuse: (record, { watchId, evidenceId, occurredAt, answer }) => {
    const watch = record.watches.find(({ id }) => id === watchId);
    if (watch === undefined) return because('unknown-reference', message('watchUnknown'));
    if (watch.endedAt === null) return because('not-allowed-now', message('watchStillRunning'));
    const isNone = isLoggedAsNone(watch, occurredAt);
    if (isNone === (answer === 'no')) return because('already-exists', message('loggedAnsweredAlready'));
    return (
      refuseNoLog(record, evidenceId) ??
      refuseOutside({ from: watch.startedAt, to: watch.endedAt }, occurredAt)
    );
  },
  apply: (record, { watchId, evidenceId, occurredAt, answer, by }) => ({
    ...record,
    watches: replaceById(record.watches, watchId, (watch) => {
      const others = (watch.loggedAsNone ?? []).filter(({ at }) => !isLoggedOf(at, occurredAt));
      const said = answer === 'no' ? [{ at: occurredAt, evidenceId, by }] : [];
      return { ...watch, loggedAsNone: [...others, ...said] };
    }),
  }),
});
