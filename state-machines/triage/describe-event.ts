import { placeOfPart } from '../../shared/chain/installed.ts';
import { namedPlace } from '../../shared/chain/named-place.ts';
import type { Place } from '../../shared/contract/chain.ts';
import { erasureOf } from '../../shared/contract/erased-text.ts';
import type { LeavingCheck, Remedy, TriageRecord } from '../../shared/contract/triage.ts';
import { onlyWithSaid, patternSaid } from '../../shared/isolation/pattern.ts';
import { type Message, message } from '../../shared/message/message.ts';
import { namedChange } from '../../shared/message/named-change.ts';
import type { MessageTerms } from '../../shared/message/terms.ts';
import type { NamedDevice, NamedPlace } from '../../shared/message/values.ts';
import { describeLook } from './describe-look.ts';
import type { TriageEvent } from './events.ts';
import { countFindings } from './record.ts';

/** Events on the log that are facts about the ticket and not for the machine. */
type Fact =
  | { type: 'open' }
  | { type: 'assign'; assigneeId: string | null }
  | { type: 'takeOver' }
  | { type: 'update'; priority: keyof MessageTerms['priority']; visitAt: string | null }
  | { type: 'textErased'; texts: readonly unknown[]; reason: string }
  | { type: 'reportsErased'; reports: number };
type Described = TriageEvent | Fact;
type Messages = {
  [Type in Described['type']]: (event: Extract<Described, { type: Type }>, where: Where) => Message;
};
type Where = (place: Place) => NamedPlace;

/** What somebody added in words of their own; null for nothing. */
const added = (text: string | null | undefined): string | null => (text === '' ? null : (text ?? null));
const deviceAt = (deviceId: string): Place => ({ kind: 'device', deviceId });
const remedyCodes = {
  permanent: 'log/repairChosen',
  workaround: 'log/workaroundChosen',
  noFaultFound: 'log/noFaultFoundChosen',
} as const satisfies Record<Exclude<Remedy['kind'], 'onSuspicion'>, string>;

/** What was tried before leaving, counted. */
export const checkedBeforeLeaving = ({
  pictures,
  sound,
  usualStart,
  note,
}: Pick<LeavingCheck, 'pictures' | 'sound' | 'usualStart' | 'note'>): Message =>
  message('log/checkedBeforeLeaving', {
    work: pictures.filter(({ answer }) => answer === 'works').length,
    fail: pictures.filter(({ answer }) => answer === 'fails').length,
    notChecked: pictures.filter(({ answer }) => answer === 'notChecked').length,
    sound,
    usualStart,
    note: added(note),
  });

