import { z } from 'zod';
import { place } from './chain.ts';
import { message } from './message.ts';
import { outcomesApart } from './outcome.ts';
import { secondStep } from './people.ts';
import { missingItem } from './triage.ts';

export { type ProblemKind, problemKinds, problemStatuses } from './problem-kinds.ts';

/** A command that would be accepted now, with what it does. */
export const allowedCommand = z.object({ type: z.string(), label: message });
export type AllowedCommand = z.infer<typeof allowedCommand>;

/** RFC 9457, section 3, with our extension members. Title and detail are there where it has been put into words. */
export const problem = z.object({
  type: z.string(),
  title: z.string().optional(),
  status: z.int(),
  detail: z.string().optional(),
  /** What `detail` says, for whoever puts it into words of their own. */
  said: message.omit({ text: true }).optional(),
  instance: z.string().optional(),
  /** Field by field, for bad input: a JSON pointer (RFC 6901) into the body, or the name in address, query or header. */
  errors: z.array(message.partial({ values: true }).extend({ pointer: z.string() })).optional(),
  place: place.optional(),
  missing: z.array(missingItem).optional(),
  allowedNow: z.array(allowedCommand).optional(),
  /** The change that is in the way. */
  openChangeId: z.string().optional(),
  /** The requests of second line that still wait. */
  requestIds: z.array(z.string()).optional(),
  /** What was shown to the sender, and what is decided now. */
  outcomes: outcomesApart.optional(),
  /** Minutes of quiet watching still needed. */
  remainingMin: z.number().optional(),
  /** What the ticket, site or chain stands at, where a version conflict needs showing. */
  currentVersion: z.string().optional(),
  /** What a sign-in goes on with at `second-step`. */
  secondStep: secondStep.optional(),
  openTickets: z.array(z.object({ id: z.string(), number: z.int(), state: z.string() })).optional(),
  retryAfterS: z.number().optional(),
});
export type Problem = z.infer<typeof problem>;

/** A problem as the API answers with it, in the language that was asked for. */
export const spokenProblem = problem.required({ title: true, detail: true });
export type SpokenProblem = z.infer<typeof spokenProblem>;
