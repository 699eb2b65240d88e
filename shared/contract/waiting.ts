import { z } from 'zod';
import { id, instant, keptText } from './primitives.ts';
import { actingParties, waitingKinds } from './triage-names.ts';

export const waitingKind = z.enum(waitingKinds);
export type WaitingKind = z.infer<typeof waitingKind>;
export const actingParty = z.enum(actingParties);

/** A time in which nobody works on the ticket, because something or somebody has to come first. */
export const wait = z.object({
  round: z.int().positive(),
  kind: waitingKind,
  /** What exactly is waited for. */
  what: keptText,
  /** Who has to act for it to go on. */
  actor: actingParty,
  /** Their name, where it is known. */
  actorName: keptText.nullable(),
  until: instant,
  /** Changes that are in place meanwhile. */
  leftInPlace: z.array(id),
  at: instant,
  by: id,
  /** `revised`: another date or reason took its place. */
  ended: z
    .object({ because: z.enum(['resumed', 'revised']), note: keptText, at: instant, by: id })
    .nullable(),
});
export type Wait = z.infer<typeof wait>;

/** What somebody has to see to by a date although nobody works on the ticket. */
export const due = z.discriminatedUnion('kind', [
  wait.pick({ what: true, actor: true, actorName: true }).extend({
    kind: z.literal('wait'),
    /** Past it, the wait is overdue. */
    by: instant,
    since: instant,
    waitsFor: waitingKind,
    /** A change is in place meanwhile. */
    isInPlace: z.boolean(),
  }),
  /** Somebody has to ask the client how a repair holds that nothing has proven. */
  z.object({ kind: z.literal('followUp'), by: instant, since: instant }),
]);
export type Due = z.infer<typeof due>;
