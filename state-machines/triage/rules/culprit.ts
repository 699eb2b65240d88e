import { placeExists } from '../../../shared/chain/place.ts';
import type { Place } from '../../../shared/contract/chain.ts';
import type {
  ChangeRecord,
  Culprit,
  SetAside,
  TriageRecord,
  WorkingState,
} from '../../../shared/contract/triage.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import type { TriageEvent } from '../events.ts';
import { changesOfRound, filed, isBaselineComplete, occurrencesOf, openChange, signed } from '../record.ts';
import { because, type Cause } from './refusal.ts';
import { chainAsItWas, firstOf, noWatchRuns, rule } from './rule.ts';
import { sidesHoldOrGivenUp } from './sides.ts';

/** Why a change can't show the culprit; null when its retest says that it can. */
export function whyNoProof({ showsCulprit, status, judgement }: ChangeRecord): Message | null {
  if (status !== 'restored' && status !== 'kept') return message('changeNotFinished');
  if (!showsCulprit) return message('changeShowsNoCulprit');
  if (judgement === null) return message('changeNotRetested');
  if (judgement.verdict !== 'cleared') return message('retestSaid', { verdict: judgement.verdict });
  return judgement.attributable ? null : message('retestNotAttributable');
}

/** Refuses a place that isn't in the chain as found. */
export const refuseUnknownPlace = (record: TriageRecord, place: Place): Cause | null =>
  record.asFound === null || placeExists(record.asFound.chain, place)
    ? null
    : because('unknown-reference', message('placeNotInChain'), { place });

export const nameCulprit = rule('nameCulprit', {
  ready: firstOf(chainAsItWas, noWatchRuns, (record) =>
    changesOfRound(record).some((change) => whyNoProof(change) === null)
      ? null
      : because('retest-missing-or-weak', message('nothingClearedYet')),
  ),
  refuse: (record, event) => {
    const change = changesOfRound(record).find(({ id }) => id === event.changeId);
    if (change === undefined) return because('unknown-reference', message('changeNotInRound'));
    const why = whyNoProof(change);
    if (why !== null) return because('retest-missing-or-weak', why, { place: change.target });
    return refuseUnknownPlace(record, event.place) ?? refuseUnconfirmed(record, event, change);
  },
  apply: (record, event) => ({
    ...record,
    culprit: {
      place: event.place,
      explanation: event.explanation,
      changeId: event.changeId,
      confirmation: event.confirmation,
      namedBy: 'technician',
      ...signed(event),
    },
  }),
});

/** Refuses a culprit whose change was put back and of which no watch saw the fault return, unless nobody watched. */
export function refuseUnconfirmed(
  record: TriageRecord,
  { confirmation }: Pick<Culprit, 'confirmation'>,
  change: ChangeRecord,
): Cause | null {
  if (confirmation.kind === 'notDone') return null;
  const watch = record.watches.find(({ id }) => id === confirmation.watchId);
  if (watch === undefined) return because('unknown-reference', message('watchUnknown'));
  if (watch.purpose !== 'confirm' || watch.changeId !== change.id) {
    return because('confirmation-missing', message('watchNotAfterPutBack'));
  }
  return occurrencesOf(watch).length > 0
    ? null
    : because('confirmation-missing', message('faultDidNotReturn'));
}

/** The record with culprit, remedy and closing cleared, and kept among what did not hold. */
export function setAside(
  record: TriageRecord,
  event: TriageEvent,
  reason: string,
  because: SetAside['because'],
): TriageRecord {
  const { culprit, remedy, quietProof, asLeft, closing } = record;
  if (culprit === null && remedy === null) return record;
  const entry: SetAside = { culprit, remedy, quietProof, asLeft, closing, because, reason, ...filed(event) };
  return {
    ...record,
    culprit: null,
    remedy: null,
    quietProof: null,
    asLeft: null,
    closing: null,
    setAside: [...record.setAside, entry],
  };
}

/** Where the work stands by what is in the record, without a culprit. */
export function stageWithoutCulprit(record: TriageRecord): WorkingState {
  if (!isBaselineComplete(record)) return 'baseline';
  const open = openChange(record);
  if (open?.status === 'declared') return 'substitute.declared';
  if (open !== null) return open.judgement === null ? 'substitute.applied' : 'substitute.judged';
  if (!record.reproductionAccepted) return 'reproduce';
  return sidesHoldOrGivenUp(record) === null ? 'substitute.ready' : 'locateSide';
}

export const withdrawCulprit = rule('withdrawCulprit', {
  outcome: (record) => ({ resumeAt: stageWithoutCulprit(record) }),
  apply: (record, event) => ({
    ...setAside(record, event, event.reason, 'culpritWithdrawn'),
    resumeAt: event.outcome.resumeAt,
  }),
});
