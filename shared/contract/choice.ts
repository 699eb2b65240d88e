import { z } from 'zod';
import { place } from './chain.ts';
import { changeKind } from './change.ts';
import { id, instant, keptText } from './primitives.ts';
import { choiceWays, followUpOutcomes } from './triage-names.ts';

/** A way on where what is left to test costs more than it may bring, and what it takes. */
export const wayOn = z.object({
  way: z.enum(choiceWays),
  /** Of work, on average. */
  minutes: z.number().min(0),
  /** Until it is known how it went, on average. */
  days: z.number().min(0),
  /** Chance that the fault is gone, or its cause known, at the end of it; 0..1. */
  sureness: z.number().min(0).max(1),
  /** With `replace`, what would be replaced on suspicion; with `goOn`, the next test. */
  change: z.object({ kind: changeKind, target: place }).nullable(),
});
export type WayOn = z.infer<typeof wayOn>;

/** What the client chose of the ways on, and what came of it. */
export const clientChoice = z.object({
  way: z.enum(choiceWays),
  /** As they were shown. */
  offered: z.array(wayOn),
  chosenBy: keptText,
  round: z.int().min(1),
  at: instant,
  by: id,
  /** What came of a replacement on suspicion, for the figures; null while it isn't known. */
  outcome: z.object({ kind: z.enum(['held', 'cameBack']), at: instant, by: id }).nullable(),
});
export type ClientChoice = z.infer<typeof clientChoice>;

/** Asking after a repair that nothing has proven. */
export const followUp = z.object({
  /** When to ask; null once it is known. */
  askBy: instant.nullable(),
  since: instant,
  answers: z.array(z.object({ heard: z.enum(followUpOutcomes), note: keptText, at: instant, by: id })),
});
export type FollowUp = z.infer<typeof followUp>;
