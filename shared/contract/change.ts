import { z } from 'zod';
import { place, settingKey, settingValue } from './chain.ts';
import { message } from './message.ts';
import { ownChange } from './own-change.ts';
import { id, instant, keptText, notRecorded, placeId } from './primitives.ts';
import { changeKinds, changeStatuses, lateFindings, verdicts } from './triage-names.ts';
import { reportedSoFar } from './unattended.ts';

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
/** What a quiet watch takes in all, and what was left of it; null in its place: no length of quiet would settle it. */
export const retestNeed = z.discriminatedUnion('mode', [
  z.object({ mode: z.literal('time'), totalWatchMin: z.number(), remainingMin: z.number() }),
  z.object({ mode: z.literal('trigger'), totalTries: z.int(), remainingTries: z.int() }),
  z.object({ mode: z.literal('look'), totalLooks: z.int(), remainingLooks: z.int() }),
]);
/** Revision of the organisation's figures that something was decided by. */
export const figuresRevision = z.union([z.int().min(1), notRecorded]);
/** What watches say against those before: the statistics of a retest, and of the watch after a remedy. */
export const watchesJudged = z.object({
  verdict,
  /** Chance of having seen what was seen if nothing had changed, 0..1; null when it can't be computed. */
  riskOfBeingFooled: z.number().nullable(),
  /** The chance of being fooled that was taken, 0..1: a quiet watch below it is `cleared`. */
  level: z.number(),
  needed: z.union([retestNeed.nullable(), notRecorded]),
  figures: figuresRevision,
});
export type WatchesJudged = z.infer<typeof watchesJudged>;

/** What the retest of a change says. Minutes and tries are of all its retest watches together. */
export const judgement = watchesJudged.extend({
  computed: verdict,
  watchedMin: z.number(),
  tries: z.int(),
  occurrences: z.int(),
  /** What came in over the days in which nobody watched; null where the change was not left in for any. */
  reported: reportedSoFar.nullable(),
  reasons: z.array(message),
  warnings: z.array(message),
  override: z.object({ reason: keptText }).nullable(),
  /** False where settings read before and after differ in more than what was declared. */
  attributable: z.boolean(),
  differences: z.array(settingDifference),
  at: instant,
  by: id,
});
export type Judgement = z.infer<typeof judgement>;
/** A judgement that does not count any more, and since when: more was watched, it was judged again, or corrected. */
export const earlierJudgement = judgement.extend({
  superseded: z.object({
    because: z.enum(['watchedOn', 'judgedAgain', 'correction']),
    at: instant,
    by: id,
  }),
});

/** That there are perhaps two faults: the chance (0..1), by how much rarer the fault came with the change in place. */
export const oneOfTwo = z.object({ chance: z.number().min(0).max(1) });

/** How a change came to be entered that was made before arrival, or without being declared: it counts for less. */
export const lateEntry = z.object({
  /** Who made it, in words: the client, a colleague, whoever entered it. */
  madeBy: keptText,
  /** Whether the fault was seen meanwhile, as whoever made it says. */
  seen: z.enum(lateFindings),
  at: instant,
});

/** One change to the chain, from its declaration to its end. */
export const changeRecord = z.object({
  id,
  /** The round of triage it belongs to, see triageRecord. */
  round: z.int().min(1),
  kind: changeKind,
  target: place,
  detail: keptText,
  expected: keptText,
  settings: z.array(declaredSetting),
  status: changeStatus,
  /** What followed from its kind when it was declared: a diagnostic change has to be put back. */
  diagnostic: z.boolean(),
  /** It may stay whatever the retest says. */
  plainCorrection: z.boolean(),
  canBeUndone: z.boolean(),
  /** Of the organisation's own kind, what it said of it then; null for the kinds that everybody has. */
  own: ownChange.nullable(),
  /** A fault that it clears names a culprit. */
  showsCulprit: z.boolean(),
  declaredAt: instant,
  appliedAt: instant.nullable(),
  finishedAt: instant.nullable(),
  judgement: judgement.nullable(),
  /** Oldest first. */
  earlierJudgements: z.array(earlierJudgement),
  closingNote: keptText.nullable(),
  /** Set where it stays although the fault still comes, more rarely: it put perhaps one of two faults right. */
  oneOfTwo: oneOfTwo.nullable(),
  /** Set where it was entered afterwards. */
  enteredLate: lateEntry.nullable(),
  by: id,
});
export type ChangeRecord = z.infer<typeof changeRecord>;
