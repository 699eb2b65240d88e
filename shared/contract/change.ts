import { z } from 'zod';
import { place, settingKey, settingValue } from './chain.ts';
import { id, instant, placeId } from './primitives.ts';
import { changeKinds, changeStatuses, verdicts } from './triage-names.ts';

export { changeKinds };
export const changeKind = z.enum(changeKinds);
export type ChangeKind = z.infer<typeof changeKind>;

export const verdict = z.enum(verdicts);
export type Verdict = z.infer<typeof verdict>;

export const declaredSetting = z.object({
  deviceId: placeId,
  key: settingKey,
  to: settingValue,
});

export const changeStatus = z.enum(changeStatuses);
/**
 * A setting that differs between the reading before and the reading after a change, or was declared and does not.
 * Null stands for a setting that was not in the reading. `declared`: it became exactly what was declared.
 */
export const settingDifference = z.object({
  deviceId: placeId,
  key: z.string(),
  before: z.unknown(),
  after: z.unknown(),
  declared: z.boolean(),
});
/** What the retest of a change says. Minutes and tries are of all its retest watches together. */
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

/** One change to the chain, from its declaration to its end. */
export const changeRecord = z.object({
  id,
  /** The round of triage it belongs to, see triageRecord. */
  round: z.int().min(1),
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
