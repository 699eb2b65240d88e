import { z } from 'zod';
import { chain, place } from './chain.ts';
import { evidenceRef } from './evidence.ts';
import { id, instant, line, minutes, placeId, reason, text } from './primitives.ts';

/** What may be done to a chain on purpose. What each needs, risks and applies to is computed, see state-machines/. */
export const changeKinds = [
  'reseat',
  'replaceCable',
  'temporaryCable',
  'sourceIntoProcessor',
  'bypassDevice',
  'unplugBranch',
  'movePort',
  'raisePortMode',
  'disableProcessing',
  'limitInputBandwidth',
  'limitOutputBandwidth',
  'reissueHotPlug',
  'insertSyncSwitch',
  'moveProcessorToDisplay',
  'substituteDisplay',
  'restoreSettings',
  'updateFirmware',
] as const;
export const changeKind = z.enum(changeKinds);
export type ChangeKind = z.infer<typeof changeKind>;

export const verdicts = ['cleared', 'persists', 'inconclusive'] as const;
export const verdict = z.enum(verdicts);
export type Verdict = z.infer<typeof verdict>;

/** Seen from a device that draws its own menu: `input` is upstream of it, `output` downstream. */
export const side = z.enum(['input', 'output']);
export type Side = z.infer<typeof side>;
/** Did the device's own menu stay in the picture when the fault came? */
export const menuAnswer = z.enum(['stayed', 'vanished']);

export const watchPurposes = ['reproduce', 'side', 'retest', 'confirm', 'verify'] as const;
export const watchMode = z.enum(['time', 'trigger']);

export const occurrence = z.object({
  id,
  at: instant,
  durationS: z.number().min(0).nullable(),
  menu: menuAnswer.nullable(),
  description: z.string(),
  withdrawn: z.object({ at: instant, by: id, reason: z.string() }).nullable(),
});
export type Occurrence = z.infer<typeof occurrence>;

export const watch = z.object({
  id,
  purpose: z.enum(watchPurposes),
  mode: watchMode,
  /** What makes the fault come, in words; with mode `trigger` each try is one such switching. */
  trigger: z.string().nullable(),
  plannedMin: minutes.nullable(),
  startedAt: instant,
  endedAt: instant.nullable(),
  /** Tries made, failed ones included; 0 with mode `time`. */
  tries: z.int().min(0),
  occurrences: z.array(occurrence),
  menuDeviceId: placeId.nullable(),
  changeId: id.nullable(),
  by: id,
});
export type Watch = z.infer<typeof watch>;

export const declaredSetting = z.object({
  deviceId: placeId,
  key: z.string().min(1).max(120),
  to: z.union([z.string().max(500), z.number(), z.boolean()]),
});

export const changeStatus = z.enum(['declared', 'applied', 'judged', 'restored', 'kept', 'withdrawn']);
/** A setting that differs between the reading before and the reading after a change. */
export const settingDifference = z.object({
  deviceId: placeId,
  key: z.string(),
  before: z.unknown(),
  after: z.unknown(),
  declared: z.boolean(),
});
export const judgement = z.object({
  verdict,
  computed: verdict,
  /** Chance of having seen what was seen if nothing had changed, 0..1; null when it can't be computed. */
  riskOfBeingFooled: z.number().nullable(),
  watchedMin: z.number(),
  tries: z.int(),
  occurrences: z.int(),
  reasons: z.array(z.string()),
  warnings: z.array(z.string()),
  override: z.object({ reason: z.string() }).nullable(),
  /** False where settings read before and after differ in more than what was declared. */
  attributable: z.boolean(),
  differences: z.array(settingDifference),
  at: instant,
  by: id,
});
export type Judgement = z.infer<typeof judgement>;

export const changeRecord = z.object({
  id,
  kind: changeKind,
  target: place,
  detail: z.string(),
  expected: z.string(),
  settings: z.array(declaredSetting),
  status: changeStatus,
  /** Follows from the kind: a diagnostic change has to be put back. */
  diagnostic: z.boolean(),
  declaredAt: instant,
  appliedAt: instant.nullable(),
  finishedAt: instant.nullable(),
  judgement: judgement.nullable(),
  closingNote: z.string().nullable(),
  by: id,
});
export type ChangeRecord = z.infer<typeof changeRecord>;

export const sideObservation = z.object({
  deviceId: placeId,
  side,
  watchIds: z.array(id),
  occurrences: z.int(),
  at: instant,
  by: id,
});
export type SideObservation = z.infer<typeof sideObservation>;

