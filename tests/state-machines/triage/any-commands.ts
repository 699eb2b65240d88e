import fc from 'fast-check';
import type { Place } from '../../../shared/contract/chain.ts';
import { type TicketCommandType, ticketCommandTypes } from '../../../shared/contract/commands.ts';
import { sideProofKinds } from '../../../shared/contract/look-names.ts';
import { changeKinds, type TriageRecord } from '../../../shared/contract/triage.ts';
import {
  actingParties,
  choiceWays,
  followUpOutcomes,
  lateFindings,
  waitingKinds,
} from '../../../shared/contract/triage-names.ts';
import { applicableChanges, type TriageSnapshot } from '../../../state-machines/index.ts';
import { picturesToCheck } from '../../../state-machines/triage/rules/leaving.ts';
import { device, leftSafely, link, type Sent, uuid, waiveAll } from './triage-events.ts';

/** Numbers that pick what a command is about: sometimes something that there is, sometimes not. */
export type Picks = { what: number; which: number; minutes: number; offline: boolean };
export const picks: fc.Arbitrary<Picks> = fc.record({
  what: fc.nat(1000),
  which: fc.nat(1000),
  minutes: fc.oneof(
    { weight: 4, arbitrary: fc.integer({ min: 0, max: 90 }) },
    { weight: 1, arbitrary: fc.constant(3000) },
  ),
  offline: fc.boolean(),
});

const oneOf = <Item>(items: readonly Item[], pick: number): Item | undefined => items[pick % items.length];
const nowhere = uuid(0xdead);
const places: Place[] = [link('L3'), link('L4'), device('receiver'), device('nowhere'), { kind: 'chain' }];
const reason = 'As picked';

const signal = { kind: 'signal', hdr: 'static', linkGbps: 18 } as const;
const looks: [LookInput, ...LookInput[]] = [
  { kind: 'signal', deviceId: 'player', moment: 'bad', said: { kind: 'read', sends: signal } },
  { kind: 'signal', deviceId: 'receiver', moment: 'bad', said: { kind: 'read', receives: signal } },
  {
    kind: 'signal',
    deviceId: 'processor',
    moment: 'bad',
    said: { kind: 'read', receives: { kind: 'noSignal' }, sends: { kind: 'noSignal' } },
  },
  { kind: 'signal', deviceId: 'processor', moment: 'good', said: { kind: 'asBefore' } },
  { kind: 'menu', deviceId: 'processor', survivesLossOfInput: 'yes', keepsFormat: 'yes' },
  { kind: 'menu', deviceId: 'processor', survivesLossOfInput: 'no', keepsFormat: 'unknown' },
  { kind: 'portMode', deviceId: 'processor', portId: 'in1', found: { kind: 'automatic' } },
  { kind: 'setting', deviceId: 'receiver', key: 'Output', value: 'Low', shouldBe: 'High' },
  { kind: 'witness', deviceId: 'television', besideId: 'projector', answer: 'shows' },
  { kind: 'witness', deviceId: 'nowhere', besideId: 'projector', answer: 'doesNotShow' },
];

type LookInput = Extract<Sent, { type: 'recordLook' }>['what'];

type Maker = (record: TriageRecord, picks: Picks, snapshot: TriageSnapshot) => Sent;
const plain =
  (command: Sent): Maker =>
  () =>
    command;