const messages: Messages = {
  open: () => message('log/ticketOpened'),
  assign: ({ assigneeId }) =>
    message(assigneeId === null ? 'log/takenFromTechnician' : 'log/assignedToTechnician'),
  takeOver: () => message('log/takenOver'),
  update: ({ priority, visitAt }) => message('log/ticketUpdated', { priority, visit: visitAt }),
  textErased: ({ texts, reason }) => message('log/textErased', { texts: texts.length, reason }),
  reportsErased: ({ reports }) => message('log/reportsErased', { reports }),

  note: ({ text }) => message('log/noteWritten', { text }),
  amendIntake: ({ symptom: { kind, pattern, onlyWith } }) =>
    message('log/symptomAmended', {
      symptom: kind,
      told: [patternSaid(pattern), ...(onlyWith === null ? [] : [onlyWithSaid(onlyWith)])],
    }),
  reviewAudit: ({ chainVersion, outcome, note }) =>
    message('log/auditReviewed', {
      version: chainVersion,
      mustFix: countFindings(outcome, 'mustFix'),
      shouldFix: countFindings(outcome, 'shouldFix'),
      note: added(note),
    }),
  answerWhatChanged: ({ answers }) =>
    message('log/whatChangedAnswered', {
      answers: answers.map(({ kind, text }) =>
        message('log/changedBefore', { what: kind, text: added(text) }),
      ),
    }),
  recordAsFound: ({ chainVersion }) => message('log/asFoundRecorded', { version: chainVersion }),

  startWatch: ({ plannedMin, mode, menuDeviceId, outcome: { trigger, triggerKind } }, where) => {
    const menuOf = menuDeviceId === null ? null : where(deviceAt(menuDeviceId));
    if (mode === 'look') return message('log/lookStarted', { menuOf });
    if (trigger === null && triggerKind !== null)
      return message('log/triesStarted', { trigger: triggerKind, menuOf });
    return message('log/watchStarted', {
      planned: plannedMin,
      trigger: added(trigger),
      byTrigger: mode === 'trigger',
      menuOf,
    });
  },
  recordOccurrence: ({ durationS, menu, description }) =>
    message('log/faultCame', { lasted: durationS, menu, description: added(description) }),
  confirmOccurrence: ({ occurredAt, menu, description }) =>
    message('log/faultConfirmedByLog', { at: occurredAt, menu, description: added(description) }),
  answerLogged: ({ occurredAt, answer }) =>
    message(answer === 'no' ? 'log/loggedWasNone' : 'log/loggedOpenAgain', { at: occurredAt }),
  recordTry: () => message('log/tryWentWell'),
  correctOccurrence: ({ occurredAt, reason }) => message('log/occurrenceMoved', { at: occurredAt, reason }),
  voidWatch: ({ reason }) => message('log/watchVoided', { reason }),
  withdrawOccurrence: ({ reason }) => message('log/occurrenceWithdrawn', { reason }),
  endWatch: () => message('log/watchEnded'),
  acceptReproduction: () => message('log/faultReproduced'),
  concludeSide: ({ deviceId, outcome }, where) =>
    message('log/sideConcluded', { device: where(deviceAt(deviceId)), side: outcome.side }),
  withdrawSide: ({ deviceId, reason }, where) =>
    message('log/sideWithdrawn', { device: where(deviceAt(deviceId)), reason }),
  beginSubstitution: () => message('log/substitutionBegun'),
  goOnWithoutSide: ({ reason }) => message('log/goneWithoutSide', { reason }),
  recordLook: (event, where) => describeLook(event, where),
  withdrawLook: ({ reason }) => message('log/lookWithdrawn', { reason }),
  locateSideAgain: ({ reason }) => message('log/backToSide', { reason }),

  declareChange: ({ kind, target, expected, detail, outcome: { own } }, where) =>
    message('log/changeDeclared', {
      change: namedChange({ kind, own }),
      place: where(target),
      expected,
      detail: added(detail),
    }),
  enterLateChange: ({ kind, target, madeAt, madeBy, seen, outcome: { own } }, where) =>
    message('log/lateChangeEntered', {
      change: namedChange({ kind, own }),
      place: where(target),
      madeAt,
      madeBy,
      seen,
    }),
  withdrawChange: ({ reason }) => message('log/changeWithdrawn', { reason }),
  applyChange: () => message('log/changeInPlace'),
  judgeRetest: ({ override, outcome }) =>
    override === null
      ? message('log/retestJudged', { verdict: outcome.judgement.verdict })
      : message('log/retestJudgedByHand', override),
  leaveInPlace: ({ until, owner }) => message('log/leftInPlace', { until, owner }),
  endUnattended: ({ logged }) => message('log/unattendedEnded', { logged: logged.length }),
  restoreChange: ({ note }) => message('log/changePutBack', { note: added(note) }),
  keepChange: ({ note, outcome: { oneOfTwo } }) =>
    oneOfTwo === null
      ? message('log/changeKept', { note: added(note) })
      : message('log/changeKeptAsOneOfTwo', { chance: oneOfTwo.chance, note: added(note) }),

  nameCulprit: ({ place, explanation }, where) =>
    message('log/culpritNamed', { place: where(place), explanation }),
  withdrawCulprit: ({ reason }) => message('log/culpritWithdrawn', { reason }),
  chooseRemedy: ({ remedy: { kind, what } }) => message(remedyCodes[kind], { what }),
  withdrawRemedy: ({ reason }) => message('log/remedyWithdrawn', { reason }),
  finishRemedy: ({ asLeftChainVersion: version, installed = [], chain }) =>
    chain === undefined
      ? message('log/remedyFinished', { version })
      : message('log/partsInstalled', {
          version,
          places: installed.map((part) => namedPlace(chain, placeOfPart(part))),
        }),
  faultCameBack: ({ reason }) => message('log/faultIsBack', { reason }),
  close: ({ override, note }) =>
    override === null
      ? message('log/closed', { note: added(note) })
      : message('log/closedWithLess', { reason: override.reason, note: added(note) }),
  reopen: ({ reason }) => message('log/reopened', { reason }),

  recordChoice: ({ way, chosenBy }) => message('log/clientChose', { way, chosenBy }),
  replaceOnSuspicion: ({ what, place, outcome }, where) =>
    message('log/replacedOnSuspicion', { what, place: where(place), chance: outcome.chance }),
  recordFollowUp: ({ heard, note, outcome }) =>
    message('log/askedAfterRepair', { heard, again: outcome.askBy, note: added(note) }),
  checkBeforeLeaving: checkedBeforeLeaving,

  waitFor: ({ kind, what, actor, until }) => message('log/waits', { kind, what, actor, until }),
  resumeWork: ({ note }) => message('log/workResumed', { note: added(note) }),

  escalate: ({ question }) => message('log/toSecondLine', { question }),
  answerRequest: ({ text }) => message('log/answeredSecondLine', { text }),
  resubmit: ({ question }) => message('log/toSecondLineAgain', { question: added(question) }),
  recall: ({ reason }) => message('log/recalled', { reason }),
  takeCase: () => message('log/caseTaken'),
  askForMore: ({ requests }) => message('log/askedForMore', { requests: requests.map(({ text }) => text) }),
  directStep: ({ text }) => message('log/stepDirected', { text }),
  acceptCase: ({ finding }) => message('log/caseAccepted', { finding }),
  handBack: ({ reason }) => message('log/caseHandedBack', { reason }),

  figuresChanged: () => message('log/figuresChanged'),
  reproductionRevised: () => message('log/reproductionRevised'),
  sideRevised: ({ deviceId, outcome }, where) =>
    outcome === null
      ? message('log/sideFell', { device: where(deviceAt(deviceId)) })
      : message('log/sideRevised', { device: where(deviceAt(deviceId)), side: outcome.side }),
  judgementRevised: ({ outcome: { judgement } }) =>
    judgement === null
      ? message('log/judgementFell')
      : message('log/judgementRevised', { verdict: judgement.verdict }),
  culpritRevised: () => message('log/culpritRevised'),
  remedyRevised: () => message('log/remedyRevised'),

  evidenceAdded: ({ evidence }) => message('log/evidenceAdded', { kind: evidence.kind }),
  evidenceWithdrawn: ({ reason }) => message('log/evidenceWithdrawn', { reason }),

  diaryOpened: ({ until }) => message('log/diaryOpened', { until }),
  diaryClosed: () => message('log/diaryClosed'),
  occurrenceReported: ({ occurredAt }) =>
    erasureOf(occurredAt) === null
      ? message('log/occurrenceReported', { at: occurredAt })
      : message('log/reportDeleted'),
  reportAnswered: () => message('log/reportAnswered'),
  withdrawReport: ({ reason }) => message('log/reportWithdrawn', { reason }),
};

