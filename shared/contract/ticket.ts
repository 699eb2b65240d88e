import { z } from 'zod';
import { longest } from './limits.ts';
import { message } from './message.ts';
import { ownChange } from './own-change.ts';
import { personText } from './person-text.ts';
import { id, instant, pageQuery, placeId, reason, sha256, text, versionNumber } from './primitives.ts';
import { allowedCommand } from './problem.ts';
import type { ProblemKind } from './problem-kinds.ts';
import { priorities } from './ticket-names.ts';
import {
  contentKinds,
  due,
  missingItem,
  symptom,
  symptomKinds,
  triageRecord,
  whatChanged,
} from './triage.ts';

export { priorities };
export const priority = z.enum(priorities);

/** What a dispatcher writes down while the client is on the line. All but the place and the symptom may wait. */
export const intake = z.object({
  reporter: z
    .object({
      name: z.string().trim().max(longest.line).default(''),
      phone: z.string().trim().max(longest.phone).default(''),
      relation: personText(z.string().trim().max(longest.words)).default(''),
    })
    .prefault({}),
  symptom,
  /** Devices of the chain, as far as the client can tell which sources show it; empty: not known. */
  affectedSources: z.array(placeId).max(50).default([]),
  /** Displays that show it; empty: not known. */
  affectedDisplays: z.array(placeId).max(50).default([]),
  affectedContent: text.default(''),
  content: z.enum([...contentKinds, 'notKnown']).default('notKnown'),
  since: personText(z.string().trim().max(longest.line)).default(''),
  workedBefore: z.boolean().nullable().default(null),
  whatChanged: z.array(whatChanged).max(20).default([]),
  triedOnPhone: text.default(''),
  /** What the client was promised of the visit, such as the hours to expect it in. */
  promised: text.default(''),
  notes: text.default(''),
});
export type Intake = z.infer<typeof intake>;

/** How long a visit is planned for; null: not said. */
const visitMin = z.int().min(5).max(1440).nullable().default(null);

export const newTicket = z.object({
  siteId: id,
  chainId: id,
  intake,
  priority: priority.default('normal'),
  assigneeId: id.nullable().default(null),
  visitAt: instant.nullable().default(null),
  visitMin,
  /** Open tickets at the same chain that were seen, and this is not one of them. */
  seenDuplicates: z.array(id).max(100).default([]),
});
export type NewTicket = z.infer<typeof newTicket>;

/** Everything of a ticket that is not decided by the triage machine. */
export const ticketUpdate = z.object({
  priority,
  assigneeId: id.nullable(),
  visitAt: instant.nullable(),
  visitMin,
  intake: intake.omit({ symptom: true, whatChanged: true }),
});
export type TicketUpdate = z.infer<typeof ticketUpdate>;

export const ticketSummary = z.object({
  id,
  number: z.int(),
  siteId: id,
  chainId: id,
  client: z.string(),
  chainName: z.string(),
  symptom: z.enum(symptomKinds),
  priority,
  state: z.string(),
  assigneeId: id.nullable(),
  assigneeName: z.string().nullable(),
  visitAt: instant.nullable(),
  visitMin: z.int().nullable(),
  openedAt: instant,
  updatedAt: instant,
  closedAt: instant.nullable(),
  due: due.nullable(),
});
export type TicketSummary = z.infer<typeof ticketSummary>;

export const ticket = ticketSummary.extend({
  intake,
  /** Sequence of the newest event in the ticket's log. */
  sequence: z.int(),
  triage: triageRecord,
  allowedNow: z.array(allowedCommand),
  /** What an escalation would still miss. */
  missing: z.array(missingItem),
});
export type Ticket = z.infer<typeof ticket>;

export const ticketQuery = pageQuery.extend({
  /** A state, or the first part of one: `substitute` finds `substitute.retest` too. `open` is all but closed. */
  state: z.string().max(60).optional(),
  assigneeId: z.union([id, z.literal('none'), z.literal('me')]).optional(),
  siteId: id.optional(),
  chainId: id.optional(),
  symptom: z.enum(symptomKinds).optional(),
  priority: priority.optional(),
  visitFrom: instant.optional(),
  visitTo: instant.optional(),
  /** Tickets on which something is due by then: the end of a wait, or a question how a repair holds. */
  dueBy: instant.optional(),
  q: z.string().trim().max(100).optional(),
});

export const assignment = z.object({ assigneeId: id.nullable() });

/** What a person typed in an event of a ticket's log, by the event's number and its place in the event's payload. */
export const textErasure = z.object({
  event: versionNumber,
  /** A JSON pointer (RFC 6901), as the log lists it under the event's texts. */
  pointer: z.string().max(500),
  reason,
});

/** A text that a person typed in an event; `salt` and text give the digest that stands in its place in what is hashed. */
export const textOfEvent = z.object({
  pointer: z.string(),
  /** SHA-256 over the salt's 64 characters and the text in UTF-8. */
  sha256,
  salt: z.string().nullable(),
  erased: z.object({ at: instant, by: id }).nullable(),
});

export const ticketEvent = z.object({
  sequence: z.int(),
  type: z.string(),
  payload: z.record(z.string(), z.unknown()),
  actorId: id,
  actorName: z.string(),
  at: instant,
  machineVersion: z.int(),
  previousHash: z.string(),
  hash: z.string(),
  /** 2: in what is hashed, `{"text":{"sha256": …}}` stands for each of `texts`. 1: the payload is hashed as it is. */
  format: z.int(),
  texts: z.array(textOfEvent),
});
export type TicketEvent = z.infer<typeof ticketEvent>;

/** One line of what happened, for reading. */
export const timelineEntry = z.object({
  at: instant,
  kind: z.enum(['event', 'chain', 'packet', 'log']),
  actorName: z.string(),
  text: message,
  ref: z.record(z.string(), z.unknown()),
});
export type TimelineEntry = z.infer<typeof timelineEntry>;

export const applicableChange = z.object({
  kind: z.string(),
  target: z.unknown(),
  /** Of an organisation's own kind, what it says of it; null for every other. */
  own: ownChange.nullable(),
  /** What it is, and where. */
  text: message,
  diagnostic: z.boolean(),
  needs: z.array(message),
  caution: z.array(message),
  setupMin: z.number(),
  restoreMin: z.number(),
  instructions: message,
  afterwards: message,
  /** It was judged at that place before, in this round. */
  tried: z.boolean(),
});
/** Problems that a ticket in a list has, and that its own address answers with. */
export const unreadKinds = ['newer-data', 'log-does-not-replay'] as const satisfies readonly ProblemKind[];

export type UnreadKind = (typeof unreadKinds)[number];

export const queueEntry = z.discriminatedUnion('kind', [
  ticketSummary.extend({
    kind: z.literal('waiting'),
    waitingSince: instant,
    question: z.string(),
    version: z.int(),
    waived: z.int(),
    takenBy: id.nullable(),
  }),
  /** One that the server can't read; the others are listed all the same. */
  ticketSummary.extend({ kind: z.literal('unread'), because: z.enum(unreadKinds) }),
]);
export type QueueEntry = z.infer<typeof queueEntry>;
