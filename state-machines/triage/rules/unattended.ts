import { findDevice } from '../../../shared/chain/graph.ts';
import type { LeftSafely, TriageRecord } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/message.ts';
import { type CompleteCommandOf, momentOf } from '../events.ts';
import { changeInPlace, replaceById, standingEvidence } from '../record.ts';
import { runningUnattended } from '../unattended.ts';
import { supersede } from './changes.ts';
import { because, type Cause } from './refusal.ts';
import { firstOf, nothingUnattended, noWatchRuns, rule } from './rule.ts';
import { refuseTooEarly, startOf } from './timing.ts';

/** A change is in place, and its retest says nothing final yet. */
export const retestIsOpen = (record: TriageRecord): Cause | null => {
  const change = changeInPlace(record);
  if (change === null) return because('no-change-open', message('noChangeInPlace'));
  return change.judgement === null || change.judgement.verdict === 'inconclusive'
    ? null
    : because('not-allowed-now', message('retestJudgedAlready'));
};

/** Assumed: what is left in for longer is no test any more. */
const longestDays = 60;

const unattendedRuns = (record: TriageRecord): Cause | null =>
  runningUnattended(record) === null ? because('no-watch-running', message('noUnattendedRuns')) : null;

/** What nobody may be left alone with, and how it is said. */
const dangers = {
  liesAcrossFloor: 'leftAcrossFloor',
  hangs: 'leftHanging',
  staysOpen: 'leftOpen',
  lacksCooling: 'leftWithoutCooling',
  defeatsProtection: 'leftUnprotected',
} as const satisfies Record<keyof LeftSafely, string>;
export const dangerNames = Object.keys(dangers) as (keyof LeftSafely)[];

function refuseLeaving(record: TriageRecord, command: CompleteCommandOf<'leaveInPlace'>): Cause | null {
  const danger = dangerNames.find((each) => command.safety[each]);
  if (danger !== undefined) return because('change-not-applicable', message(dangers[danger]));
  const leftMs = Date.parse(command.until) - Date.parse(momentOf(command));
  if (leftMs <= 0 || leftMs > longestDays * 86_400_000)
    return because('invalid-input', message('unattendedEndFar', { days: longestDays }));
  if (Date.parse(command.clientsYes.at) > Date.parse(command.at))
    return because('time-out-of-order', message('acceptanceInFuture'));
  const chain = record.asFound?.chain;
  const unknown = command.firmware.find(
    ({ deviceId }) => chain === undefined || findDevice(chain, deviceId) === undefined,
  );
  if (unknown !== undefined)
    return because('unknown-reference', message('deviceNotInChain', { device: unknown.deviceId }));
  return refuseTooEarly(record, command);
}

export const leaveInPlace = rule('leaveInPlace', {
  ready: firstOf(noWatchRuns, nothingUnattended, retestIsOpen),
  refuse: refuseLeaving,
  outcome: (record, command) => ({
    changeId: changeInPlace(record)?.id ?? '',
    startedAt: startOf(record, command),
  }),
  apply: (record, event) => ({
    ...record,
    changes: replaceById(record.changes, event.outcome.changeId, (change) => ({
      ...supersede(change, 'watchedOn', event),
      status: 'applied',
    })),
    unattended: [
      ...record.unattended,
      {
        id: event.unattendedId,
        round: record.round,
        ...event.outcome,
        until: event.until,
        owner: event.owner,
        safety: event.safety,
        clientsYes: event.clientsYes,
        firmwareBefore: event.firmware,
        endedAt: null,
        firmwareAfter: [],
        logged: [],
        by: event.by,
      },
    ],
  }),
});

export const endUnattended = rule('endUnattended', {
  ready: unattendedRuns,
  refuse: (record, command) => {
    const running = runningUnattended(record);
    if (running === null) return null;
    const unread = running.firmwareBefore.find(
      ({ deviceId }) => !command.firmware.some((each) => each.deviceId === deviceId),
    );
    if (unread !== undefined)
      return because('invalid-input', message('firmwareNotReadAgain', { device: unread.deviceId }));
    const span = { from: running.startedAt, to: momentOf(command) };
    if (Date.parse(span.to) < Date.parse(span.from))
      return because('time-out-of-order', message('endBeforeSeen', { moment: span.to }));
    return refuseLogged(record, command, span);
  },
  outcome: (record, command) => ({
    unattendedId: runningUnattended(record)?.id ?? '',
    endedAt: momentOf(command),
  }),
  apply: (record, { firmware, logged, outcome: { unattendedId, endedAt } }) => ({
    ...record,
    unattended: replaceById(record.unattended, unattendedId, (each) => ({
      ...each,
      endedAt,
      firmwareAfter: firmware,
      logged,
    })),
  }),
});

/** What a log shows has to be on a log of this ticket, and of these days. */
function refuseLogged(
  record: TriageRecord,
  { logged }: CompleteCommandOf<'endUnattended'>,
  span: { from: string; to: string },
): Cause | null {
  const logs = new Set(standingEvidence(record).flatMap(({ id, kind }) => (kind === 'log' ? [id] : [])));
  if (logged.some(({ evidenceId }) => !logs.has(evidenceId)))
    return because('unknown-reference', message('logUnknown'));
  const outside = logged.some(
    ({ occurredAt }) =>
      Date.parse(occurredAt) < Date.parse(span.from) || Date.parse(occurredAt) > Date.parse(span.to),
  );
  return outside ? because('time-out-of-order', message('momentOutsideWatch', span)) : null;
}
