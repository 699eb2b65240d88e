import type { Consequence, EventOf, Outcomes, TriageEvent } from '../../events.ts';
import type { Opening } from '../../opening.ts';
import { asWritten } from './as-written.ts';
import { attributionOf } from './attribution.ts';
import { chainAsToday } from './chain-as-today.ts';
import { type ChangeKind, changeKinds } from './change-kinds.ts';
import {
  baselineWatches,
  type Change,
  changeInPlace,
  changeToConfirm,
  minutesOf,
  type momentOf,
  occurrencesIn,
  openChange,
  type RecordThen,
  retestWatches,
  startOf,
  verifyWatches,
} from './record.ts';
import { watchNotSaid } from './record-as-today.ts';
import { judgeWatches, usable } from './retest.ts';
import { answerAt, stageWithoutCulprit } from './sides.ts';
import { type MomentThen, type SymptomThen, symptomAsToday } from './symptom.ts';

type WithoutOutcome<Event> = Event extends { outcome: unknown } ? Omit<Event, 'outcome'> : Event;
type AuditCounts = { mustFix: number; shouldFix: number; firmwareBelowLevel: string[] };
/**
 * An event of version 1: a command that was accepted. What was decided on it was not stored: it was computed again on
 * every replay. Of an audit it held how many findings there were.
 */
export type EventThen =
  | WithoutOutcome<Exclude<TriageEvent, Consequence | EventOf<'reviewAudit' | 'amendIntake'>>>
  | (Omit<EventOf<'amendIntake'>, 'symptom'> & { symptom: SymptomThen })
  | (WithoutOutcome<EventOf<'reviewAudit'>> & AuditCounts);
type EventThenOf<Type extends EventThen['type']> = Extract<EventThen, { type: Type }>;

/**
 * An opening of version 1: the figures came without the revision that they are from, and when the fault shows was told
 * beside the symptom.
 */
export type OpeningThen = Omit<Opening, 'settings' | 'symptom'> & {
  settings: Omit<Opening['settings'], 'revision'>;
  symptom: SymptomThen;
  moment?: MomentThen | undefined;
};
export const openingAsToday = ({ moment, ...opening }: OpeningThen): Opening => ({
  ...opening,
  settings: { revision: 'notRecorded', ...opening.settings },
  symptom: symptomAsToday(opening.symptom, moment),
});

/** Where a ticket stood before an event. */
export type Before = { state: string; record: RecordThen };

/** Commands that version 1 did not know. */
type Later =
  | 'leaveInPlace'
  | 'endUnattended'
  | 'waitFor'
  | 'enterLateChange'
  | 'replaceOnSuspicion'
  | 'recordFollowUp';

/** What version 1 decided on an event, computed as it did, and held as it is held today. */
const outcomes: {
  [Type in Exclude<keyof Outcomes, Later>]: (before: Before, event: EventThenOf<Type>) => Outcomes[Type];
} = {
  reviewAudit: (_before, { mustFix, shouldFix, firmwareBelowLevel }) => ({
    findings: { notRecorded: true, mustFix, shouldFix },
    firmwareBelowLevel,
  }),
  startWatch: ({ state, record }, event) => ({
    menuDeviceId: null,
    changeId: null,
    ...aboutWatch(state, record, event.menuDeviceId),
    trigger: triggerOf(record, event),
    triggerKind: null,
    startedAt: startOf(record, event),
  }),
  concludeSide: ({ record }, { deviceId }) => {
    const { side, watchIds, occurrences } = there(answerAt(record, deviceId));
    return { side, proof: { kind: 'menu', watchIds, occurrences } };
  },
  // Version 1 knew no looks.
  recordLook: () => ({ changeId: null, before: null }),
  declareChange: ({ record }, event) => ({
    declaredAt: startOf(record, event),
    ...changeKinds[event.kind as ChangeKind],
    own: null,
  }),
  applyChange: ({ record }, event) => ({
    changeId: there(openChange(record)).id,
    appliedAt: startOf(record, event),
  }),
  withdrawChange: finishing,
  restoreChange: finishing,
  keepChange: (before, event) => ({ ...finishing(before, event), oneOfTwo: null, watchIds: [] }),
  judgeRetest: ({ record }, { override }) => {
    const change = there(openChange(record));
    const judgement = judgementOf(record, change);
    const byHand =
      override === null ? {} : { verdict: override.verdict, override: { reason: override.reason } };
    return { changeId: change.id, judgement: { ...judgement, ...byHand } };
  },
  withdrawCulprit: ({ record }) => ({ resumeAt: stageWithoutCulprit(record) }),
  chooseRemedy: ({ record }, { remedy }) => ({
    quietProof: remedy.kind === 'noFaultFound' ? quietProof(record) : null,
  }),
  close: () => ({ proof: 'notRecorded', followUpBy: null }),
  faultCameBack: ({ record }) => ({ watchIds: verifyWatches(record).map(({ id }) => id) }),
  escalate: ({ record }, { question, waivers }) => ({
    version: record.escalations.length + 1,
    question,
    waivers,
    waived: 'notRecorded',
    takenBy: null,
  }),
  resubmit: ({ record }, { question, waivers }) => {
    const last = record.escalations.at(-1);
    const earlier = last?.waivers ?? [];
    return {
      version: record.escalations.length + 1,
      question: question ?? last?.question ?? '',
      waivers: [...earlier.filter(({ item }) => !waivers.some((one) => one.item === item)), ...waivers],
      waived: 'notRecorded',
      takenBy: last?.takenBy ?? null,
    };
  },
};