/** A command of each type, with something to be about that fits the ticket more often than not. */
const makers: Record<TicketCommandType, Maker> = {
  note: plain({ type: 'note', text: 'A note' }),
  amendIntake: (_, { which }) => ({
    type: 'amendIntake',
    symptom: { kind: 'sparkles', perHour: (which % 9) + 1 },
  }),
  reviewAudit: plain({ type: 'reviewAudit', chainVersion: 1 }),
  answerWhatChanged: plain({ type: 'answerWhatChanged', answers: [{ kind: 'cable' }] }),
  recordAsFound: plain({ type: 'recordAsFound', chainVersion: 1 }),
  startWatch: (_, { which }) => ({
    type: 'startWatch',
    mode: which % 5 === 0 ? 'trigger' : 'time',
    trigger: which % 10 === 0 ? null : 'Switch the source',
    menuDeviceId: oneOf(['processor', 'receiver', 'processor', 'nowhere', null], which) ?? null,
  }),
  recordOccurrence: (_, { which }) => ({
    type: 'recordOccurrence',
    menu: oneOf(['stayed', 'stayed', 'stayed', 'vanished', null] as const, which) ?? null,
  }),
  confirmOccurrence: ({ watches, evidence }, { which }) => {
    const watch = oneOf(watches, which);
    return {
      type: 'confirmOccurrence',
      watchId: watch?.id ?? nowhere,
      occurredAt: (which % 3 === 0 ? watch?.endedAt : watch?.startedAt) ?? '2026-11-02T08:00:00.000Z',
      menu: oneOf(['stayed', 'vanished', null] as const, which) ?? null,
      evidenceId: oneOf(evidence, which)?.id ?? nowhere,
    };
  },
  answerLogged: ({ watches, evidence }, { which }) => {
    const watch = oneOf(watches, which);
    return {
      type: 'answerLogged',
      watchId: watch?.id ?? nowhere,
      occurredAt: watch?.startedAt ?? '2026-11-02T08:00:00.000Z',
      evidenceId: oneOf(evidence, which)?.id ?? nowhere,
      answer: oneOf(['no', 'open'] as const, which) ?? 'no',
    };
  },
  recordTry: plain({ type: 'recordTry' }),
  withdrawReport: ({ reports }, { which }) => ({
    type: 'withdrawReport',
    reportId: oneOf(reports, which)?.id ?? nowhere,
    reason,
  }),
  withdrawOccurrence: ({ watches }, { which }) => ({
    type: 'withdrawOccurrence',
    occurrenceId:
      oneOf(
        watches.flatMap(({ occurrences }) => occurrences),
        which,
      )?.id ?? nowhere,
    reason,
  }),
  correctOccurrence: ({ watches }, { which }) => {
    const watch = oneOf(watches, which);
    return {
      type: 'correctOccurrence',
      occurrenceId: oneOf(watch?.occurrences ?? [], which)?.id ?? nowhere,
      occurredAt: (which % 3 === 0 ? watch?.endedAt : watch?.startedAt) ?? '2026-11-02T08:00:00.000Z',
      reason,
    };
  },
  voidWatch: ({ watches }, { which }) => ({
    type: 'voidWatch',
    watchId: oneOf(watches, which)?.id ?? nowhere,
    reason,
  }),
  endWatch: plain({ type: 'endWatch' }),
  acceptReproduction: plain({ type: 'acceptReproduction' }),
  concludeSide: (_, { which }) => ({
    type: 'concludeSide',
    deviceId: oneOf(['processor', 'receiver', 'nowhere'], which) ?? 'nowhere',
    ...(which % 2 === 0 ? {} : { from: oneOf(sideProofKinds, which >> 1) }),
  }),
  withdrawSide: ({ sides }, { which }) => ({
    type: 'withdrawSide',
    deviceId: oneOf(sides, which)?.deviceId ?? 'nowhere',
    reason,
  }),
  beginSubstitution: plain({ type: 'beginSubstitution' }),
  goOnWithoutSide: plain({ type: 'goOnWithoutSide', reason }),
  recordLook: (_, { which }) => ({ type: 'recordLook', what: oneOf(looks, which) ?? looks[0] }),
  withdrawLook: (record, { which }) => ({
    type: 'withdrawLook',
    lookId: oneOf(record.looks, which)?.id ?? nowhere,
    reason,
  }),
  declareChange: (_, { which }, snapshot) => {
    const applicable = which % 4 === 0 ? undefined : oneOf(applicableChanges(snapshot), which);
    const kind = applicable?.kind ?? oneOf(changeKinds, which) ?? 'reseat';
    return {
      type: 'declareChange',
      kind,
      target: applicable?.target ?? oneOf(places, which) ?? link('L3'),
      expected: 'It stays away',
    };
  },
  enterLateChange: ({ openedAt, watches }, { which }, snapshot) => {
    const applicable = oneOf(applicableChanges(snapshot), which);
    return {
      type: 'enterLateChange',
      kind: applicable?.kind ?? oneOf(changeKinds, which) ?? 'reseat',
      target: applicable?.target ?? oneOf(places, which) ?? link('L3'),
      madeAt: watches.at(-1)?.endedAt ?? openedAt,
      madeBy: 'The client',
      undoneAt: which % 2 === 0 ? null : (watches.at(-1)?.endedAt ?? openedAt),
      seen: oneOf(lateFindings, which) ?? 'notKnown',
    };
  },
  withdrawChange: plain({ type: 'withdrawChange', reason }),
  applyChange: plain({ type: 'applyChange' }),
  judgeRetest: (_, { which }) => ({
    type: 'judgeRetest',
    override: which % 3 === 0 ? { verdict: 'cleared', reason } : null,
  }),
  leaveInPlace: ({ openedAt }, { which }) => ({
    type: 'leaveInPlace',
    until: new Date(Date.parse(openedAt) + 20 * 86_400_000).toISOString(),
    owner: 'The night desk',
    safety: { ...leftSafely, hangs: which % 5 === 0 },
    clientsYes: { name: 'N. N.', at: openedAt, whatChanges: 'One input less', howToUndo: 'Plug it back' },
    firmware: [{ deviceId: 'processor', level: '1.0' }],
  }),
  endUnattended: (_, { which }) => ({
    type: 'endUnattended',
    firmware: [
      { deviceId: which % 3 === 0 ? 'receiver' : 'processor', level: which % 2 === 0 ? '1.0' : null },
    ],
  }),
  restoreChange: plain({ type: 'restoreChange' }),
  keepChange: plain({ type: 'keepChange' }),
  locateSideAgain: plain({ type: 'locateSideAgain', reason }),
  nameCulprit: ({ changes, watches }, { which }) => ({
    type: 'nameCulprit',
    changeId: oneOf(changes, which)?.id ?? nowhere,
    place: oneOf(places, which) ?? link('L3'),
    explanation: 'Shown by the retest',
    confirmation:
      which % 2 === 0
        ? { kind: 'notDone', reason }
        : { kind: 'returned', watchId: watches.at(-1)?.id ?? nowhere },
  }),
  withdrawCulprit: plain({ type: 'withdrawCulprit', reason }),
  chooseRemedy: (record, { which }) => ({
    type: 'chooseRemedy',
    remedy:
      (record.culprit === null) !== (which % 4 === 0)
        ? { kind: 'noFaultFound', what: 'Nothing seen' }
        : { kind: 'permanent', what: 'Replaced' },
  }),
  withdrawRemedy: plain({ type: 'withdrawRemedy', reason }),
  finishRemedy: plain({ type: 'finishRemedy', asLeftChainVersion: 2 }),
  faultCameBack: plain({ type: 'faultCameBack', reason }),
  close: (_, { which }) => ({ type: 'close', override: which % 2 === 0 ? { reason } : null }),
  reopen: plain({ type: 'reopen', reason }),
  recordChoice: (_, { which }) => ({
    type: 'recordChoice',
    way: oneOf(choiceWays, which) ?? 'goOn',
    chosenBy: 'Mrs Overwell',
  }),
  replaceOnSuspicion: (_, { which }) => ({
    type: 'replaceOnSuspicion',
    place: oneOf(places, which) ?? link('L3'),
    what: 'A new cable',
  }),
  recordFollowUp: (_, { which }) => ({
    type: 'recordFollowUp',
    heard: oneOf(followUpOutcomes, which) ?? 'held',
  }),
  checkBeforeLeaving: ({ asFound }, { which }) => ({
    type: 'checkBeforeLeaving',
    pictures:
      asFound === null || which % 5 === 0
        ? []
        : picturesToCheck(asFound.chain).map((pair) => ({ ...pair, answer: 'works' as const })),
    sound: 'works',
    usualStart: 'notChecked',
  }),
  waitFor: (_, { which }) => ({
    type: 'waitFor',
    kind: oneOf(waitingKinds, which) ?? 'part',
    what: 'A cable of twelve metres',
    actor: oneOf(actingParties, which) ?? 'supplier',
    until: which % 4 === 0 ? '2026-11-02T08:00:00.000Z' : '2199-01-01T08:00:00.000Z',
  }),
  resumeWork: plain({ type: 'resumeWork' }),
  escalate: (_, { which }) => ({
    type: 'escalate',
    question: 'What is it?',
    waivers: waiveAll.slice(which % 4 === 0 ? 5 : 0),
  }),
  answerRequest: ({ requests, evidence }, { which }) => ({
    type: 'answerRequest',
    requestId: oneOf(requests, which)?.id ?? nowhere,
    text: 'Here it is',
    evidenceIds: evidence.slice(-1).map(({ id }) => id),
  }),
  resubmit: plain({ type: 'resubmit' }),
  recall: plain({ type: 'recall', reason }),
  takeCase: plain({ type: 'takeCase' }),
  askForMore: plain({ type: 'askForMore', requests: [{ text: 'The EDID' }, { text: 'A log' }] }),
  directStep: plain({ type: 'directStep', text: 'Read the EDID' }),
  acceptCase: (_, { which }) => ({
    type: 'acceptCase',
    finding: 'Known fault',
    place: oneOf(places, which) ?? null,
  }),
  handBack: plain({ type: 'handBack', reason }),
};

/** A command of this type; `types` picks among several. */
export function commandOf(types: readonly TicketCommandType[], from: Picks, snapshot: TriageSnapshot): Sent {
  const type = oneOf(types.length > 0 ? types : ticketCommandTypes, from.what) ?? 'note';
  return makers[type](snapshot.context, from, snapshot);
}
