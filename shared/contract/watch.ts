import { z } from 'zod';
import { id, instant, keptText, minutes, ownLine, placeId } from './primitives.ts';
import { patternTriggers, watchModes, watchPurposes } from './triage-names.ts';

/** Did the device's own menu stay in the picture when the fault came? */
export const menuAnswer = z.enum(['stayed', 'vanished']);

export const watchMode = z.enum(watchModes);

/**
 * Under what it was watched, as far as somebody said: a fault that comes only when warm, or only with one title, has to
 * be watched for under the same before a quiet watch says anything.
 */
export const watchConditions = z.object({
  /** Minutes since the devices were switched on, when the watch began. */
  sincePowerOnMin: minutes.nullable().default(null),
  /** Whether that was playing which the fault shows only with. */
  asTold: z.boolean().nullable().default(null),
  /** What was playing. */
  content: ownLine.nullable().default(null),
});
export type WatchConditions = z.infer<typeof watchConditions>;

/** Nothing is taken out of a record: what turned out wrong stays, with who withdrew it and why. */
export const withdrawal = z.object({ at: instant, by: id, reason: keptText });

/** A moment that was put right: when it was said to be before. */
export const momentCorrected = withdrawal.extend({ was: instant });

export const occurrence = z.object({
  id,
  at: instant,
  /** Oldest first. */
  corrections: z.array(momentCorrected),
  durationS: z.number().min(0).nullable(),
  menu: menuAnswer.nullable(),
  description: keptText,
  withdrawn: withdrawal.nullable(),
});
export type Occurrence = z.infer<typeof occurrence>;

export const watch = z.object({
  id,
  /** The round of triage it belongs to, see triageRecord. */
  round: z.int().min(1),
  purpose: z.enum(watchPurposes),
  mode: watchMode,
  /** What makes the fault come, in words; with mode `trigger` each try is one such switching. */
  trigger: keptText.nullable(),
  /** The same by its name, where it has one. */
  triggerKind: z.enum(patternTriggers).nullable(),
  conditions: watchConditions,
  plannedMin: minutes.nullable(),
  startedAt: instant,
  endedAt: instant.nullable(),
  /** Tries made, failed ones included; 0 with mode `time`. */
  tries: z.int().min(0),
  occurrences: z.array(occurrence),
  /** Moments at which a log shows what was not the fault; left out while nobody has said so of any. */
  loggedAsNone: z.array(z.object({ at: instant, evidenceId: id, by: id })).optional(),
  /** With purpose `side`: the device whose menu is up. */
  menuDeviceId: placeId.nullable(),
  /** With purpose `retest` the change in place, with `confirm` the one that was put back. */
  changeId: id.nullable(),
  by: id,
  /** Set where it turned out to be no watch: nothing rests on it any more. */
  voided: withdrawal.nullable(),
});
export type Watch = z.infer<typeof watch>;
