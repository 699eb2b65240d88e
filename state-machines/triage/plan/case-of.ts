import { placeExists, samePlace } from '../../../shared/chain/place.ts';
import type { Place } from '../../../shared/contract/chain.ts';
import type { ChangeRecord, TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import { seenIn } from '../../../shared/isolation/fault-rate.ts';
import type { Case, Result, Trust, WatchRecord } from '../../../shared/isolation/index.ts';
import { reportedAsWatched } from '../../../shared/isolation/reported.ts';
import { counted } from '../counting.ts';
import { chainAsSeen } from '../looks.ts';
import { cameMoreRarely, changesOfRound, occurrencesOf, retestWatches, watchesFor } from '../record.ts';
import { baselineKind, usable, watchRecordOf } from '../retest.ts';
import { reportedBaseline } from '../unattended.ts';
import type { Known } from './known.ts';
import { lookResults, readingResults } from './look-results.ts';

/** The case as the ranking of suspects takes it: this round of the record, with what is known beside it. */
export function caseOf(record: TriageRecord, known: Known): Case {
  const { intake, findings, headroom, facts, today } = known;
  const chain = chainAsSeen(record, known.chain);
  return {
    chain,
    symptom: record.symptom,
    affectedSources: affectedSourcesOf(record, intake.affectedSources),
    affectedDisplays: intake.affectedDisplays,
    content: intake.content,
    workedBefore: intake.workedBefore,
    whatChanged: (record.whatChanged?.answers ?? []).map(({ kind }) => ({ kind })),
    findings: findings.map(({ rule, place, severity, text }) => ({ rule, place, severity, text })),
    headroom,
    today,
    baseline: baselineOf(record) ?? reportedOf(record, known),
    results: [
      ...resultsOf(record),
      ...readingResults(record, known),
      ...lookResults(record, chain),
      ...facts,
    ],
  };
}

/** The sources that show it: those that were told, else the one that it shows with and not without. */
function affectedSourcesOf(
  { symptom: { onlyWith } }: TriageRecord,
  told: readonly string[],
): readonly string[] {
  if (told.length > 0 || onlyWith?.kind !== 'source' || onlyWith.deviceId === null) return told;
  return [onlyWith.deviceId];
}

/** What was reported of the chain as it is, weighed; where nobody watched, it says how often the fault comes. */
function reportedOf(record: TriageRecord, { today }: Known): WatchRecord | null {
  const reported = reportedBaseline(record, `${today}T23:59:59.999Z`);
  return reported.occurrences > 0 && reported.days > 0 ? reportedAsWatched(reported) : null;
}

/** The watches before any change that count alike and in which the fault was seen most; null while nothing was watched. */
export function baselineOf(record: TriageRecord): WatchRecord | null {
  const watches = baselineKind(record);
  return watches.length === 0 ? null : watchRecordOf(record, watches);
}

/** What was seen in this round, in the order in which it was. */
export const resultsOf = (record: TriageRecord): Result[] =>
  datedResultsOf(record).map(({ result }) => result);

/** A result, and when it was there (UTC, ISO 8601): with its occurrence, or at the end of its watch. */
export type Dated = { at: string; result: Result };

/** As `resultsOf`, each with its moment. */
export function datedResultsOf(record: TriageRecord): Dated[] {
  const dated = [
    ...watchesFor(record, 'side').flatMap(menuResults),
    ...changesOfRound(record).flatMap((change) =>
      changeResults(record, change).map((each) => trusted(each, trustIn(change))),
    ),
    ...earlierResults(record),
  ];
  return dated.sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
}

/** A result that counts for less; with null, in full. */
const trusted = ({ at, result }: Dated, trust: Trust | null): Dated =>
  trust === null ? { at, result } : { at, result: { ...result, trust } };

function trustIn(change: ChangeRecord): Trust | null {
  if (change.enteredLate !== null) return 'enteredLate';
  return cameMoreRarely(change) ? 'perhapsTwo' : null;
}

/**
 * What earlier rounds learnt and still holds, at a discount: which way menus pointed, what did not take the fault away,
 * and the quiet with changes in place. Quiet convicts no part that was put right since.
 */
function earlierResults(record: TriageRecord): Dated[] {
  const chain = record.asFound?.chain;
  if (chain === undefined) return [];
  const earlier = Array.from({ length: record.round - 1 }, (_, before) => ({ ...record, round: before + 1 }));
  const repaired = placesPutRight(record);
  const holds = (result: Result): boolean =>
    isOfAPart(result) &&
    placeExists(chain, placeOf(result)) &&
    (acquits(result) || !repaired.some((place) => samePlace(place, placeOf(result))));
  return earlier
    .flatMap((then) => {
      const trust = hadTwoFaults(record, then.round) ? 'perhapsTwo' : 'earlierRound';
      return [
        ...watchesFor(then, 'side')
          .flatMap(menuResults)
          .map((each) => trusted(each, trust)),
        ...changesOfRound(then).flatMap((change) =>
          // With the one put right in place, the fault that still came is the other one.
          changeResults(then, change).map((each) =>
            trusted(each, change.oneOfTwo === null ? trust : 'earlierRound'),
          ),
        ),
      ];
    })
    .concat(remediesInVain(record))
    .filter(({ result }) => holds(result));
}

/**
 * A remedy does at least what the change did that showed its culprit. Where the fault came on with it in place, that is as
 * if it had come with the change: it clears what was put right.
 */
const remediesInVain = ({ changes, setAside }: TriageRecord): Dated[] =>
  setAside.flatMap(({ because, culprit, asLeft, at }) => {
    const shownBy = changes.find(({ id }) => id === culprit?.changeId);
    if (because !== 'faultCameBack' || asLeft === null || shownBy === undefined) return [];
    const { kind: test, target, own } = shownBy;
    const result = { kind: 'outcome', test, target, own, outcome: 'persists' } as const;
    return [trusted({ at, result }, 'earlierRound')];
  });

/** Whether one of perhaps two faults was put right at the end of a round, or later. */
const hadTwoFaults = ({ changes }: TriageRecord, round: number): boolean =>
  changes.some(({ oneOfTwo, round: until }) => oneOfTwo !== null && until >= round);

type OfAPart = Extract<Result, { kind: 'menu' | 'outcome' | 'test' | 'putBack' }>;
const isOfAPart = (result: Result): result is OfAPart =>
  result.kind === 'menu' || result.kind === 'outcome' || result.kind === 'test' || result.kind === 'putBack';

/** Where something was kept, or a culprit had its remedy, in an earlier round. */
const placesPutRight = ({ changes, setAside, round }: TriageRecord): Place[] => [
  ...changes.flatMap((change) => (change.round < round && change.status === 'kept' ? [change.target] : [])),
  ...setAside.flatMap(({ culprit, remedy }) => (culprit === null || remedy === null ? [] : [culprit.place])),
];

/** Whether the fault was there, so that the result takes suspicion away from what was changed. */
function acquits(result: OfAPart): boolean {
  if (result.kind === 'outcome') return result.outcome === 'persists';
  return result.kind === 'menu' || (result.kind === 'test' && seenIn(result.watch) > 0);
}

const placeOf = (result: OfAPart): Place =>
  result.kind === 'menu' ? { kind: 'device', deviceId: result.deviceId } : result.target;

const menuResults = (watch: Watch): Dated[] =>
  occurrencesOf(watch).flatMap(({ at, menu }) =>
    menu === null || watch.menuDeviceId === null
      ? []
      : [{ at, result: { kind: 'menu', deviceId: watch.menuDeviceId, answer: menu } }],
  );

/**
 * What one change showed. Where settings read before and after differ in more than was declared, nothing can be put
 * down to it, and a verdict given by hand counts as the technician says.
 */
function changeResults(record: TriageRecord, change: ChangeRecord): Dated[] {
  const { kind: test, target, own, judgement, enteredLate } = change;
  if (judgement?.attributable === false) return [];
  if (enteredLate !== null && judgement === null) return toldOf(change, enteredLate);
  const retests = counted(record, usable(retestWatches(record, change.id)));
  const confirms = counted(
    record,
    usable(watchesFor(record, 'confirm').filter(({ changeId }) => changeId === change.id)),
  );
  const putBack = confirms.map(
    (watch): Dated => ({
      at: endOf(watch),
      result: { kind: 'putBack', test, target, own, watch: watchRecordOf(record, [watch]) },
    }),
  );
  if (judgement?.override != null && judgement.verdict !== 'inconclusive') {
    return [
      { at: judgement.at, result: { kind: 'outcome', test, target, own, outcome: judgement.verdict } },
      ...putBack,
    ];
  }
  const watched = retests.map(
    (watch): Dated => ({
      at: endOf(watch),
      result: { kind: 'test', test, target, own, watch: watchRecordOf(record, [watch]) },
    }),
  );
  return [...watched, ...unattendedResults(change), ...putBack];
}

/** What came in while a change was left in, weighed as reported. */
function unattendedResults({ kind: test, target, judgement }: ChangeRecord): Dated[] {
  const reported = judgement?.reported ?? null;
  if (judgement === null || reported === null || reported.days === 0) return [];
  const { minutes } = reportedAsWatched({ days: reported.days, occurrences: 0 });
  const watch: WatchRecord = { mode: 'time', minutes, occurrences: reported.reported + reported.logged };
  return [{ at: judgement.at, result: { kind: 'test', test, target, watch } }];
}

/** What whoever made a change that nobody had declared says of it. */
function toldOf(
  { kind: test, target, own, appliedAt, declaredAt, finishedAt }: ChangeRecord,
  { seen }: NonNullable<ChangeRecord['enteredLate']>,
): Dated[] {
  if (seen === 'notKnown') return [];
  const outcome = seen === 'came' ? 'persists' : 'cleared';
  const at = finishedAt ?? appliedAt ?? declaredAt;
  return [{ at, result: { kind: 'outcome', test, target, own, outcome } }];
}

const endOf = (watch: Watch): string => watch.endedAt ?? watch.startedAt;
