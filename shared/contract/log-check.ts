import { z } from 'zod';
import { message } from './message.ts';

/** A value that differs, by where it stands (a JSON pointer, RFC 6901); left out on the side that has none there. */
const difference = z.object({
  pointer: z.string(),
  stored: z.unknown().optional(),
  replayed: z.unknown().optional(),
});
export type Difference = z.infer<typeof difference>;

/** What a ticket's log was checked for, and all that does not hold. */
export const logCheck = z.object({
  /** Nothing was found in any of the checks below. */
  isClean: z.boolean(),
  events: z.int(),
  versions: z.object({
    /** What this server writes, and the highest that it reads. */
    program: z.int(),
    snapshot: z.int(),
    /** How many events of the log were written by each version. */
    events: z.array(z.object({ version: z.int(), events: z.int() })),
  }),
  numbers: z.object({
    compared: message,
    /** The first event out of its place: the number it should have and has, null where there is none; null if all are in place. */
    firstWrong: z.object({ expected: z.int().nullable(), found: z.int().nullable() }).nullable(),
  }),
  hashes: z.object({
    compared: message,
    /** `content`: an event is not what was hashed. `predecessor`: it does not follow on the one before it. */
    broken: z.array(z.object({ sequence: z.int(), because: z.enum(['content', 'predecessor']) })),
  }),
  texts: z.object({
    compared: message,
    /** Of them, texts that were erased: there is nothing left to compare. */
    erased: z.int(),
    /** `content`: the text is not the one that was hashed. `missing`: it is gone, and nothing says that it was erased. */
    wrong: z.array(
      z.object({ sequence: z.int(), pointer: z.string(), because: z.enum(['content', 'missing']) }),
    ),
  }),
  snapshot: z.discriminatedUnion('kind', [
    z.object({
      kind: z.literal('compared'),
      compared: message,
      differences: z.array(difference),
      /** How many further ones there are. */
      more: z.int(),
    }),
    /** It is a cache that an older version wrote, or of no use: it is read off the log, which replays. */
    z.object({ kind: z.literal('notInUse'), compared: message }),
    /** `because` is for whoever runs the server. */
    z.object({ kind: z.literal('doesNotReplay'), compared: message, because: z.string() }),
  ]),
});
export type LogCheck = z.infer<typeof logCheck>;
