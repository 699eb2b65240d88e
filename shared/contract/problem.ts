import { z } from 'zod';
import { place } from './chain.ts';
import { missingItem } from './triage.ts';

/**
 * Every kind of problem the API answers with: its HTTP status and a title. The `type` of a problem (RFC 9457) is
 * `/problems/<kind>`, an address that this server explains. Kinds are stable; sentences may change.
 */
export const problemKinds = {
  'invalid-input': { status: 400, title: 'The request does not fit its description' },
  'malformed-request': { status: 400, title: 'The request cannot be read' },
  'idempotency-key-missing': { status: 400, title: 'Every write carries an Idempotency-Key' },
  'sign-in-needed': { status: 401, title: 'Sign in first' },
  'sign-in-refused': { status: 401, title: 'Sign-in was refused' },
  'refresh-refused': { status: 401, title: 'The refresh token is not good any more' },
  'role-not-allowed': { status: 403, title: 'Your role may not do this' },
  'not-found': { status: 404, title: 'Nothing here under that address' },
  'method-not-allowed': { status: 405, title: 'This address does not do that' },
  'already-exists': { status: 409, title: 'There is one already' },
  'possible-duplicate': { status: 409, title: 'There is an open ticket at this chain' },
  'chain-refused': { status: 422, title: 'The chain cannot be as described' },
  'version-conflict': { status: 412, title: 'It was changed in the meantime' },
  'version-needed': { status: 428, title: 'An update says which version it is of' },
  'idempotency-key-reused': { status: 422, title: 'The key was used for another request' },
  'last-admin': { status: 409, title: 'An organisation keeps one active admin' },
  'not-assigned': { status: 409, title: 'The ticket is with somebody else' },
  'grant-refused': { status: 422, title: 'No support member can be reached under that address' },
  'too-large': { status: 413, title: 'That is larger than allowed' },
  'header-too-large': { status: 431, title: 'Address and headers are larger than allowed' },
  'request-timeout': { status: 408, title: 'The request took too long to arrive' },
  'type-not-allowed': { status: 415, title: 'That kind of content is not taken here' },
  'too-many-requests': { status: 429, title: 'Too many requests, try again later' },
  'server-busy': { status: 503, title: 'Not ready, try again in a moment' },
  'internal-error': { status: 500, title: 'Something went wrong on our side' },

  // what triage refuses
  'not-allowed-now': { status: 409, title: 'That is not the next step' },
  'change-open': { status: 409, title: 'One change at a time' },
  'chain-change-open': { status: 409, title: 'Another ticket has a change open on this chain' },
  'no-change-open': { status: 409, title: 'No change is open' },
  'change-not-applicable': { status: 409, title: 'That change does not apply here' },
  'change-cannot-stay': { status: 409, title: 'That change has to be put back' },
  'change-cannot-be-undone': { status: 409, title: 'That change cannot be undone' },
  'diagnostic-change-in-place': { status: 409, title: 'A diagnostic change is still in place' },
  'watch-running': { status: 409, title: 'A watch is running' },
  'no-watch-running': { status: 409, title: 'No watch is running' },
  'watch-record-too-short': { status: 409, title: 'The watch record does not show enough yet' },
  'no-occurrence': { status: 409, title: 'The fault was not seen yet' },
  'menu-answer-missing': { status: 409, title: 'Say whether the menu stayed or vanished' },
  'device-not-suitable': { status: 409, title: 'That device cannot tell one side from the other' },
  'side-contradiction': { status: 409, title: 'The answers contradict each other' },
  'side-unknown': { status: 409, title: 'The side is not known yet' },
  'retest-missing': { status: 409, title: 'The change was not retested' },
  'retest-missing-or-weak': { status: 409, title: 'No retest supports that' },
  'confirmation-missing': { status: 409, title: 'The culprit is not confirmed' },
  'case-incomplete': { status: 409, title: 'The case is not complete' },
  'request-open': { status: 409, title: 'Second line still waits for answers' },
  'unknown-reference': { status: 409, title: 'The ticket knows nothing under that id' },
  'time-out-of-order': { status: 409, title: 'The times do not fit together' },
  'reopen-too-late': { status: 409, title: 'The time for reopening is over' },
} as const satisfies Record<string, { status: number; title: string }>;
export type ProblemKind = keyof typeof problemKinds;

/** A command that would be accepted now, with what it does in plain words. */
export const allowedCommand = z.object({ type: z.string(), label: z.string() });
export type AllowedCommand = z.infer<typeof allowedCommand>;

/** RFC 9457, section 3, with our extension members. */
export const problem = z.object({
  type: z.string(),
  title: z.string(),
  status: z.int(),
  detail: z.string(),
  instance: z.string().optional(),
  /** Field by field, for bad input: a JSON pointer (RFC 6901) into the body, or the name in address, query or header. */
  errors: z.array(z.object({ pointer: z.string(), code: z.string(), text: z.string() })).optional(),
  place: place.optional(),
  missing: z.array(missingItem).optional(),
  allowedNow: z.array(allowedCommand).optional(),
  /** The change that is in the way. */
  openChangeId: z.string().optional(),
  /** The requests of second line that still wait. */
  requestIds: z.array(z.string()).optional(),
  /** Minutes of quiet watching still needed. */
  remainingMin: z.number().optional(),
  /** What the ticket, site or chain stands at, where a version conflict needs showing. */
  currentVersion: z.string().optional(),
  openTickets: z.array(z.object({ id: z.string(), number: z.int(), state: z.string() })).optional(),
  retryAfterS: z.number().optional(),
});
export type Problem = z.infer<typeof problem>;
