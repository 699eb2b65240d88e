import type { TriageRecord } from '../../../shared/contract/triage.ts';
import { noFaultFoundWatchMin } from '../../../shared/isolation/retest-statistics.ts';
import { type EventOf, momentOf, type TriageEvent } from '../events.ts';
import { baselineWatches, filed, minutesOf, occurrencesIn, signed, verifyWatches } from '../record.ts';
import { figuresOf, judgeWatches, usable } from '../retest.ts';
import { setAside } from './culprit.ts';
import { because, type Cause } from './refusal.ts';
import { chainAsItWas, clockToleranceMin, firstOf, noWatchRuns, rule } from './rule.ts';

const whole = (minutes: number): number => Math.ceil(minutes);

const faultNeverSeen = (record: TriageRecord): Cause | null =>
  occurrencesIn(baselineWatches(record)).length > 0
    ? because('not-allowed-now', 'The fault was seen: go on and find the side.')
    : null;

function quietSoFar(record: TriageRecord) {
  const watchedMin = baselineWatches(record)
    .filter(({ mode }) => mode === 'time')
    .reduce((total, watch) => total + minutesOf(watch), 0);
  const neededMin = noFaultFoundWatchMin(record.symptom.perHour, record.settings.risk);
  return { watchedMin, neededMin, ...figuresOf(record) };
}

/** The quiet watch has to be so long that a fault as frequent as reported would have shown. */
function longEnoughQuiet(record: TriageRecord): Cause | null {
  const { neededMin, watchedMin } = quietSoFar(record);
  return watchedMin >= neededMin
    ? null
    : because(
        'watch-record-too-short',
        `“No fault found” needs ${whole(neededMin)} min of watching without the fault; there are ${Math.floor(watchedMin)} so far.`,
        { remainingMin: whole(neededMin - watchedMin) },
      );
}

const withRemedy = (record: TriageRecord, event: EventOf<'chooseRemedy'>): TriageRecord => ({
  ...record,
  remedy: event.remedy,
  quietProof: event.outcome.quietProof,
});

export const settleNoFaultFound = rule('chooseRemedy', {
  label: 'Settle on: no fault found',
  ready: firstOf(noWatchRuns, chainAsItWas, faultNeverSeen, longEnoughQuiet),
  refuse: (_record, event) =>
    event.remedy.kind === 'noFaultFound'
      ? null
      : because('not-allowed-now', 'A repair or a workaround needs a culprit; nothing was found yet.'),
  outcome: (record) => ({ quietProof: quietSoFar(record) }),
  apply: withRemedy,
});

export const chooseRemedy = rule('chooseRemedy', {
  label: 'Settle on a repair, or on a workaround that the client accepts',
  ready: chainAsItWas,
  refuse: (_record, event) => {
    const { remedy } = event;
    if (remedy.kind === 'noFaultFound') {
      return because(
        'not-allowed-now',
        'A culprit is named, so a fault was found: repair it or work around it.',
      );
    }
    const latest = Date.parse(momentOf(event)) + clockToleranceMin * 60_000;
    return remedy.kind === 'workaround' && Date.parse(remedy.acceptedAt) > latest
      ? because('time-out-of-order', 'The client’s acceptance is still to come by its time.')
      : null;
  },
  outcome: () => ({ quietProof: null }),
  apply: withRemedy,
});

const dropRemedy = (record: TriageRecord, event: EventOf<'withdrawRemedy'>): TriageRecord => {
  const { culprit } = record;
  return { ...setAside(record, event, event.reason, 'remedyWithdrawn'), culprit };
};

export const withdrawNoFaultFound = rule('withdrawRemedy', {
  label: 'Withdraw “no fault found” and watch on',
  ready: firstOf(noWatchRuns, (record) =>
    record.culprit === null ? null : because('not-allowed-now', 'A culprit is named.'),
  ),
  apply: dropRemedy,
});

export const withdrawRemedy = rule('withdrawRemedy', {
  label: 'Withdraw the remedy and settle on another',
  ready: firstOf(noWatchRuns, (record) =>
    record.culprit === null ? because('not-allowed-now', 'No culprit is named.') : null,
  ),
  apply: dropRemedy,
});

