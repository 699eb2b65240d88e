import type { TriageRecord } from '../../shared/contract/triage.ts';
import type { TriageEvent } from './events.ts';
import { changeInPlace, isSideSettled, openChange, runningWatch, standingSides } from './record.ts';

/** The change that an event says it is about; any, where it says none. */
const isAbout = (event: TriageEvent, changeId: string): boolean =>
  !('outcome' in event && event.outcome !== null && 'changeId' in event.outcome) ||
  event.outcome.changeId === changeId;

/**
 * What has to hold of a record for an event to be taken in, whoever sends it and whatever it says was decided. They
 * are few, and know of no statistics, catalogue, role or clock: what may be asked is a matter of the rules' `refuse`.
 */
export const invariants = {
  ticketIsOpen: (record) => record.closedAt === null,
  /** The client's signature under the report of what was done proves nothing that the ticket rests on. */
  ticketIsOpenOrSigned: (record, event) =>
    record.closedAt === null || (event.type === 'evidenceAdded' && event.evidence.tie.shows === 'signature'),
  /** One change at a time. */
  noOpenChange: (record) => openChange(record) === null,
  changeIsDeclared: (record, event) => {
    const open = openChange(record);
    return open?.status === 'declared' && isAbout(event, open.id);
  },
  changeIsInPlace: (record, event) => {
    const change = changeInPlace(record);
    return change !== null && isAbout(event, change.id);
  },
  changeIsJudged: (record, event) =>
    record.changes.some(({ id, judgement }) => judgement !== null && isAbout(event, id)),
  changeCanBeUndone: (record) => openChange(record)?.canBeUndone === true,
  changeMayStay: (record) => openChange(record)?.diagnostic === false,
  /** What the event says was done is still in place, and waits for its end. */
  changeStaysOpen: (_record, event) => event.type === 'enterLateChange' && event.outcome.status === 'applied',
  /** The event begins a round for the other one of perhaps two faults. */
  changeIsOneOfTwo: (_record, event) => event.type === 'keepChange' && event.outcome.oneOfTwo !== null,
  noWatchRuns: (record) => runningWatch(record) === null,
  watchRuns: (record) => runningWatch(record) !== null,
  sideIsKnown: (record) => standingSides(record).length > 0,
  /** Work on changes rests on a side, or on having said that none can be proven. */
  sideIsKnownOrGivenUp: isSideSettled,
  sideIsNotKnown: (record) => standingSides(record).length === 0,
  reproductionStands: (record) => record.reproductionAccepted,
  culpritIsNamed: (record) => record.culprit !== null,
  noCulpritIsNamed: (record) => record.culprit === null,
  remedyIsSettled: (record) => record.remedy !== null,
} satisfies Record<string, (record: TriageRecord, event: TriageEvent) => boolean>;
export type InvariantName = keyof typeof invariants;
