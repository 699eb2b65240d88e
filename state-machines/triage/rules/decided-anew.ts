import canonicalize from 'canonicalize';
import type { ChangeRecord, SideObservation, TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import type { CompleteCommand, Consequence, ConsequenceType, Outcomes } from '../events.ts';
import { changesOfRound, isBaseline, isShownAtAll, runningWatch, standingSides } from '../record.ts';
import { judgementSoFar, wasRetested } from './changes.ts';
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
    return judgementRevised(record, () => true) ?? culpritRevised(record) ?? remedyRevised(record);
  if (command.type === 'recordLook' || command.type === 'withdrawLook')
    return sideRevised(record, restsOnLooks);
  if (command.type === 'withdrawReport' || command.type === 'occurrenceReported') {
    const rests = ({ judgement }: ChangeRecord): boolean => judgement?.reported != null;
    return judgementRevised(record, rests) ?? culpritRevised(record);
  }
  if (command.type === 'endWatch') return culpritRevised(record);
  const watch = correctedWatch(record, command);
  if (watch === null) return null;
  return (
    sideRevised(record, restsOnWatch(watch)) ??
    judgementRevised(record, restingOn(record, watch)) ??
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

/** Which changes were judged by a watch. */
const restingOn =
  (record: TriageRecord, watch: Watch) =>
  ({ id, judgement }: ChangeRecord): boolean =>
    judgement !== null &&
    (watch.purpose === 'retest'
      ? watch.changeId === id
      : isBaseline(record, watch) && Date.parse(watch.startedAt) < Date.parse(judgement.at));

function judgementRevised(
  record: TriageRecord,
  restsOnIt: (change: ChangeRecord) => boolean,
): Revision | null {
  for (const change of changesOfRound(record).filter(restsOnIt)) {
    const judgement = judgementAnew(record, change);
    if (differ(judgement, factsOf(change))) {
      return { type: 'judgementRevised', outcome: { changeId: change.id, judgement } };
    }
  }
  return null;
}

type Judged = Omit<Outcomes['judgeRetest']['judgement'], 'override'>;
function factsOf({ judgement }: ChangeRecord): Judged | null {
  if (judgement === null) return null;
  const { at: _at, by: _by, override: _override, ...facts } = judgement;
  return facts;
}

/** What a person decided by hand stays theirs, beside what is computed now. */
function judgementAnew(record: TriageRecord, change: ChangeRecord): Judged | null {
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
