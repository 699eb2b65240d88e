import type { Chain } from '../../shared/contract/chain.ts';
import type { TicketCommandType } from '../../shared/contract/commands.ts';
import { sideProofKinds } from '../../shared/contract/look-names.ts';
import type { MemberRole } from '../../shared/contract/primitives.ts';
import type { TriageRecord, Watch } from '../../shared/contract/triage.ts';
import { changeKinds, loggedAnswers } from '../../shared/contract/triage-names.ts';
import { firstApplicable } from './changes/applicable.ts';
import { completeness } from './completeness.ts';
import type { CompleteCommand } from './events.ts';
import { changesOfRound, occurrencesOf, standingEvidence, standingSides } from './record.ts';
import { picturesToCheck } from './rules/leaving.ts';
import { runningUnattended } from './unattended.ts';

/** What a command of one type may be about, as far as the rules look at it; words of no meaning for what a person says. */
type Contents = readonly Record<string, unknown>[];

const words = '…';
const newId = '00000000-0000-4000-8000-000000000000';
const reason = words;
/** Later than anything that is being waited for. */
const farOff = '2199-12-31T00:00:00.000Z';

/** Moments of a watch that are well apart from what was seen in it. */
function quietMoments(watch: Watch): string[] {
  const at = [
    watch.startedAt,
    ...occurrencesOf(watch).map((each) => each.at),
    watch.endedAt ?? watch.startedAt,
  ];
  const ms = at.map((each) => Date.parse(each)).sort((a, b) => a - b);
  return ms.slice(1).map((to, n) => new Date((to + (ms[n] ?? to)) / 2).toISOString());
}

const confirmations = (record: TriageRecord): Contents => {
  const log = standingEvidence(record).find(({ kind }) => kind === 'log');
  return record.watches.flatMap((watch) =>
    quietMoments(watch).flatMap((occurredAt) =>
      (['stayed', 'vanished'] as const).map((menu) => ({
        watchId: watch.id,
        occurrenceId: newId,
        occurredAt,
        menu,
        evidenceId: log?.id ?? newId,
      })),
    ),
  );
};

const occurrencesAt = (record: TriageRecord): Contents =>
  record.watches.flatMap(({ occurrences }) =>
    occurrences.map(({ id, at }) => ({ occurrenceId: id, occurredAt: at, reason })),
  );

const deviceIds = (chain: Chain | undefined): string[] => chain?.devices.map(({ id }) => id) ?? [];

/** Types of which more than what is always so is asked, with everything that one could be about. */
const contents: Partial<Record<TicketCommandType, (record: TriageRecord, at: string) => Contents>> = {
  startWatch: ({ asFound }) =>
    [null, ...deviceIds(asFound?.chain)].map((menuDeviceId) => ({
      watchId: newId,
      mode: 'time',
      trigger: null,
      plannedMin: null,
      menuDeviceId,
    })),
  recordOccurrence: () => [{ occurrenceId: newId, menu: 'stayed' }],
  confirmOccurrence: confirmations,
  answerLogged: (record) =>
    confirmations(record).flatMap((one) => loggedAnswers.map((answer) => ({ ...one, answer }))),
  withdrawOccurrence: occurrencesAt,
  correctOccurrence: occurrencesAt,
  voidWatch: ({ watches }) => watches.map(({ id }) => ({ watchId: id, reason })),
  concludeSide: ({ asFound }) =>
    sideProofKinds.flatMap((from) => deviceIds(asFound?.chain).map((deviceId) => ({ deviceId, from }))),
  recordLook: ({ asFound }) =>
    deviceIds(asFound?.chain).map((deviceId) => ({
      lookId: newId,
      what: { kind: 'setting', deviceId, key: words, value: words, shouldBe: null },
      evidenceId: null,
    })),
  withdrawLook: ({ looks }) => looks.map(({ id }) => ({ lookId: id, reason })),
  withdrawSide: (record) => standingSides(record).map(({ deviceId }) => ({ deviceId, reason })),
  declareChange: (record) => {
    const change = firstApplicable(record);
    return change === null ? [] : [{ changeId: newId, ...change, settings: [] }];
  },
  enterLateChange: ({ asFound, openedAt }) =>
    (asFound?.chain.links ?? []).slice(0, 1).flatMap(({ id: linkId }) =>
      [null, openedAt].map((undoneAt) => ({
        changeId: newId,
        kind: changeKinds[0],
        target: { kind: 'link', linkId },
        madeAt: openedAt,
        undoneAt,
      })),
    ),
  recordChoice: () => [{ way: 'replace', offered: [] }],
  replaceOnSuspicion: () => [{ place: { kind: 'chain' } }],
  recordFollowUp: () => [{ heard: 'held', askAgainBy: null }],
  checkBeforeLeaving: ({ asFound }) =>
    asFound === null
      ? []
      : [{ pictures: picturesToCheck(asFound.chain).map((pair) => ({ ...pair, answer: 'notChecked' })) }],
  waitFor: () => [{ until: farOff }],
  withdrawReport: ({ reports }) => reports.map(({ id }) => ({ reportId: id, reason })),
  leaveInPlace: (_record, at) => [
    {
      unattendedId: newId,
      until: new Date(Date.parse(at) + 86_400_000).toISOString(),
      safety: {},
      clientsYes: { at },
      firmware: [],
    },
  ],
  endUnattended: (record) => [{ firmware: runningUnattended(record)?.firmwareBefore ?? [], logged: [] }],
  nameCulprit: (record) =>
    changesOfRound(record).map(({ id, target }) => ({
      changeId: id,
      place: target,
      confirmation: { kind: 'notDone', reason },
    })),
  chooseRemedy: () => [
    { remedy: { kind: 'noFaultFound', what: words } },
    { remedy: { kind: 'permanent', what: words } },
  ],
  close: () => [{ override: { reason } }],
  escalate: (record) => [{ waivers: completeness(record).map(({ item }) => ({ item, reason })) }],
  resubmit: (record) => [{ waivers: completeness(record).map(({ item }) => ({ item, reason })) }],
  answerRequest: ({ requests }) => requests.map(({ id }) => ({ requestId: id, evidenceIds: [] })),
  askForMore: () => [{ requests: [{ requestId: newId, item: null, text: words }] }],
  directStep: () => [{ requestId: newId, change: null }],
  acceptCase: () => [{ place: null }],
};

/**
 * Commands of a type, one for everything that it could be about: where the rules refuse all of them, they refuse any.
 *
 * @param at when it would be sent (UTC, ISO 8601)
 */
export function examplesOf(
  type: TicketCommandType,
  record: TriageRecord,
  { at, role }: { at: string; role: MemberRole },
): CompleteCommand[] {
  const about = contents[type]?.(record, at) ?? [{}];
  return about.map((content) => ({ type, ...content, at, by: newId, role }) as unknown as CompleteCommand);
}
