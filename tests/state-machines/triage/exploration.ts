import type { Place } from '../../../shared/contract/chain.ts';
import { type ChangeKind, type TriageRecord, workingStates } from '../../../shared/contract/triage.ts';
import {
  decide,
  openChange,
  openTriage,
  runningWatch,
  stateName,
  type TriageEvent,
  type TriageSnapshot,
} from '../../../state-machines/index.ts';
import {
  baselineWatches,
  changesOfRound,
  changeToConfirm,
  currentEscalation,
  keptCure,
  minutesBetween,
  standingSides,
  verifyWatches,
  watchesFor,
} from '../../../state-machines/triage/record.ts';
import { whyNoProof } from '../../../state-machines/triage/rules/culprit.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { completeOf, link, opening, type Sent, uuid, waiveAll } from './triage-events.ts';

export type Visited = TriageSnapshot;
/** A place that was reached: one snapshot there, the fewest events that lead to it, and what each command makes of it. */
export type Reached = { state: Visited; events: TriageEvent[]; next: Visited[] };
/** By place. */
export type Graph = Map<string, Reached>;

/** What an exploration tries. */
export type Trying = {
  changes: { kind: ChangeKind; target: Place }[];
  /** Commands left out, so that the rest stays small enough. */
  without?: readonly Sent['type'][];
};

const chain = homeCinema();
const long = 1_000_000;

/** The latest time in a record: what is sent next comes after it, so that no clock is needed. */
function latest(record: TriageRecord): number {
  const times = [
    record.openedAt,
    record.closedAt,
    ...record.watches.flatMap((watch) => [
      watch.startedAt,
      watch.endedAt,
      ...watch.occurrences.map((o) => o.at),
    ]),
    ...record.changes.flatMap((change) => [change.declaredAt, change.appliedAt, change.finishedAt]),
    ...record.escalations.map(({ at }) => at),
  ];
  return Math.max(...times.map((time) => (time === null ? 0 : Date.parse(time))));
}

/** Ids that follow from the record, so that the same way through the graph makes the same events. */
const idsAfter = (record: TriageRecord): (() => string) => {
  let next =
    1000 +
    record.watches.length * 10_000 +
    record.watches.reduce((total, watch) => total + watch.occurrences.length, 0) * 100 +
    record.changes.length * 10 +
    record.requests.length;
  return () => uuid(next++);
};

const once: Sent[] = [
  { type: 'reviewAudit', chainVersion: 1 },
  { type: 'answerWhatChanged', answers: [{ kind: 'nothing' }] },
  { type: 'recordAsFound', chainVersion: 1 },
];
const always: Sent[] = [
  { type: 'acceptReproduction' },
  { type: 'concludeSide', deviceId: 'processor' },
  { type: 'withdrawSide', deviceId: 'processor', reason: 'Looked at the wrong menu' },
  { type: 'beginSubstitution' },
  { type: 'locateSideAgain', reason: 'Narrow it down' },
  { type: 'withdrawChange', reason: 'Not now' },
  { type: 'applyChange' },
  { type: 'judgeRetest' },
  { type: 'restoreChange' },
  { type: 'keepChange' },
  { type: 'withdrawCulprit', reason: 'It is not that' },
  { type: 'chooseRemedy', remedy: { kind: 'permanent', what: 'Replaced' } },
  { type: 'chooseRemedy', remedy: { kind: 'noFaultFound', what: 'Nothing seen' } },
  { type: 'withdrawRemedy', reason: 'Another one' },
  { type: 'finishRemedy', asLeftChainVersion: 2 },
  { type: 'close' },
  { type: 'close', override: { reason: 'Good enough' } },
  { type: 'faultCameBack', reason: 'It is back' },
  { type: 'reopen', reason: 'It is back' },
  { type: 'escalate', question: 'What is it?', waivers: waiveAll },
  { type: 'waitFor', kind: 'part', what: 'A cable', actor: 'supplier', until: '2199-01-01T08:00:00.000Z' },
  { type: 'resumeWork' },

  { type: 'recall', reason: 'Found it myself' },
  { type: 'takeCase' },
  { type: 'handBack', reason: 'Go on' },
  { type: 'acceptCase', finding: 'A known fault' },
  { type: 'resubmit' },
];
const asking: Sent[] = [
  { type: 'askForMore', requests: [{ text: 'The EDID' }] },
  { type: 'directStep', text: 'Read the EDID' },
];

