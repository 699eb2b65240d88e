import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { ChangeRecord, TriageRecord } from '../../../shared/contract/triage.ts';
import { changeCatalogue } from '../../../shared/isolation/change-catalogue.ts';
import { doneTo } from '../../../shared/isolation/change-places.ts';
import { message } from '../../../shared/message/message.ts';
import { namedChange } from '../../../shared/message/named-change.ts';
import { type CompleteCommandOf, type EventOf, momentOf } from '../events.ts';
import { signed } from '../record.ts';
import { refuseUnknownPlace } from './culprit.ts';
import { mayStay, whyNotDescribed } from './described.ts';
import { because, type Cause } from './refusal.ts';
import { clockToleranceMin, firstOf, noChangeOpen, noWatchRuns, rule } from './rule.ts';

/**
 * A change that was made before arrival, or without declaring it, at the time at which it was made. It stays one change
 * at a time: what was in place beside another one can't be entered.
 */
type EnterLateChange = CompleteCommandOf<'enterLateChange'>;

const chainIsRecorded = (record: TriageRecord): Cause | null =>
  record.asFound === null ? because('not-allowed-now', message('recordAsFoundFirst')) : null;

function refuseTimes({ madeAt, undoneAt, ...command }: EnterLateChange): Cause | null {
  const latest = Date.parse(momentOf(command)) + clockToleranceMin * 60_000;
  if (Date.parse(undoneAt ?? madeAt) > latest)
    return because('time-out-of-order', message('lateChangeInFuture'));
  return undoneAt !== null && Date.parse(undoneAt) < Date.parse(madeAt)
    ? because('time-out-of-order', message('undoneBeforeMade'))
    : null;
}

/** It has to be said what it was; an organisation's own kind is made to the kind of place that it says. */
function refuseKind(command: EnterLateChange): Cause | null {
  const { target: place, known } = command;
  const own = known?.own ?? null;
  const isThere = own === null || own.actsOn === place.kind;
  const why =
    whyNotDescribed(command) ?? (isThere ? null : message(doneTo[own.actsOn], { change: { own: own.name } }));
  return why === null ? null : because('change-not-applicable', why, { place });
}

type Ending = 'applied' | 'kept';
const never = Number.POSITIVE_INFINITY;

/** A change that was in place at some time of the same span; what stays for good is part of the chain from then on. */
function besideAnother(
  record: TriageRecord,
  { madeAt, undoneAt }: EnterLateChange,
  stillThere: Ending,
): ChangeRecord | null {
  const from = Date.parse(madeAt);
  const until = undoneAt !== null ? Date.parse(undoneAt) : stillThere === 'kept' ? from : never;
  return (
    record.changes.find(({ appliedAt, finishedAt }) => {
      if (appliedAt === null) return false;
      return Date.parse(appliedAt) < until && (finishedAt === null || Date.parse(finishedAt) > from);
    }) ?? null
  );
}

function refuseLate(record: TriageRecord, command: EnterLateChange, stillThere: Ending): Cause | null {
  if (record.changes.some(({ id }) => id === command.changeId))
    return because('already-exists', message('changeIdTaken'));
  const cause = refuseUnknownPlace(record, command.target) ?? refuseKind(command) ?? refuseTimes(command);
  const other = cause === null ? besideAnother(record, command, stillThere) : null;
  if (other === null) return cause;
  const chain = record.asFound?.chain;
  const place = chain === undefined ? null : namedPlace(chain, other.target);
  return because(
    'time-out-of-order',
    message('lateChangeBesideAnother', { change: namedChange(other), place }),
    {
      place: other.target,
    },
  );
}

function outcomeOf(command: EnterLateChange, stillThere: Ending) {
  const { kind, madeAt, undoneAt, known } = command;
  const { plainCorrection, canBeUndone, showsCulprit } = changeCatalogue[kind];
  const own = known?.own ?? null;
  const facts = { diagnostic: !mayStay(command), plainCorrection, canBeUndone, showsCulprit, own };
  if (undoneAt !== null) return { ...facts, status: 'restored' as const, finishedAt: undoneAt };
  return { ...facts, status: stillThere, finishedAt: stillThere === 'kept' ? madeAt : null };
}

/** Among the others in the order in which they were made. */
function withLate(record: TriageRecord, event: EventOf<'enterLateChange'>): TriageRecord {
  const { changeId, kind, target, detail, madeAt, madeBy, seen, outcome } = event;
  const change: ChangeRecord = {
    id: changeId,
    round: record.round,
    kind,
    target,
    detail,
    expected: '',
    settings: [],
    ...outcome,
    declaredAt: madeAt,
    appliedAt: madeAt,
    judgement: null,
    earlierJudgements: [],
    closingNote: null,
    oneOfTwo: null,
    enteredLate: { madeBy, seen, at: signed(event).at },
    by: event.by,
  };
  const changes = [...record.changes, change].sort(
    (a, b) => Date.parse(a.declaredAt) - Date.parse(b.declaredAt),
  );
  return { ...record, changes };
}

const ready = firstOf(noWatchRuns, noChangeOpen, chainIsRecorded);

/** It is over, or stays for good. */
export const enterLateChange = rule('enterLateChange', {
  ready,
  refuse: (record, command) =>
    refuseLate(record, command, 'kept') ??
    (command.undoneAt === null && !mayStay(command)
      ? because('change-cannot-stay', message('lateDiagnosticStillThere'), { place: command.target })
      : null),
  outcome: (_record, command) => outcomeOf(command, 'kept'),
  apply: withLate,
});

/** It is still in place where changes are tested: it waits for its retest and its end like any other. */
export const enterOpenLateChange = rule('enterLateChange', {
  ready,
  refuse: (record, command) =>
    command.undoneAt === null
      ? refuseLate(record, command, 'applied')
      : because('not-allowed-now', message('noChangeInPlace')),
  outcome: (_record, command) => outcomeOf(command, 'applied'),
  apply: withLate,
});
