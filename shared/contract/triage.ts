import { z } from 'zod';
import { chain, place } from './chain.ts';
import { findingSeverities } from './chain-names.ts';
import { changeKind, changeRecord, figuresRevision, watchesJudged } from './change.ts';
import { clientChoice, followUp } from './choice.ts';
import { diary, report } from './diary.ts';
import { evidenceRef } from './evidence.ts';
import { leavingCheck } from './leaving-check.ts';
import { ranges } from './limits.ts';
import { look } from './look.ts';
import { message } from './message.ts';
import { id, instant, keptText, notRecorded, ownLine, placeId, reason } from './primitives.ts';
import { symptom, whatChanged } from './symptom.ts';
import { workingStates } from './triage-names.ts';
import { unattendedWatch } from './unattended.ts';
import { wait } from './waiting.ts';
import { watch, withdrawal } from './watch.ts';

export * from './change.ts';
export * from './choice.ts';
export type { Diary, Report } from './diary.ts';
export * from './leaving-check.ts';
export * from './symptom.ts';
export {
  contentKinds,
  onlyWithKinds,
  patternKinds,
  patternTriggers,
  symptomKinds,
  watchPurposes,
  whatChangedKinds,
  workingStates,
} from './triage-names.ts';
export type { LeftSafely, UnattendedWatch } from './unattended.ts';
export * from './waiting.ts';
export * from './watch.ts';

/** Seen from a device that draws its own menu: `input` is upstream of it, `output` downstream. */
export const side = z.enum(['input', 'output']);
export type Side = z.infer<typeof side>;
/** An outcome that does not count any more because what it rested on was corrected. */
export const supersededByCorrection = z.object({ because: z.literal('correction'), at: instant, by: id });

/** What a side rests on: what a menu did when the fault came, what devices say of their signal, or who else shows it. */
export const sideProof = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('menu'), watchIds: z.array(id), occurrences: z.int() }),
  z.object({
    kind: z.literal('trace'),
    lookIds: z.array(id),
    /** The device receives right and sends wrong: it is at fault, or what follows it told it so. */
    sendsWrong: z.boolean(),
  }),
  z.object({ kind: z.literal('witness'), lookIds: z.array(id) }),
]);
export type SideProof = z.infer<typeof sideProof>;

export const sideObservation = z.object({
  deviceId: placeId,
  side,
  proof: sideProof,
  round: z.int().min(1),
  at: instant,
  by: id,
  withdrawn: withdrawal.nullable(),
  superseded: supersededByCorrection.nullable(),
});
export type SideObservation = z.infer<typeof sideObservation>;

export const remedy = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('permanent'), what: reason }),
  z.object({
    kind: z.literal('workaround'),
    what: reason,
    limits: reason,
    acceptedBy: ownLine,
    acceptedAt: instant,
  }),
  z.object({ kind: z.literal('noFaultFound'), what: reason }),
]);
/** A part replaced because it is suspected, by the client's choice: unproven, and asked after later. */
export const replacedOnSuspicion = z.object({
  kind: z.literal('onSuspicion'),
  what: keptText,
  place,
  /** Chance (0..1) that it puts the fault right, as the client was told. */
  chance: z.number().min(0).max(1),
  acceptedBy: keptText,
  acceptedAt: instant,
});
/** How a ticket ends, as the record holds it. */
export const remedyKept = z.union([remedy, replacedOnSuspicion]);
export type Remedy = z.infer<typeof remedyKept>;

export const confirmation = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('returned'), watchId: id }),
  z.object({ kind: z.literal('notDone'), reason }),
]);
export const culprit = z.object({
  place,
  explanation: keptText,
  changeId: id.nullable(),
  confirmation,
  namedBy: z.enum(['technician', 'support']),
  at: instant,
  by: id,
});
export type Culprit = z.infer<typeof culprit>;

export const completenessItems = [
  'audit',
  'whatChanged',
  'reproduction',
  'side',
  'substitution',
  'firmware',
  'settings',
  'linkPhotos',
  'edid',
  'logs',
] as const;
export const completenessItem = z.enum(completenessItems);
export type CompletenessItem = z.infer<typeof completenessItem>;
export const missingItem = z.object({ item: completenessItem, place: place.nullable(), text: message });
export type MissingItem = z.infer<typeof missingItem>;
export const waiver = z.object({ item: completenessItem, reason });
export type Waiver = z.infer<typeof waiver>;

/** What second line wants of the technician: something to send, or a step to do. */
export const supportRequest = z.object({
  id,
  kind: z.enum(['information', 'step']),
  item: completenessItem.nullable(),
  text: keptText,
  change: z.object({ kind: changeKind, target: place }).nullable(),
  at: instant,
  by: id,
  answer: z.object({ text: keptText, evidenceIds: z.array(id), at: instant, by: id }).nullable(),
});
export type SupportRequest = z.infer<typeof supportRequest>;

/** A thing that was missing when a case was handed over, and was waived. */
export const waivedItem = missingItem.omit({ text: true });
export const escalation = z.object({
  /** The packet's version, 1 for the first. */
  version: z.int(),
  question: keptText,
  waivers: z.array(waiver),
  /** What the waivers were needed for. */
  waived: z.union([z.array(waivedItem), notRecorded]),
  at: instant,
  by: id,
  takenBy: id.nullable(),
  outcome: z
    .object({
      kind: z.enum(['accepted', 'handedBack', 'stepDirected', 'resubmitted', 'recalled']),
      /** What was said with it; empty with `resubmitted`. */
      text: keptText,
      at: instant,
      by: id,
    })
    .nullable(),
});
export type Escalation = z.infer<typeof escalation>;

