import canonicalize from 'canonicalize';
import type { ChangeRecord, SideObservation, TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import type { CompleteCommand, Consequence, ConsequenceType } from '../events.ts';
import {
  changeBeforeRound,
  changesOfRound,
  isBaseline,
  isShownAtAll,
  type Judged,
  retestWatches,
  runningWatch,
  standingSides,
} from '../record.ts';
import { judgementSoFar, oneOfTwoBy, wasRetested, whyNotOneOfTwo } from './changes.ts';
import { refuseUnconfirmed, stageWithoutCulprit, whyNoProof } from './culprit.ts';
import { findOccurrence } from './occurrences.ts';
import { whyNotQuiet } from './remedy.ts';
import { sideNow } from './sides.ts';

/** Which watch a command puts right; null for one that puts none right. */
function correctedWatch(record: TriageRecord, command: CompleteCommand): Watch | null {
  switch (command.type) {
    case 'withdrawOccurrence':
    case 'correctOccurrence':
      return findOccurrence(record, command.occurrenceId)?.watch ?? null;
    case 'confirmOccurrence':
    case 'voidWatch':
      return record.watches.find(({ id }) => id === command.watchId) ?? null;
    default:
      return null;
  }
}

type Revision = Consequence extends infer Each
  ? Each extends { type: ConsequenceType }
    ? Omit<Each, 'at' | 'by' | 'role' | 'happenedAt'>
    : never
  : never;

/**
 * What has to be decided again after a command was taken in, one thing at a time: asked again after each until there is
 * nothing left.
 *
 * @param record with the command, and what followed from it so far
 * @param then the record before the command
 */
export function decidedAnew(
  record: TriageRecord,
  command: CompleteCommand,
  then: TriageRecord,
): Revision | null {
  if (record.reproductionAccepted && !isShownAtAll(record)) {
    return { type: 'reproductionRevised' };
  }
  if (isToldOtherwise(record, then))
    return judgementRevised(record, () => () => true) ?? culpritRevised(record) ?? remedyRevised(record);
  if (command.type === 'recordLook' || command.type === 'withdrawLook')
    return sideRevised(record, restsOnLooks);
  if (command.type === 'withdrawReport' || command.type === 'occurrenceReported') {
    const rests: RestsOnIt =
      () =>
      ({ judgement }) =>
        judgement?.reported != null;
    return judgementRevised(record, rests) ?? culpritRevised(record);
  }
  if (command.type === 'endWatch') return culpritRevised(record);
  const watch = correctedWatch(record, command);
  if (watch === null) return null;
  return (
    sideRevised(record, restsOnWatch(watch)) ??
    judgementRevised(record, restingOn(watch)) ??
    culpritRevised(record) ??
    remedyRevised(record)
  );
}

const differ = (a: unknown, b: unknown): boolean => canonicalize(a) !== canonicalize(b);

const restsOnWatch =
  (watch: Watch) =>
  ({ deviceId, proof }: SideObservation): boolean =>
    proof.kind === 'menu' &&
    (proof.watchIds.includes(watch.id) || (watch.purpose === 'side' && watch.menuDeviceId === deviceId));
/** All that is not a menu that stayed; that a menu vanished tells a side by what was found of this menu. */
const restsOnLooks = ({ proof, side }: SideObservation): boolean =>
  proof.kind !== 'menu' || side === 'output';

function sideRevised(record: TriageRecord, restsOnIt: (side: SideObservation) => boolean): Revision | null {
  for (const { deviceId, side, proof } of standingSides(record).filter(restsOnIt)) {
    const outcome = sideNow(record, { deviceId, from: proof.kind });
    if (differ(outcome, { side, proof })) return { type: 'sideRevised', deviceId, outcome };
  }
  return null;
}

/** How a fault comes says how watches are counted, so that every verdict rests on it. */
const isToldOtherwise = ({ symptom: now }: TriageRecord, { symptom: then }: TriageRecord): boolean =>
  differ([now.pattern, now.onlyWith], [then.pattern, then.onlyWith]);

/** Which changes of a round rest on what was corrected. */
type RestsOnIt = (record: TriageRecord) => (change: ChangeRecord) => boolean;

/** Which changes were judged by a watch. */
const restingOn =
  (watch: Watch): RestsOnIt =>
  (record) =>
  ({ id, judgement }) =>
    judgement !== null &&
    (watch.purpose === 'retest'
      ? watch.changeId === id
      : isBaseline(record, watch) && Date.parse(watch.startedAt) < Date.parse(judgement.at));

function judgementRevised(record: TriageRecord, restsOnIt: RestsOnIt): Revision | null {
  for (const change of changesOfRound(record).filter(restsOnIt(record))) {
    const judgement = judgementAnew(record, change);
    if (differ(judgement, factsOf(change))) {
      return { type: 'judgementRevised', outcome: { changeId: change.id, judgement, oneOfTwo: null } };
    }
  }
  return oneOfTwoRevised(record, restsOnIt);
}

/** A change stays as one of perhaps two for as long as its retest says so, in the round that it was made in. */
function oneOfTwoRevised(record: TriageRecord, restsOnIt: RestsOnIt): Revision | null {
  const change = changeBeforeRound(record);
  if (change === null) return null;
  const round = recordInRound(record, change.round);
  if (!restsOnIt(round)(change)) return null;
  const judgement = judgementAnew(round, change);
  if (!differ(judgement, factsOf(change))) return null;
  const anew = { diagnostic: change.diagnostic, judgement };
  const oneOfTwo = whyNotOneOfTwo(anew) === null ? oneOfTwoBy(anew) : null;
  return { type: 'judgementRevised', outcome: { changeId: change.id, judgement, oneOfTwo } };
}

/** The record with an earlier round as the one that counts, and with what that round began with. */
function recordInRound(record: TriageRecord, round: number): TriageRecord {
  const then = { ...record, round };
  const before = changeBeforeRound(then);
  const began = before === null ? [] : retestWatches({ ...then, round: before.round }, before.id);
  return { ...then, cameBackWatchIds: began.map(({ id }) => id) };
}

function factsOf({ judgement }: ChangeRecord): Judged['judgement'] {
  if (judgement === null) return null;
  const { at: _at, by: _by, override: _override, ...facts } = judgement;
  return facts;
}

/** What a person decided by hand stays theirs, beside what is computed now. */
function judgementAnew(record: TriageRecord, change: ChangeRecord): Judged['judgement'] {
  const before = change.judgement;
  if (before === null || !wasRetested(record, change)) return null;
  const { override: _override, ...now } = judgementSoFar(record, change);
  return before.override === null ? now : { ...now, verdict: before.verdict };
}

/** A culprit that falls while a watch runs stands until that has ended, since no watch runs on from one stage into another. */
function culpritRevised(record: TriageRecord): Revision | null {
  const { culprit } = record;
  if (culprit === null || culprit.changeId === null || runningWatch(record) !== null) return null;
  const change = changesOfRound(record).find(({ id }) => id === culprit.changeId);
  const isShown = change !== undefined && whyNoProof(change) === null;
  if (isShown && refuseUnconfirmed(record, culprit, change) === null) return null;
  return { type: 'culpritRevised', outcome: { resumeAt: stageWithoutCulprit(record) } };
}

const remedyRevised = (record: TriageRecord): Revision | null =>
  record.remedy?.kind === 'noFaultFound' && whyNotQuiet(record) !== null ? { type: 'remedyRevised' } : null;
