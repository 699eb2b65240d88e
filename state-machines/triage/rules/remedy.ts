import { placeOfPart } from '../../../shared/chain/installed.ts';
import { placeExists } from '../../../shared/chain/place.ts';
import type { QuietProof, TriageRecord } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/message.ts';
import { type EventOf, momentOf, type TriageEvent } from '../events.ts';
import { type Quiet, quietOf } from '../quiet.ts';
import {
  baselineWatches,
  filed,
  minutesOf,
  occurrencesIn,
  reportsSinceRemedy,
  signed,
  verifyWatches,
} from '../record.ts';
import { figuresOf, judgeWatches, usable } from '../retest.ts';
import { daysAfter, followUpDays, withOutcomeOfChoice } from './choices.ts';
import { setAside } from './culprit.ts';
import { because, type Cause } from './refusal.ts';
import { newRound } from './rounds.ts';
import { chainAsItWas, clockToleranceMin, firstOf, noWatchRuns, rule } from './rule.ts';

const whole = (minutes: number): number => Math.ceil(minutes);

const faultNeverSeen = (record: TriageRecord): Cause | null =>
  occurrencesIn(baselineWatches(record)).length > 0
    ? because('not-allowed-now', message('faultWasSeen'))
    : null;

const quietSoFar = (record: TriageRecord): Quiet => quietOf(record, usable(baselineWatches(record)));

/** What “no fault found” rests on. */
function quietProofOf(record: TriageRecord): QuietProof {
  const { mode, done, needed } = quietSoFar(record);
  const isTimed = mode === 'time';
  return {
    watchedMin: isTimed
      ? done
      : baselineWatches(record).reduce((total, watch) => total + minutesOf(watch), 0),
    neededMin: isTimed ? needed : 0,
    counted: isTimed ? null : { mode, done, needed },
    ...figuresOf(record),
  };
}

/** The quiet watch has to be so long that a fault that comes as reported would have shown. */
function longEnoughQuiet(record: TriageRecord): Cause | null {
  const { mode, done, needed } = quietSoFar(record);
  if (done >= needed) return null;
  if (mode !== 'time')
    return because(
      'watch-record-too-short',
      message(mode === 'look' ? 'looksTooFew' : 'triesTooFew', { needed, done }),
    );
  return because('watch-record-too-short', message('quietTooShort', { needed, watched: done }), {
    remainingMin: whole(needed - done),
  });
}

/** Why “no fault found” does not hold; null while the fault stayed away long enough. */
export const whyNotQuiet = firstOf(faultNeverSeen, longEnoughQuiet);

const withRemedy = (record: TriageRecord, event: EventOf<'chooseRemedy'>): TriageRecord => ({
  ...record,
  remedy: event.remedy,
  quietProof: event.outcome.quietProof,
});

export const settleNoFaultFound = rule('chooseRemedy', {
  ready: firstOf(noWatchRuns, chainAsItWas, whyNotQuiet),
  refuse: (_record, event) =>
    event.remedy.kind === 'noFaultFound' ? null : because('not-allowed-now', message('remedyNeedsCulprit')),
  outcome: (record) => ({ quietProof: quietProofOf(record) }),
  apply: withRemedy,
});

export const chooseRemedy = rule('chooseRemedy', {
  ready: chainAsItWas,
  refuse: (_record, event) => {
    const { remedy } = event;
    if (remedy.kind === 'noFaultFound') {
      return because('not-allowed-now', message('faultWasFound'));
    }
    const latest = Date.parse(momentOf(event)) + clockToleranceMin * 60_000;
    return remedy.kind === 'workaround' && Date.parse(remedy.acceptedAt) > latest
      ? because('time-out-of-order', message('acceptanceInFuture'))
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
  ready: firstOf(noWatchRuns, (record) =>
    record.culprit === null ? null : because('not-allowed-now', message('culpritIsNamed')),
  ),
  apply: dropRemedy,
});

export const withdrawRemedy = rule('withdrawRemedy', {
  ready: firstOf(noWatchRuns, (record) =>
    record.culprit === null ? because('not-allowed-now', message('noCulpritNamed')) : null,
  ),
  apply: dropRemedy,
});

export const finishRemedy = rule('finishRemedy', {
  refuse: (_record, { installed = [], chain }) => {
    const place = installed.map(placeOfPart).find((at) => chain !== undefined && !placeExists(chain, at));
    return place === undefined ? null : because('unknown-reference', message('placeNotInChain'), { place });
  },
  apply: (record, event) => ({
    ...record,
    asLeft: {
      chainVersion: event.asLeftChainVersion,
      watchesBefore: record.watches.length,
      ...(event.chain === undefined ? {} : { chain: event.chain }),
      ...signed(event),
    },
  }),
});

export const close = rule('close', {
  ready: firstOf(chainAsItWas, noWatchRuns),
  refuse: (record, event) => refuseClosing(record, event.override !== null),
  outcome: (record, command) => ({
    proof: closingProof(record),
    followUpBy: record.remedy?.kind === 'onSuspicion' ? daysAfter(momentOf(command), followUpDays) : null,
  }),
  apply: (record, event) => ({
    ...record,
    closedAt: event.at,
    followUp:
      event.outcome.followUpBy === null
        ? null
        : { askBy: event.outcome.followUpBy, since: event.at, answers: [] },
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
      : because('not-allowed-now', message('faultCameAfterRemedy', { occurrences: seen }));
  }
  // Neither claims that the fault is gone.
  if (overridden || record.remedy?.kind === 'noFaultFound' || record.remedy?.kind === 'onSuspicion')
    return null;
  const { verdict, needed, reasons } = judgeWatches(record, watches);
  if (verdict === 'cleared') return null;
  const remaining = needed?.mode === 'time' ? { remainingMin: whole(needed.remainingMin) } : {};
  return because('watch-record-too-short', message('remedyNotShown', { reasons }), remaining);
}

/** The chain as the next round meets it: with the parts that the repair put in. */
function foundNow({ asFound, asLeft }: TriageRecord): TriageRecord['asFound'] {
  if (asLeft?.chain === undefined) return asFound;
  const { chainVersion, chain, at, by } = asLeft;
  return { chainVersion, chain, at, by };
}

const startOver = (
  record: TriageRecord,
  event: TriageEvent & { reason: string },
  because: 'faultCameBack' | 'reopened',
  watchIds: string[],
): TriageRecord => {
  const known = withOutcomeOfChoice(record, event, 'cameBack');
  return { ...newRound(setAside(known, event, event.reason, because), watchIds), asFound: foundNow(record) };
};

export const faultCameBack = rule('faultCameBack', {
  ready: firstOf(noWatchRuns, (record) =>
    occurrencesIn(verifyWatches(record)).length > 0 || reportsSinceRemedy(record).length > 0
      ? null
      : because('no-occurrence', message('recordFaultFirst')),
  ),
  outcome: (record) => ({ watchIds: verifyWatches(record).map(({ id }) => id) }),
  apply: (record, event) => startOver(record, event, 'faultCameBack', event.outcome.watchIds),
});

const msPerDay = 86_400_000;

export const reopen = rule('reopen', {
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
    ? because('reopen-too-late', message('reopenTooLate', { days: reopenDays }))
    : null;
}
