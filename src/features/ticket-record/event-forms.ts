import { z } from 'zod';
import { chain } from '../../../shared/contract/chain.ts';
import { type TicketCommandType, ticketCommand } from '../../../shared/contract/commands.ts';
import { cameBackAnswers, lastedAnswers } from '../../../shared/contract/diary-names.ts';
import { evidenceRef } from '../../../shared/contract/evidence.ts';
import { signalLook } from '../../../shared/contract/look.ts';
import { personText, personTextsIn, type TextAt } from '../../../shared/contract/person-text.ts';
import { id, instant, placeId, reason } from '../../../shared/contract/primitives.ts';
import { newTicket, ticketUpdate } from '../../../shared/contract/ticket.ts';
import {
  auditFindings,
  changeRecord,
  closing,
  escalation,
  judgement,
  oneOfTwo,
  quietProof,
  replacedOnSuspicion,
  sideObservation,
  triageSettings,
  wait,
  watch,
  workingState,
} from '../../../shared/contract/triage.ts';
import { unattendedWatch } from '../../../shared/contract/unattended.ts';
import type { Outcomes, TriageEventType } from '../../../state-machines/index.ts';
import type { FactType } from './facts.ts';

type EventType = TriageEventType | FactType;

const none = z.object({});
const signalBefore = signalLook.pick({ receives: true, sends: true, intended: true }).extend({ lookId: id });
const sideDecided = { side: true, proof: true } as const;

/** What events hold that no command of the contract describes. A type of event that is not here is a type error. */
const otherForms: Record<Exclude<EventType, TicketCommandType>, z.ZodType> = {
  open: newTicket,
  update: ticketUpdate,
  assign: none,
  takeOver: none,
  textErased: z.object({ reason }),
  reportsErased: z.object({ diaryId: id, reports: z.int() }),
  evidenceAdded: z.object({ evidence: evidenceRef }),
  evidenceWithdrawn: z.object({ evidenceId: id, reason }),
  diaryOpened: z.object({ diaryId: id, until: instant }),
  diaryClosed: z.object({ diaryId: id }),
  // The client may delete what they sent, a moment at home among it.
  occurrenceReported: z.object({ reportId: id, diaryId: id, occurredAt: personText(instant.clone()) }),
  reportAnswered: z.object({
    reportId: id,
    lasted: personText(z.enum(lastedAnswers)).nullable(),
    cameBack: personText(z.enum(cameBackAnswers)).nullable(),
  }),
  figuresChanged: z.object({ settings: triageSettings }),
  reproductionRevised: none,
  sideRevised: z.object({ deviceId: placeId, outcome: sideObservation.pick(sideDecided).nullable() }),
  judgementRevised: z.object({
    outcome: z.object({
      changeId: id,
      judgement: judgement.omit({ at: true, by: true, override: true }).nullable(),
      oneOfTwo: oneOfTwo.nullable(),
    }),
  }),
  culpritRevised: z.object({ outcome: z.object({ resumeAt: workingState }) }),
  remedyRevised: none,
};

const finishing = z.object({ changeId: id, finishedAt: instant });
const handedOver = escalation.pick({
  version: true,
  question: true,
  waivers: true,
  waived: true,
  takenBy: true,
});

/** What was decided on a command, as its event holds it. An outcome, or a part of one, that is not here is a type error. */
const outcomeForms: { readonly [Type in keyof Outcomes]: z.ZodType<Outcomes[Type]> } = {
  reviewAudit: z.object({ findings: auditFindings, firmwareBelowLevel: z.array(placeId) }),
  startWatch: watch.pick({
    purpose: true,
    trigger: true,
    triggerKind: true,
    startedAt: true,
    menuDeviceId: true,
    changeId: true,
  }),
  concludeSide: sideObservation.pick(sideDecided),
  recordLook: z.object({ changeId: id.nullable(), before: signalBefore.nullable() }),
  declareChange: changeRecord.pick({
    declaredAt: true,
    diagnostic: true,
    plainCorrection: true,
    canBeUndone: true,
    showsCulprit: true,
    own: true,
  }),
  enterLateChange: changeRecord
    .pick({
      diagnostic: true,
      plainCorrection: true,
      canBeUndone: true,
      showsCulprit: true,
      own: true,
      finishedAt: true,
    })
    .extend({ status: z.enum(['applied', 'restored', 'kept']) }),
  applyChange: z.object({ changeId: id, appliedAt: instant }),
  withdrawChange: finishing,
  leaveInPlace: unattendedWatch.pick({ changeId: true, startedAt: true }),
  endUnattended: z.object({ unattendedId: id, endedAt: instant }),
  restoreChange: finishing,
  keepChange: finishing.extend({ oneOfTwo: oneOfTwo.nullable(), watchIds: z.array(id) }),
  judgeRetest: z.object({ changeId: id, judgement: judgement.omit({ at: true, by: true }) }),
  withdrawCulprit: z.object({ resumeAt: workingState }),
  chooseRemedy: z.object({ quietProof: quietProof.nullable() }),
  waitFor: wait.pick({ leftInPlace: true }),
  replaceOnSuspicion: replacedOnSuspicion.pick({ chance: true, acceptedBy: true, acceptedAt: true }),
  recordFollowUp: z.object({ askBy: instant.nullable() }),
  close: closing.pick({ proof: true }).extend({ followUpBy: instant.nullable() }),
  faultCameBack: z.object({ watchIds: z.array(id) }),
  escalate: handedOver,
  resubmit: handedOver,
};

/** What is added to a command before it is an event, beside its outcome and ids. */
const additions: Partial<Record<string, z.ZodType>> = {
  recordAsFound: z.object({ chain }),
  finishRemedy: z.object({ chain: chain.optional() }),
} satisfies Partial<Record<TicketCommandType, z.ZodType>>;

function formsOfCommand(form: (typeof ticketCommand.options)[number]): [string, z.ZodType[]] {
  const type = form.shape.type.value;
  const outcome = (outcomeForms as Partial<Record<string, z.ZodType>>)[type];
  const addition = additions[type];
  return [
    type,
    [
      form,
      ...(outcome === undefined ? [] : [z.object({ outcome })]),
      ...(addition === undefined ? [] : [addition]),
    ],
  ];
}

/** The forms of an event's payload by its type; together they describe all texts of persons in it. */
export const eventForms: ReadonlyMap<string, readonly z.ZodType[]> = new Map([
  ...ticketCommand.options.map(formsOfCommand),
  ...Object.entries(otherForms).map(([type, form]): [string, z.ZodType[]] => [type, [form]]),
]);

/** Every text of persons in the payload of an event that is about to be written. */
export function textsInEvent(type: string, payload: unknown): TextAt[] {
  const forms = eventForms.get(type);
  if (forms === undefined) throw new Error(`An event of type ${type} has no form to find its texts by.`);
  return forms.flatMap((form) => personTextsIn(form, payload));
}