/**
 * What an event of a ticket's log says.
 *
 * @param event type, payload and time (`at`), of today's version
 * @param record of the ticket now, for the names of places; without a chain as found ids are used
 */
export function describeEvent(
  event: { type: string; at: string } & object,
  record: TriageRecord | null,
): Message {
  const { type } = event;
  if (!Object.hasOwn(messages, type)) return message('log/eventOfLaterVersion', { type });
  const describe = (messages as unknown as Record<string, (event: object, where: Where) => Message>)[type];
  const chain = record?.asFound?.chain;
  const where: Where = (place) => (chain === undefined ? byId(place) : namedPlace(chain, place));
  return describe?.(event, where) as Message;
}

const deviceById = (deviceId: string): NamedDevice => ({
  deviceId,
  role: null,
  name: deviceId,
  isShared: false,
});

/** A place by its id, where no chain tells its names. */
function byId(place: Place): NamedPlace {
  switch (place.kind) {
    case 'chain':
      return { kind: 'chain', name: '' };
    case 'device':
      return { kind: 'device', ...deviceById(place.deviceId) };
    case 'port':
      return {
        kind: 'port',
        portId: place.portId,
        label: place.portId,
        isShared: false,
        device: deviceById(place.deviceId),
      };
    case 'link':
      return { kind: 'link', linkId: place.linkId, isExtender: false, ends: null };
  }
}
