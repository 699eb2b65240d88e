import { z } from 'zod';
import { place } from './chain.ts';
import { installedPart } from './installed.ts';
import { mostRequests } from './limits.ts';
import { lookSent } from './look.ts';
import { sideProofKinds } from './look-names.ts';
import { shownFindings, shownSide, shownVerdict } from './outcome.ts';
import { id, instant, minutes, ownLine, placeId, reason, text, versionNumber } from './primitives.ts';
import {
  actingParty,
  changeKind,
  checkAnswer,
  completenessItem,
  confirmation,
  declaredSetting,
  menuAnswer,
  pictureCheck,
  remedy,
  symptom,
  verdict,
  waitingKind,
  waiver,
  watchConditions,
  watchMode,
  wayOn,
  whatChanged,
} from './triage.ts';
import {
  choiceWays,
  followUpOutcomes,
  lateFindings,
  loggedAnswers,
  patternTriggers,
} from './triage-names.ts';
import { clientsYes, firmwareRead, leftSafely, loggedOccurrence } from './unattended.ts';

/**
 * When it happened by the sender's clock: a phone that was out of signal sends its commands later.
 * Absent: when the server takes it.
 */
const happened = { happenedAt: instant.optional() };
const command = <Type extends string, Shape extends z.ZodRawShape>(type: Type, shape: Shape) =>
  z.object({ type: z.literal(type), ...happened, ...shape });

