import { findDevice } from '../../../shared/chain/graph.ts';
import type { ChangeRecord, Judgement, TriageRecord } from '../../../shared/contract/triage.ts';
import { changeCatalogue } from '../../../shared/isolation/change-catalogue.ts';
import { chanceOfTwoFaults } from '../../../shared/isolation/two-faults.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import { attributionOf } from '../attribution.ts';
import { whyNotApplicable } from '../changes/applicable.ts';
import type { CompleteCommand, EventOf } from '../events.ts';
import {
  cameMoreRarely,
  changeInPlace,
  type Judged,
  keptCure,
  minutesOf,
  occurrencesIn,
  openChange,
  replaceById,
  retestWatches,
  signed,
} from '../record.ts';
import { figuresOf, judgeWatches, usable } from '../retest.ts';
import { unattendedOf, withReported } from '../unattended.ts';
import { mayStay, whyNotDescribed } from './described.ts';
import { because, type Cause } from './refusal.ts';
import { newRound } from './rounds.ts';
import { firstOf, noChangeOpen, nothingUnattended, noWatchRuns, rule } from './rule.ts';
import { refuseTooEarly, startOf } from './timing.ts';

const withChange = (
  record: TriageRecord,
  changeId: string,
  change: (of: ChangeRecord) => ChangeRecord,
): TriageRecord => ({ ...record, changes: replaceById(record.changes, changeId, change) });

/** Which change a command finishes, and when. */
function finishing(record: TriageRecord, command: CompleteCommand) {
  return { changeId: theOpenChange(record).id, finishedAt: startOf(record, command) };
}

/** The open change; only for outcomes, which are computed where there is one. */
function theOpenChange(record: TriageRecord): ChangeRecord {
  const open = openChange(record);
  if (open === null) throw new Error('no change is open');
  return open;
}

const faultIsThere = (record: TriageRecord): Cause | null => {
  const cure = keptCure(record);
  return cure === null ? null : because('not-allowed-now', message('cureIsKept'), { place: cure.target });
};

export const declareChange = rule('declareChange', {
  ready: firstOf(noChangeOpen, noWatchRuns, faultIsThere),
  refuse: (record, event) => {
    if (record.changes.some(({ id }) => id === event.changeId)) {
      return because('already-exists', message('changeIdTaken'));
    }
    const own = event.known?.own ?? null;
    const why =
      whyNotDescribed(event) ?? whyNotApplicable(record, { kind: event.kind, target: event.target, own });
    if (why !== null) return because('change-not-applicable', why, { place: event.target });
    const chain = record.asFound?.chain;
    const unknown = event.settings.find(
      ({ deviceId }) => chain === undefined || findDevice(chain, deviceId) === undefined,
    );
    return unknown === undefined
      ? refuseTooEarly(record, event)
      : because('unknown-reference', message('deviceNotInChain', { device: unknown.deviceId }));
  },
  outcome: (record, command) => {
    const { plainCorrection, canBeUndone, showsCulprit } = changeCatalogue[command.kind];
    return {
      declaredAt: startOf(record, command),
      diagnostic: !mayStay(command),
      own: command.known?.own ?? null,
      plainCorrection,
      canBeUndone,
      showsCulprit,
    };
  },
  apply: (record, event) => ({
    ...record,
    changes: [
      ...record.changes,
      {
        id: event.changeId,
        round: record.round,
        kind: event.kind,
        target: event.target,
        detail: event.detail,
        expected: event.expected,
        settings: event.settings,
        status: 'declared',
        ...event.outcome,
        appliedAt: null,
        finishedAt: null,
        judgement: null,
        earlierJudgements: [],
        closingNote: null,
        oneOfTwo: null,
        enteredLate: null,
        by: event.by,
      },
    ],
  }),
});

const isDeclared = (record: TriageRecord): Cause | null => {
  const open = openChange(record);
  if (open === null) return because('no-change-open', message('noChangeDeclared'));
  return open.status === 'declared' ? null : because('not-allowed-now', message('changeMadeAlready'));
};

const isInPlace = (record: TriageRecord): Cause | null =>
  changeInPlace(record) === null ? because('no-change-open', message('noChangeInPlace')) : null;

export const withdrawChange = rule('withdrawChange', {
  ready: isDeclared,
  refuse: refuseTooEarly,
  outcome: finishing,
  apply: (record, event) =>
    withChange(record, event.outcome.changeId, (change) => ({
      ...change,
      status: 'withdrawn',
      finishedAt: event.outcome.finishedAt,
      closingNote: event.reason,
    })),
});

export const applyChange = rule('applyChange', {
  ready: isDeclared,
  refuse: refuseTooEarly,
  outcome: (record, command) => ({
    changeId: theOpenChange(record).id,
    appliedAt: startOf(record, command),
  }),
  apply: (record, { outcome: { changeId, appliedAt } }) =>
    withChange(record, changeId, (change) => ({ ...change, status: 'applied', appliedAt })),
});

export const judgeRetest = rule('judgeRetest', {
  ready: firstOf(noWatchRuns, nothingUnattended, isInPlace, (record) => {
    const change = changeInPlace(record);
    return change === null || !wasRetested(record, change)
      ? because('retest-missing', message('watchWithChangeFirst'))
      : null;
  }),
  outcome: (record, { override }) => {
    const change = theOpenChange(record);
    const judgement = judgementSoFar(record, change);
    const byHand =
      override === null ? {} : { verdict: override.verdict, override: { reason: override.reason } };
    return { changeId: change.id, judgement: { ...judgement, ...byHand } };
  },
  apply: (record, event) =>
    withChange(record, event.outcome.changeId, (change) => ({
      ...supersede(change, 'judgedAgain', event),
      status: 'judged',
      judgement: { ...event.outcome.judgement, ...signed(event) },
    })),
});

