import { z } from 'zod';
import { personText } from './person-text.ts';
import { id, instant, line, ownLine, placeId, reason } from './primitives.ts';

/** What a change must not do that nobody looks at for days: each is asked, and a yes to any forbids it. */
export const leftSafely = z.object({
  liesAcrossFloor: z.boolean(),
  hangs: z.boolean(),
  staysOpen: z.boolean(),
  lacksCooling: z.boolean(),
  defeatsProtection: z.boolean(),
});
export type LeftSafely = z.infer<typeof leftSafely>;

/** The client's yes to a change that stays in between visits. */
export const clientsYes = z.object({
  name: ownLine,
  at: instant,
  /** What is different for them meanwhile, and how they undo it. */
  whatChanges: reason,
  howToUndo: reason,
});

/** A device's firmware as it was read; null where it could not be. */
export const firmwareRead = z.object({ deviceId: placeId, level: line.nullable() });
/** What a device's own log shows of the days in which nobody watched. */
export const loggedOccurrence = z.object({ occurredAt: instant, evidenceId: id });

/** A change that is left in on purpose between visits, and what came meanwhile: reported or logged, never witnessed. */
export const unattendedWatch = z.object({
  id,
  round: z.int().min(1),
  changeId: id,
  startedAt: instant,
  /** The day on which it ends, and who sees to it. */
  until: instant,
  owner: personText(z.string()),
  safety: leftSafely,
  clientsYes: clientsYes.extend({
    name: personText(z.string()),
    whatChanges: personText(z.string()),
    howToUndo: personText(z.string()),
  }),
  firmwareBefore: z.array(firmwareRead),
  endedAt: instant.nullable(),
  firmwareAfter: z.array(firmwareRead),
  logged: z.array(loggedOccurrence),
  by: id,
});
export type UnattendedWatch = z.infer<typeof unattendedWatch>;

/** What came in while nobody watched: over how many days somebody could have said so, and how often it did. */
export const reportedSoFar = z.object({
  days: z.number(),
  reported: z.int(),
  logged: z.int(),
  /** Chance of as quiet a time if nothing had changed, 0..1; null where that can't be said. */
  risk: z.number().nullable(),
});