/** What a person may do to a ticket; ids that are left out are given by the server. */
export const ticketCommand = z.discriminatedUnion('type', [
  // anyone on the ticket
  command('note', { text: text.min(1) }),
  command('amendIntake', { symptom }),
  /** What a client reported was no occurrence: tapped by mistake, or something else. */
  command('withdrawReport', { reportId: id, reason }),

  // baseline
  command('reviewAudit', {
    chainVersion: versionNumber,
    note: text.default(''),
    shown: shownFindings.optional(),
  }),
  command('answerWhatChanged', { answers: z.array(whatChanged).min(1).max(20) }),
  command('recordAsFound', { chainVersion: versionNumber }),

  // watching, in reproduce, locateSide, substitute and verify
  command('startWatch', {
    watchId: id.optional(),
    mode: watchMode.default('time'),
    trigger: ownLine.nullable().default(null),
    triggerKind: z.enum(patternTriggers).nullable().default(null),
    conditions: watchConditions.prefault({}),
    plannedMin: minutes.nullable().default(null),
    /** In locateSide: the device whose menu is up. */
    menuDeviceId: placeId.nullable().default(null),
  }),
  command('recordOccurrence', {
    occurrenceId: id.optional(),
    durationS: z.number().min(0).max(86_400).nullable().default(null),
    menu: menuAnswer.nullable().default(null),
    description: text.default(''),
  }),
  /** An occurrence that a log shows, in a watch that has ended: confirmed by the one who watched. */
  command('confirmOccurrence', {
    watchId: id,
    occurrenceId: id.optional(),
    occurredAt: instant,
    durationS: z.number().min(0).max(86_400).nullable().default(null),
    menu: menuAnswer.nullable().default(null),
    description: text.default(''),
    /** The log that shows it. */
    evidenceId: id,
  }),
  /** What a log shows at a moment of a watch was not the fault, says the one who watched; or is open again after all. */
  command('answerLogged', {
    watchId: id,
    occurredAt: instant,
    /** The log that shows it. */
    evidenceId: id,
    answer: z.enum(loggedAnswers),
  }),
  command('recordTry', {}),
  command('withdrawOccurrence', { occurrenceId: id, reason }),
  /** It came at another moment of the same watch. */
  command('correctOccurrence', { occurrenceId: id, occurredAt: instant, reason }),
  /** The watch was none: nobody looked, or something else was changed meanwhile. */
  command('voidWatch', { watchId: id, reason }),
  command('endWatch', {}),
  command('acceptReproduction', {}),

  // locateSide
  command('concludeSide', {
    deviceId: placeId,
    /** What it is concluded from; left out, a menu. */
    from: z.enum(sideProofKinds).optional(),
    shown: shownSide.optional(),
  }),
  command('withdrawSide', { deviceId: placeId, reason }),
  command('beginSubstitution', {}),
  /** No side can be proven: work goes on all the same, and the record says so. */
  command('goOnWithoutSide', { reason }),

  // looking without changing anything, in every state of an open ticket
  command('recordLook', {
    lookId: id.optional(),
    what: lookSent,
    /** The photo of it. */
    evidenceId: id.nullable().default(null),
  }),
  command('withdrawLook', { lookId: id, reason }),

  // substitute
  command('declareChange', {
    changeId: id.optional(),
    kind: changeKind,
    target: place,
    detail: text.default(''),
    expected: reason,
    settings: z.array(declaredSetting).max(20).default([]),
    /** Which of the organisation's own kinds; null for every other. */
    ownKindId: id.nullable().default(null),
    /** Only of a change that is described in words: it may stay once it cleared the fault. */
    mayStay: z.boolean().default(false),
  }),
  /** A change that was made before arrival, or without declaring it: entered at the time at which it was made. */
  command('enterLateChange', {
    changeId: id.optional(),
    kind: changeKind,
    target: place,
    detail: text.default(''),
    madeAt: instant,
    madeBy: ownLine,
    /** When it was undone; null: it is still there. */
    undoneAt: instant.nullable().default(null),
    seen: z.enum(lateFindings).default('notKnown'),
    /** As in `declareChange`. */
    ownKindId: id.nullable().default(null),
    mayStay: z.boolean().default(false),
  }),
  command('withdrawChange', { reason }),
  command('applyChange', {}),
  command('judgeRetest', {
    override: z.object({ verdict, reason }).nullable().default(null),
    shown: shownVerdict.optional(),
  }),
  /** The change stays in between visits, and what comes meanwhile is reported or logged. */
  command('leaveInPlace', {
    unattendedId: id.optional(),
    until: instant,
    owner: ownLine,
    safety: leftSafely,
    clientsYes,
    firmware: z.array(firmwareRead).min(1).max(50),
  }),
  command('endUnattended', {
    firmware: z.array(firmwareRead).min(1).max(50),
    logged: z.array(loggedOccurrence).max(200).default([]),
  }),
  command('restoreChange', { note: text.default('') }),
  command('keepChange', {
    note: text.default(''),
    /** The fault came more rarely and is not gone: the change stays as one of perhaps two, and a new round begins. */
    oneOfTwo: z.boolean().default(false),
  }),
  command('locateSideAgain', { reason }),
  command('nameCulprit', { changeId: id, place, explanation: reason, confirmation }),

  // culpritFound, remedy, verify, closed
  command('withdrawCulprit', { reason }),
  command('chooseRemedy', { remedy }),
  command('withdrawRemedy', { reason }),
  command('finishRemedy', {
    /** The newest that the sender knows; with parts installed, the server adds one that has them. */
    asLeftChainVersion: versionNumber,
    installed: z.array(installedPart).max(10).default([]),
  }),
  command('faultCameBack', { reason }),
  command('close', { note: text.default(''), override: z.object({ reason }).nullable().default(null) }),
  command('reopen', { reason }),

  // waiting, for whatever has to come first
  command('waitFor', {
    kind: waitingKind,
    what: reason,
    actor: actingParty,
    actorName: ownLine.nullable().default(null),
    until: instant,
  }),
  command('resumeWork', { note: text.default('') }),

  // the client's choice, and what came of it
  command('recordChoice', {
    way: z.enum(choiceWays),
    offered: z.array(wayOn).max(3).default([]),
    chosenBy: ownLine,
  }),
  command('replaceOnSuspicion', { place, what: reason }),
  command('recordFollowUp', {
    heard: z.enum(followUpOutcomes),
    note: text.default(''),
    /** With `notReached`: when to ask again. */
    askAgainBy: instant.nullable().default(null),
  }),

  // before leaving
  command('checkBeforeLeaving', {
    pictures: z.array(pictureCheck).max(2500),
    sound: checkAnswer,
    usualStart: checkAnswer,
    note: text.default(''),
  }),

  // escalation
  command('escalate', { question: reason, waivers: z.array(waiver).max(20).default([]) }),
  command('answerRequest', { requestId: id, text: reason, evidenceIds: z.array(id).max(50).default([]) }),
  command('resubmit', { question: reason.optional(), waivers: z.array(waiver).max(20).default([]) }),
  command('recall', { reason }),

  // second line
  command('takeCase', {}),
  command('askForMore', {
    requests: z
      .array(
        z.object({ requestId: id.optional(), item: completenessItem.nullable().default(null), text: reason }),
      )
      .min(1)
      .max(mostRequests),
  }),
  command('directStep', {
    requestId: id.optional(),
    text: reason,
    change: z.object({ kind: changeKind, target: place }).nullable().default(null),
  }),
  command('acceptCase', { finding: reason, place: place.nullable().default(null) }),
  command('handBack', { reason }),
]);
export type TicketCommand = z.infer<typeof ticketCommand>;
export type TicketCommandType = TicketCommand['type'];
export const ticketCommandTypes = ticketCommand.options.map((option) => option.shape.type.value);