/** The organisation's figures that a ticket is worked by. */
export const triageSettings = z.object({
  /** Of the organisation's document that they stand in. */
  revision: figuresRevision,
  /** Chance taken, per retest, of calling a fault cleared that is still there. */
  risk: z.number().min(ranges.risk.min).max(ranges.risk.max),
  /** Days after closing in which a ticket may be reopened. */
  reopenDays: z.int().min(ranges.reopenDays.min).max(ranges.reopenDays.max),
});
export type TriageSettings = z.infer<typeof triageSettings>;

export const workingState = z.enum(workingStates);
export type WorkingState = z.infer<typeof workingState>;

/** The chain as the ticket leaves it, and how many watches there were before: later ones verify the remedy. */
export const asLeft = z.object({
  chainVersion: z.int(),
  watchesBefore: z.int().min(0),
  /** With the parts that the repair put in; left out where none were. */
  chain: chain.optional(),
  at: instant,
  by: id,
});
/** What the watches since the remedy said when the ticket was closed. */
export const closingProof = watchesJudged.extend({ watchedMin: z.number(), occurrences: z.int() });
export const closing = z.object({
  note: keptText,
  override: z.object({ reason: keptText }).nullable(),
  proof: z.union([closingProof, notRecorded]),
  at: instant,
  by: id,
});

/** The quiet watching that “no fault found” rests on. */
export const quietProof = z.object({
  watchedMin: z.union([z.number(), notRecorded]),
  neededMin: z.union([z.number(), notRecorded]),
  /** Tries or looks without the fault, where those are counted and not minutes. */
  counted: z.object({ mode: z.enum(['trigger', 'look']), done: z.int(), needed: z.int() }).nullable(),
  /** Chance taken that a fault as frequent as reported stayed away that long, 0..1. */
  level: z.number(),
  figures: figuresRevision,
});
export type QuietProof = z.infer<typeof quietProof>;

/** A culprit and remedy that did not hold, kept with the reason. */
export const setAside = z.object({
  culprit: culprit.nullable(),
  remedy: remedyKept.nullable(),
  quietProof: quietProof.nullable(),
  asLeft: asLeft.nullable(),
  closing: closing.nullable(),
  because: z.enum([
    'culpritWithdrawn',
    'remedyWithdrawn',
    'faultCameBack',
    'reopened',
    'caseAccepted',
    'correction',
  ]),
  reason: keptText,
  at: instant,
  by: id,
});
export type SetAside = z.infer<typeof setAside>;

/** A finding of the prerequisite audit as it was looked at: which rule, how urgent, where. */
export const auditFinding = z.object({ code: z.string(), severity: z.enum(findingSeverities), place });
export type AuditFinding = z.infer<typeof auditFinding>;
/** What the audit found; of audits in version 1 only how many findings there were was kept. */
export const auditFindings = z.union([
  z.array(auditFinding),
  z.object({ notRecorded: z.literal(true), mustFix: z.int(), shouldFix: z.int() }),
]);
export type AuditFindings = z.infer<typeof auditFindings>;

/**
 * All that triage knows of a ticket; what the machine's context holds, and what replay of the log rebuilds.
 * A fault that comes back after a remedy, and a reopened ticket, begin a new round: watches, sides and changes of
 * earlier rounds stay in the record but prove nothing about the chain as it is now.
 */
export const triageRecord = z.object({
  ticketId: id,
  openedAt: instant,
  openedBy: id,
  settings: triageSettings,
  symptom,
  round: z.int().min(1),
  /** While second line has the case, or the ticket waits: where work goes on afterwards. */
  resumeAt: workingState.nullable(),
  audit: z
    .object({
      chainVersion: z.int(),
      findings: auditFindings,
      /** Devices whose firmware is below the level the organisation has set for their model. */
      firmwareBelowLevel: z.array(placeId),
      note: keptText,
      at: instant,
      by: id,
    })
    .nullable(),
  whatChanged: z.object({ answers: z.array(whatChanged), at: instant, by: id }).nullable(),
  asFound: z.object({ chainVersion: z.int(), chain, at: instant, by: id }).nullable(),
  asLeft: asLeft.nullable(),
  watches: z.array(watch),
  reproductionAccepted: z.boolean(),
  /** Verify watches in which the fault came back and so began this round: they count as its reproduction. */
  cameBackWatchIds: z.array(id),
  sides: z.array(sideObservation),
  /** Work goes on without a side, in the round that is named; null where one is looked for or known. */
  withoutSide: z.object({ reason: keptText, round: z.int().min(1), at: instant, by: id }).nullable(),
  /** What was looked at without changing anything, oldest first. */
  looks: z.array(look),
  changes: z.array(changeRecord),
  culprit: culprit.nullable(),
  remedy: remedyKept.nullable(),
  /** With the remedy `noFaultFound`. */
  quietProof: quietProof.nullable(),
  evidence: z.array(evidenceRef),
  escalations: z.array(escalation),
  requests: z.array(supportRequest),
  /** Oldest first, as are the reports that came by them. */
  diaries: z.array(diary),
  reports: z.array(report),
  /** Changes that were left in between visits. */
  unattended: z.array(unattendedWatch),
  notes: z.array(z.object({ text: keptText, at: instant, by: id })),
  /** Oldest first; the last one stands while the ticket waits. */
  waits: z.array(wait),
  /** Oldest first. */
  choices: z.array(clientChoice),
  /** Of this round; null while nobody has tried anything before leaving. */
  leavingCheck: leavingCheck.nullable(),
  closedAt: instant.nullable(),
  /** After closing on a repair that nothing has proven. */
  followUp: followUp.nullable(),
  closing: closing.nullable(),
  setAside: z.array(setAside),
  reopenings: z.array(z.object({ reason: keptText, at: instant, by: id })),
});
export type TriageRecord = z.infer<typeof triageRecord>;