function watchingCommands(record: TriageRecord): { minutes: number; command: Sent }[] {
  const running = runningWatch(record);
  if (running === null) {
    return [{ minutes: 0, command: { type: 'startWatch', menuDeviceId: 'processor' } }];
  }
  const seen = running.occurrences.length;
  const menus = running.purpose === 'side' ? (['stayed', 'vanished'] as const) : ([null] as const);
  const occurrences = menus.map((menu) => ({
    minutes: 1,
    command: { type: 'recordOccurrence', menu } as const,
  }));
  const end = { type: 'endWatch' } as const;
  return [
    ...(seen === 0 ? occurrences : []),
    { minutes: 0, command: end },
    ...(seen === 0 && running.purpose !== 'side' ? [{ minutes: long, command: end }] : []),
    { minutes: 0, command: { type: 'startWatch' } },
  ];
}

function tries(record: TriageRecord, trying: Trying): { minutes: number; command: Sent }[] {
  const soon = (command: Sent) => ({ minutes: 1, command });
  const confirm = record.watches.findLast(({ purpose }) => purpose === 'confirm');
  const confirmations = [
    { kind: 'notDone', reason: 'No time' } as const,
    ...(confirm === undefined ? [] : [{ kind: 'returned', watchId: confirm.id } as const]),
  ];
  const occurrence = record.watches.flatMap(({ occurrences }) => occurrences).at(-1);
  const openRequests = record.requests.filter(({ answer }) => answer === null);
  return [
    ...once.filter(({ type }) => !isDone(record, type)).map(soon),
    ...always.map(soon),
    ...watchingCommands(record),
    ...(occurrence === undefined || occurrence.withdrawn !== null
      ? []
      : [soon({ type: 'withdrawOccurrence', occurrenceId: occurrence.id, reason: 'Pressed by accident' })]),
    ...trying.changes.map((change) => soon({ type: 'declareChange', ...change, expected: 'It stays away' })),
    ...record.changes.flatMap(({ id }) =>
      confirmations.map((confirmation) =>
        soon({ type: 'nameCulprit', changeId: id, place: link('L3'), explanation: 'Shown', confirmation }),
      ),
    ),
    ...(openRequests.length === 0 ? asking : []).map(soon),
    ...openRequests.map(({ id }) => soon({ type: 'answerRequest', requestId: id, text: 'Here it is' })),
  ];
}

function isDone(record: TriageRecord, type: Sent['type']): boolean {
  if (type === 'reviewAudit') return record.audit !== null;
  return type === 'recordAsFound' ? record.asFound !== null : record.whatChanged !== null;
}

export const isOpen = ({ status }: TriageRecord['changes'][number]): boolean =>
  ['declared', 'applied', 'judged'].includes(status);

type Watch = TriageRecord['watches'][number];
const seenIn = (watches: readonly Watch[]) =>
  watches.flatMap(({ occurrences }) => occurrences.filter(({ withdrawn }) => withdrawn === null));
const isLong = ({ startedAt, endedAt }: Watch): boolean =>
  endedAt !== null && minutesBetween(startedAt, endedAt) >= long;
/** Seen, long enough without, or neither. */
const outcomeOf = (watches: readonly Watch[]): string =>
  seenIn(watches).length > 0
    ? 'seen'
    : watches.some(isLong)
      ? 'quiet'
      : watches.length > 0
        ? 'short'
        : 'none';