/** The change without its judgement, which is kept among the earlier ones. */
export function supersede(
  change: ChangeRecord,
  because: ChangeRecord['earlierJudgements'][number]['superseded']['because'],
  event: Parameters<typeof signed>[0],
): ChangeRecord {
  const { judgement, earlierJudgements } = change;
  if (judgement === null) return change;
  const earlier = { ...judgement, superseded: { because, ...signed(event) } };
  return { ...change, judgement: null, earlierJudgements: [...earlierJudgements, earlier] };
}

/** Whether anything says how the fault is with a change in place. */
export const wasRetested = (record: TriageRecord, { id }: ChangeRecord): boolean =>
  usable(retestWatches(record, id)).length > 0 || unattendedOf(record, id).length > 0;

/** What judging the retest now would say, override and signature apart. */
export function judgementSoFar(record: TriageRecord, change: ChangeRecord): Omit<Judgement, 'at' | 'by'> {
  const watches = usable(retestWatches(record, change.id));
  const { reasons, warnings, ...judged } = withReported(record, change, judgeWatches(record, watches));
  const attribution = attributionOf(record, change, record.asFound?.chain ?? null);
  return {
    ...judged,
    ...figuresOf(record),
    computed: judged.verdict,
    watchedMin: watches.reduce((total, watch) => total + minutesOf(watch), 0),
    tries: watches.reduce((total, watch) => total + watch.tries, 0),
    occurrences: occurrencesIn(watches).length,
    reasons,
    warnings: [...warnings, ...attribution.warnings],
    override: null,
    attributable: attribution.attributable,
    differences: attribution.differences,
  };
}

export const restoreChange = rule('restoreChange', {
  ready: firstOf(noWatchRuns, nothingUnattended, isInPlace, (record) => {
    const change = changeInPlace(record);
    return change === null || change.canBeUndone
      ? null
      : because('change-cannot-be-undone', message('cannotBePutBack'), { openChangeId: change.id });
  }),
  refuse: refuseTooEarly,
  outcome: finishing,
  apply: (record, event) => finish(record, event, 'restored'),
});

const keeping = (record: TriageRecord, why: (change: ChangeRecord) => Message | null): Cause | null => {
  const change = changeInPlace(record);
  const said = change === null ? null : why(change);
  return change === null || said === null
    ? null
    : because('change-cannot-stay', said, { place: change.target, openChangeId: change.id });
};

export const keepChange = rule('keepChange', {
  ready: firstOf(noWatchRuns, nothingUnattended, isInPlace, (record) => keeping(record, whyNotStay)),
  refuse: (record, command) =>
    command.oneOfTwo
      ? because('not-allowed-now', message('notOneOfTwoHere'))
      : refuseTooEarly(record, command),
  outcome: (record, command) => ({ ...finishing(record, command), oneOfTwo: null, watchIds: [] }),
  apply: (record, event) => finish(record, event, 'kept'),
});

/**
 * A change with which the fault still comes, and comes more rarely: it stays, and the round that begins is about the
 * other fault. The watches with the change in place are that round's reproduction.
 */
export const keepOneOfTwo = rule('keepChange', {
  ready: firstOf(noWatchRuns, nothingUnattended, isInPlace, (record) => keeping(record, whyNotOneOfTwo)),
  refuse: (record, command) =>
    command.oneOfTwo ? refuseTooEarly(record, command) : because('not-allowed-now', message('sayOneOfTwo')),
  outcome: (record, command) => {
    const change = theOpenChange(record);
    return {
      ...finishing(record, command),
      oneOfTwo: oneOfTwoBy(change),
      watchIds: usable(retestWatches(record, change.id)).map(({ id }) => id),
    };
  },
  apply: (record, event) => newRound(finish(record, event, 'kept'), event.outcome.watchIds),
});

/** That a change is one of perhaps two, by its judgement: with the chance of two faults, 0..1. */
export const oneOfTwoBy = ({ judgement }: Judged): NonNullable<ChangeRecord['oneOfTwo']> => ({
  chance: chanceOfTwoFaults(judgement?.riskOfBeingFooled ?? 1),
});

/** Why a change can't stay as one of perhaps two; null where the fault came more rarely with it, beyond the risk taken. */
export function whyNotOneOfTwo(change: Judged & Pick<ChangeRecord, 'diagnostic'>): Message | null {
  const { diagnostic, judgement } = change;
  if (diagnostic) return message('diagnosticMustGoBack');
  if (judgement === null) return message('changeNotRetested');
  if (!judgement.attributable) return message('retestNotAttributable');
  return cameMoreRarely(change) ? null : message('didNotClear');
}

function whyNotStay(change: ChangeRecord): Message | null {
  const { diagnostic, plainCorrection, judgement } = change;
  if (diagnostic) return message('diagnosticMustGoBack');
  if (plainCorrection) return null;
  if (judgement?.verdict !== 'cleared')
    return message(whyNotOneOfTwo(change) === null ? 'sayOneOfTwo' : 'didNotClear');
  return judgement.attributable ? null : message('curedByWhatUnknown');
}

function finish(
  record: TriageRecord,
  event: EventOf<'restoreChange'> | EventOf<'keepChange'>,
  status: 'restored' | 'kept',
): TriageRecord {
  const { changeId, finishedAt } = event.outcome;
  const closingNote = event.note === '' ? null : event.note;
  const oneOfTwo = event.type === 'keepChange' ? event.outcome.oneOfTwo : null;
  return withChange(record, changeId, (change) => ({ ...change, status, finishedAt, closingNote, oneOfTwo }));
}