export const whatChangedKinds = [
  'cable',
  'device',
  'firmware',
  'setting',
  'move',
  'buildingWork',
  'other',
  'nothing',
  'notKnown',
] as const;
export const whatChanged = z.object({
  kind: z.enum(whatChangedKinds),
  text: text.default(''),
  when: z.string().trim().max(100).nullable().default(null),
});
export type WhatChanged = z.infer<typeof whatChanged>;

export const symptomKinds = [
  'noPicture',
  'dropOuts',
  'sparkles',
  'noHdrOrWrongColour',
  'wrongRateOrResolution',
  'contentProtectionMessage',
  'soundOnly',
] as const;
export const symptom = z.object({
  kind: z.enum(symptomKinds),
  /** How often, as the client tells it; null when not known. */
  perHour: z.number().positive().max(3600).nullable().default(null),
  lastsS: z.number().min(0).max(86_400).nullable().default(null),
});
export type Symptom = z.infer<typeof symptom>;

export const remedy = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('permanent'), what: reason }),
  z.object({
    kind: z.literal('workaround'),
    what: reason,
    limits: reason,
    acceptedBy: line,
    acceptedAt: instant,
  }),
  z.object({ kind: z.literal('noFaultFound'), what: reason }),
]);
export type Remedy = z.infer<typeof remedy>;

export const confirmation = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('returned'), watchId: id }),
  z.object({ kind: z.literal('notDone'), reason }),
]);
export const culprit = z.object({
  place,
  explanation: z.string(),
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
export const missingItem = z.object({ item: completenessItem, place: place.nullable(), text: z.string() });
export type MissingItem = z.infer<typeof missingItem>;
export const waiver = z.object({ item: completenessItem, reason });
export type Waiver = z.infer<typeof waiver>;

/** What second line wants of the technician: something to send, or a step to do. */
export const supportRequest = z.object({
  id,
  kind: z.enum(['information', 'step']),
  item: completenessItem.nullable(),
  text: z.string(),
  change: z.object({ kind: changeKind, target: place }).nullable(),
  at: instant,
  by: id,
  answer: z.object({ text: z.string(), evidenceIds: z.array(id), at: instant, by: id }).nullable(),
});
export type SupportRequest = z.infer<typeof supportRequest>;

export const escalation = z.object({
  /** The packet's version, 1 for the first. */
  version: z.int(),
  question: z.string(),
  waivers: z.array(waiver),
  at: instant,
  by: id,
  takenBy: id.nullable(),
  outcome: z
    .object({
      kind: z.enum(['accepted', 'handedBack', 'stepDirected']),
      text: z.string(),
      at: instant,
      by: id,
    })
    .nullable(),
});
export type Escalation = z.infer<typeof escalation>;

export const triageSettings = z.object({
  /** Chance taken, per retest, of calling a fault cleared that is still there. */
  risk: z.number().min(0.001).max(0.5),
  /** Days after closing in which a ticket may be reopened. */
  reopenDays: z.int().min(0).max(3650),
});
export type TriageSettings = z.infer<typeof triageSettings>;

/** All that triage knows of a ticket; what the machine's context holds, and what replay of the log rebuilds. */
export const triageRecord = z.object({
  ticketId: id,
  settings: triageSettings,
  symptom,
  audit: z
    .object({
      chainVersion: z.int(),
      mustFix: z.int(),
      shouldFix: z.int(),
      note: z.string(),
      at: instant,
      by: id,
    })
    .nullable(),
  whatChanged: z.object({ answers: z.array(whatChanged), at: instant, by: id }).nullable(),
  asFound: z.object({ chainVersion: z.int(), chain, at: instant, by: id }).nullable(),
  asLeft: z.object({ chainVersion: z.int(), at: instant, by: id }).nullable(),
  watches: z.array(watch),
  reproductionAccepted: z.boolean(),
  sides: z.array(sideObservation),
  changes: z.array(changeRecord),
  culprit: culprit.nullable(),
  remedy: remedy.nullable(),
  evidence: z.array(evidenceRef),
  escalations: z.array(escalation),
  requests: z.array(supportRequest),
  notes: z.array(z.object({ text: z.string(), at: instant, by: id })),
  closedAt: instant.nullable(),
  reopenings: z.array(z.object({ reason: z.string(), at: instant, by: id })),
});
export type TriageRecord = z.infer<typeof triageRecord>;