/** What version 1 was sure to find, since it had accepted the event. */
function there<Value>(value: Value | null): Value {
  if (value === null) throw new TypeError('version 1 accepted no such event on this record');
  return value;
}

type Moment = Parameters<typeof momentOf>[0];
function finishing({ record }: Before, event: Moment) {
  return { changeId: there(openChange(record)).id, finishedAt: startOf(record, event) };
}

type AboutWatch = Pick<Outcomes['startWatch'], 'purpose'> & Partial<Outcomes['startWatch']>;
function aboutWatch(state: string, record: RecordThen, menuDeviceId: string | null): AboutWatch {
  switch (state) {
    case 'reproduce':
      return { purpose: 'reproduce' };
    case 'locateSide':
      return { purpose: 'side', menuDeviceId };
    case 'substitute.ready':
      return { purpose: 'confirm', changeId: changeToConfirm(record)?.id ?? null };
    case 'verify':
      return { purpose: 'verify' };
    default:
      return { purpose: 'retest', changeId: changeInPlace(record)?.id ?? null };
  }
}

const triggerOf = ({ watches }: RecordThen, { mode, trigger }: EventThenOf<'startWatch'>): string | null =>
  mode === 'time' ? null : (trigger ?? watches.findLast((watch) => watch.trigger !== null)?.trigger ?? null);

function judgementOf(record: RecordThen, change: Change): Outcomes['judgeRetest']['judgement'] {
  const watches = usable(retestWatches(record, change.id));
  const { verdict, riskOfBeingFooled, reasons, warnings } = judgeWatches(record, watches);
  const attribution = attributionOf(record, change, record.asFound?.chain ?? null);
  return {
    verdict,
    computed: verdict,
    riskOfBeingFooled,
    level: record.settings.risk,
    needed: 'notRecorded',
    figures: 'notRecorded',
    watchedMin: watches.reduce((total, watch) => total + minutesOf(watch), 0),
    tries: watches.reduce((total, watch) => total + watch.tries, 0),
    occurrences: occurrencesIn(watches).length,
    reported: null,
    reasons: reasons.map(asWritten),
    warnings: [...warnings, ...attribution.warnings].map(asWritten),
    override: null,
    attributable: attribution.attributable,
    differences: attribution.differences,
  };
}

const quietProof = (record: RecordThen): Outcomes['chooseRemedy']['quietProof'] => ({
  watchedMin: baselineWatches(record)
    .filter(({ mode }) => mode === 'time')
    .reduce((total, watch) => total + minutesOf(watch), 0),
  neededMin: 'notRecorded',
  counted: null,
  level: record.settings.risk,
  figures: 'notRecorded',
});

/** Withdrawing the only occurrence undid the reproduction, where version 1 allowed it at all. */
function undoesReproduction(record: RecordThen, occurrenceId: string): boolean {
  const seen = occurrencesIn(baselineWatches(record));
  return record.reproductionAccepted && seen.length === 1 && seen[0]?.id === occurrenceId;
}

/** What version 1's event held that today's has elsewhere. */
const moved: readonly string[] = [
  'mustFix',
  'shouldFix',
  'firmwareBelowLevel',
] satisfies (keyof AuditCounts)[];
const contentOf = (event: EventThen): object =>
  Object.fromEntries(Object.entries(event).filter(([name]) => !moved.includes(name)));

/**
 * An event of version 1 as today's: one, or two where it did two things.
 *
 * @param before where the ticket stood, by today's record of all that came before
 */
export function eventsAsToday(before: Before, event: EventThen): TriageEvent[] {
  const decide = (outcomes as Record<string, ((before: Before, event: EventThen) => object) | undefined>)[
    event.type
  ];
  const outcome = decide === undefined ? {} : { outcome: decide(before, event) };
  const chain = event.type === 'recordAsFound' ? { chain: chainAsToday(event.chain) } : {};
  const today = { ...contentOf(event), ...chain, ...outcome } as unknown as TriageEvent;
  if (event.type === 'startWatch') return [{ ...(today as EventOf<'startWatch'>), ...watchNotSaid }];
  if (event.type === 'amendIntake') {
    const { pattern, onlyWith } = before.record.symptom;
    return [{ ...event, symptom: { ...symptomAsToday(event.symptom), pattern, onlyWith } }];
  }
  if (event.type !== 'withdrawOccurrence') return [today];
  if (!undoesReproduction(before.record, event.occurrenceId)) return [today];
  const { at, by, role, happenedAt } = event;
  const signature = { at, by, role, ...(happenedAt === undefined ? {} : { happenedAt }) };
  return [today, { type: 'reproductionRevised', ...signature }];
}