export const finishRemedy = rule('finishRemedy', {
  label: 'The remedy is done: record the chain as you leave it',
  apply: (record, event) => ({
    ...record,
    asLeft: {
      chainVersion: event.asLeftChainVersion,
      watchesBefore: record.watches.length,
      ...signed(event),
    },
  }),
});

export const close = rule('close', {
  label: 'Close the ticket',
  ready: firstOf(chainAsItWas, noWatchRuns),
  refuse: (record, event) => refuseClosing(record, event.override !== null),
  outcome: (record) => ({ proof: closingProof(record) }),
  apply: (record, event) => ({
    ...record,
    closedAt: event.at,
    closing: { note: event.note, override: event.override, proof: event.outcome.proof, ...filed(event) },
  }),
});

/** What the watches since the remedy say. */
function closingProof(record: TriageRecord) {
  const watches = usable(verifyWatches(record));
  const { verdict, riskOfBeingFooled, needed } = judgeWatches(record, watches);
  return {
    verdict,
    riskOfBeingFooled,
    needed,
    ...figuresOf(record),
    watchedMin: watches.reduce((total, watch) => total + minutesOf(watch), 0),
    occurrences: occurrencesIn(watches).length,
  };
}

function refuseClosing(record: TriageRecord, overridden: boolean): Cause | null {
  const watches = verifyWatches(record);
  const seen = occurrencesIn(watches).length;
  if (seen > 0) {
    return record.remedy?.kind === 'workaround' && overridden
      ? null
      : because(
          'not-allowed-now',
          `The fault came ${seen === 1 ? 'once' : `${seen} times`} after the remedy: it is not closed by that.`,
        );
  }
  if (overridden || record.remedy?.kind === 'noFaultFound') return null;
  const { verdict, needed, reasons } = judgeWatches(record, watches);
  if (verdict === 'cleared') return null;
  const remaining = needed?.mode === 'time' ? { remainingMin: whole(needed.remainingMin) } : {};
  const detail = `The watch after the remedy does not show enough. ${reasons.join(' ')} Or close with a reason.`;
  return because('watch-record-too-short', detail, remaining);
}

/** A new round: what was found before proves nothing about the chain as it is now. */
const newRound = (record: TriageRecord, cameBackWatchIds: string[]): TriageRecord => ({
  ...record,
  round: record.round + 1,
  reproductionAccepted: false,
  cameBackWatchIds,
});

const startOver = (
  record: TriageRecord,
  event: TriageEvent & { reason: string },
  because: 'faultCameBack' | 'reopened',
  watchIds: string[],
): TriageRecord => newRound(setAside(record, event, event.reason, because), watchIds);

export const faultCameBack = rule('faultCameBack', {
  label: 'The fault came back: take it up again',
  ready: firstOf(noWatchRuns, (record) =>
    occurrencesIn(verifyWatches(record)).length > 0
      ? null
      : because('no-occurrence', 'Record the fault in a watch first.'),
  ),
  outcome: (record) => ({ watchIds: verifyWatches(record).map(({ id }) => id) }),
  apply: (record, event) => startOver(record, event, 'faultCameBack', event.outcome.watchIds),
});

const msPerDay = 86_400_000;

export const reopen = rule('reopen', {
  label: 'Reopen the ticket',
  refuse: (record, event) => whyTooLate(record, event.at),
  apply: (record, event) => ({
    ...startOver({ ...record, closedAt: null }, event, 'reopened', []),
    reopenings: [...record.reopenings, { reason: event.reason, ...filed(event) }],
  }),
});

/** Refuses reopening after the days that the organisation has set. */
export function whyTooLate(record: TriageRecord, at: string): Cause | null {
  const { reopenDays } = record.settings;
  const lastMs = Date.parse(record.closedAt ?? at) + reopenDays * msPerDay;
  return Date.parse(at) > lastMs
    ? because('reopen-too-late', `A ticket can be reopened for ${reopenDays} days; open a new one.`)
    : null;
}