/** What makes two snapshots the same place in the exploration: what guards can tell apart, and no more. */
export function placeOf(snapshot: Visited): string {
  const { context: record } = snapshot;
  const running = runningWatch(record);
  const change = openChange(record);
  const confirming = changeToConfirm(record);
  const watchesWith = (purpose: Watch['purpose'], changeId: string | undefined) =>
    record.watches.filter((watch) => watch.purpose === purpose && watch.changeId === changeId);
  const menus = seenIn(watchesFor(record, 'side')).map(({ menu }) => menu);
  return JSON.stringify([
    stateName(snapshot),
    [record.audit, record.whatChanged, record.asFound].map((each) => each !== null),
    running === null ? null : [running.purpose, seenIn([running]).length],
    [record.reproductionAccepted, outcomeOf(baselineWatches(record))],
    [[...new Set(menus)].sort(), standingSides(record).map(({ side }) => side)],
    record.changes.filter(isOpen).map(({ kind, status, judgement }) => [kind, status, judgement?.verdict]),
    change === null ? null : outcomeOf(watchesWith('retest', change.id)),
    changesOfRound(record).some((each) => whyNoProof(each) === null),
    keptCure(record)?.kind,
    [...new Set(record.changes.filter(({ status }) => status === 'kept').map(({ kind }) => kind))].sort(),
    confirming === null ? null : outcomeOf(watchesWith('confirm', confirming.id)) === 'seen',
    [record.culprit?.namedBy, record.remedy?.kind, outcomeOf(verifyWatches(record))],
    [record.resumeAt, record.resumeAt === null ? null : currentEscalation(record)?.takenBy],
    record.requests.filter(({ answer }) => answer === null).map(({ kind }) => kind),
  ]);
}

/** What is accepted in a place, of all that is tried there. */
function stepsFrom(state: Visited, trying: Trying): { events: TriageEvent[]; snapshot: Visited }[] {
  const record = state.context;
  const newId = idsAfter(record);
  const since = latest(record);
  return tries(record, trying).flatMap(({ minutes, command }) => {
    if (trying.without?.includes(command.type)) return [];
    const at = new Date(since + minutes * 60_000).toISOString();
    const decision = decide(
      state,
      completeOf(command, { at, newId, chain, firmwareBelowLevel: ['receiver'] }),
    );
    return decision.accepted ? [decision] : [];
  });
}

/** Every place that can be reached, however often things are changed, handed over or begun again: breadth first. */
export function explore(trying: Trying): Graph {
  const start = openTriage(opening);
  const graph: Graph = new Map([[placeOf(start), { state: start, events: [], next: [] }]]);
  for (const reached of graph.values()) {
    const { state, events } = reached;
    // Two open changes are what must not be; what a machine does that has them need not be known.
    if (state.context.changes.filter(isOpen).length > 1) continue;
    for (const step of stepsFrom(state, trying)) {
      reached.next.push(step.snapshot);
      const place = placeOf(step.snapshot);
      if (!graph.has(place)) {
        graph.set(place, { state: step.snapshot, events: [...events, ...step.events], next: [] });
      }
    }
    if (graph.size > 250_000) throw new Error('the exploration finds no end');
  }
  return graph;
}

/** Commands that interrupt the work: to and from second line with what they lead to, and waiting. */
export const interrupting = [
  'escalate',
  'recall',
  'takeCase',
  'handBack',
  'acceptCase',
  'resubmit',
  'askForMore',
  'directStep',
  'waitFor',
  'resumeWork',
] as const satisfies readonly Sent['type'][];
/** Commands that take something back. */
export const takingBack = [
  'withdrawOccurrence',
  'withdrawSide',
  'locateSideAgain',
  'withdrawRemedy',
] as const satisfies readonly Sent['type'][];

/** States at rest, as the machine names them. */
export const restingStates = [
  ...workingStates,
  'substitute.retest',
  'closed',
  'waiting',
  'escalated.waiting',
  'escalated.underReview',
  'escalated.moreRequested',
];
