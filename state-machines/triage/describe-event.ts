import { placeName } from '../../shared/chain/graph.ts';
import type { Place } from '../../shared/contract/chain.ts';
import type { TriageRecord } from '../../shared/contract/triage.ts';
import { changeLabel } from './changes/catalogue.ts';
import type { TriageEvent } from './events.ts';
import { countFindings } from './record.ts';

/** Events on the log that are facts about the ticket and not for the machine. */
type Fact =
  | { type: 'open' }
  | { type: 'assign'; assigneeId: string | null }
  | { type: 'takeOver' }
  | { type: 'update'; priority: string; visitAt: string | null };
type Described = TriageEvent | Fact;
type Sentences = {
  [Type in Described['type']]: (
    event: Extract<Described, { type: Type }>,
    where: Where,
    record: TriageRecord | null,
  ) => string;
};
type Where = (place: Place) => string;

const withText = (sentence: string, more: string): string => (more === '' ? sentence : `${sentence} ${more}`);
const sideWords = { input: 'upstream', output: 'downstream' } as const;
const deviceAt = (deviceId: string): Place => ({ kind: 'device', deviceId });

const sentences: Sentences = {
  open: () => 'Ticket opened.',
  assign: (event) => (event.assigneeId === null ? 'Taken from its technician.' : 'Assigned to a technician.'),
  takeOver: () => 'Taken over.',
  update: (event) => `Ticket updated: priority ${event.priority}, visit ${event.visitAt ?? 'not set'}.`,

  note: (event) => `Note: ${event.text}`,
  amendIntake: (event) => `Symptom corrected: ${event.symptom.kind}.`,
  reviewAudit: (event) =>
    withText(
      `Audit of chain version ${event.chainVersion} looked at: ${countFindings(event.outcome, 'mustFix')} to fix, ${countFindings(event.outcome, 'shouldFix')} that should be.`,
      event.note,
    ),
  answerWhatChanged: (event) =>
    `What changed: ${event.answers.map((answer) => withText(answer.kind, answer.text)).join('; ')}.`,
  recordAsFound: (event) => `As found: chain version ${event.chainVersion}.`,

  startWatch: (event, where) => {
    const planned = event.plannedMin === null ? '' : `, ${event.plannedMin} min planned`;
    const menu =
      event.menuDeviceId === null ? '' : `, with the menu of ${where(deviceAt(event.menuDeviceId))} up`;
    const by = event.mode === 'trigger' ? ` by switching (${event.trigger ?? 'trigger not named'})` : '';
    return `Watch started${by}${planned}${menu}.`;
  },
  recordOccurrence: (event) => {
    const menu = event.menu === null ? '' : `, the menu ${event.menu}`;
    const lasted = event.durationS === null ? '' : `, for ${event.durationS} s`;
    return withText(`The fault came${lasted}${menu}.`, event.description);
  },
  confirmOccurrence: (event) => {
    const menu = event.menu === null ? '' : `, the menu ${event.menu}`;
    return withText(
      `A log shows that the fault came at ${event.occurredAt}${menu}: confirmed.`,
      event.description,
    );
  },
  recordTry: () => 'One try without the fault.',
  withdrawOccurrence: (event) => `An occurrence was withdrawn: ${event.reason}`,
  endWatch: () => 'Watch ended.',
  acceptReproduction: () => 'The fault is reproduced.',
  concludeSide: (event, where) =>
    `Side concluded at ${where(deviceAt(event.deviceId))}: the fault lies ${sideWords[event.outcome.side]} of it.`,
  withdrawSide: (event, where) =>
    `The side at ${where(deviceAt(event.deviceId))} was withdrawn: ${event.reason}`,
  beginSubstitution: () => 'Substitution begins.',
  locateSideAgain: (event) => `Back to locating the side: ${event.reason}`,

  declareChange: (event, where) =>
    withText(
      `Change declared: ${changeLabel(event.kind)}, ${where(event.target)}. Expected: ${event.expected}`,
      event.detail,
    ),
  withdrawChange: (event) => `The declared change was withdrawn: ${event.reason}`,
  applyChange: () => 'The change is in place.',
  judgeRetest: (event) =>
    event.override === null
      ? `Retest judged by the watch: ${event.outcome.judgement.verdict}.`
      : `Retest judged by hand, ${event.override.verdict}: ${event.override.reason}`,
  restoreChange: (event) => withText('The change was put back.', event.note),
  keepChange: (event) => withText('The change stays.', event.note),

  nameCulprit: (event, where) => `Culprit: ${where(event.place)}. ${event.explanation}`,
  withdrawCulprit: (event) => `The culprit was withdrawn: ${event.reason}`,
  chooseRemedy: (event) => `Remedy (${event.remedy.kind}): ${event.remedy.what}`,
  withdrawRemedy: (event) => `The remedy was withdrawn: ${event.reason}`,
  finishRemedy: (event) => `The remedy is done. As left: chain version ${event.asLeftChainVersion}.`,
  faultCameBack: (event) => `The fault came back: ${event.reason}`,
  close: (event) =>
    withText(
      event.override === null ? 'Closed.' : `Closed with less than the full watch: ${event.override.reason}.`,
      event.note,
    ),
  reopen: (event) => `Reopened: ${event.reason}`,

  escalate: (event) => `To second line: ${event.question}`,
  answerRequest: (event) => `Answer to second line: ${event.text}`,
  resubmit: (event) => withText('To second line again.', event.question ?? ''),
  recall: (event) => `Taken back from second line: ${event.reason}`,
  takeCase: () => 'Second line took the case.',
  askForMore: (event) => `Second line asks: ${event.requests.map((request) => request.text).join('; ')}`,
  directStep: (event) => `Second line directs a step: ${event.text}`,
  acceptCase: (event) => `Second line accepts the case. Finding: ${event.finding}`,
  handBack: (event) => `Second line hands the case back: ${event.reason}`,

  figuresChanged: () => 'The organisation’s figures have changed: what follows is decided by the new ones.',
  reproductionRevised: () => 'Nothing shows the fault any more: it has to be seen again.',

  evidenceAdded: (event) => `Evidence added: ${event.evidence.kind}.`,
  evidenceWithdrawn: (event) => `Evidence withdrawn: ${event.reason}`,
};

/**
 * One sentence for an event of a ticket's log.
 * @param event type, payload and time (`at`) as stored
 * @param record of the ticket now, for the names of places and for what was found; without it ids are used
 */
export function describeEvent(
  event: { type: string; at: string } & object,
  record: TriageRecord | null,
): string {
  const sentence = (sentences as Record<string, ((...all: never[]) => string) | undefined>)[event.type];
  if (sentence === undefined) return event.type;
  const chain = record?.asFound?.chain;
  const where: Where = (place) => (chain === undefined ? bareName(place) : placeName(chain, place));
  return sentence(event as never, where as never, record as never);
}

function bareName(place: Place): string {
  switch (place.kind) {
    case 'chain':
      return 'the chain';
    case 'device':
      return place.deviceId;
    case 'port':
      return `${place.deviceId} ${place.portId}`;
    case 'link':
      return place.linkId;
  }
}
