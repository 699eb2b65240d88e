import { z } from 'zod';
import { linkCategories, place } from './chain.ts';
import { cableKitConstructions } from './chain-names.ts';
import { wayOn } from './choice.ts';
import { ticketCommandTypes } from './commands.ts';
import { message } from './message.ts';
import { misfit } from './misfits.ts';
import { parsePlainJson } from './plain-json.ts';
import { id, placeId } from './primitives.ts';
import { watchModes } from './triage-names.ts';

const probability = z.number().min(0).max(1);

/** Something to have at hand. Lengths in metres. */
export const kitItem = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('cable'),
    category: z.enum(linkCategories),
    lengthM: z.number().positive(),
    /** Left out: passive copper, or nobody said. */
    construction: z.enum(cableKitConstructions).optional(),
  }),
  z.object({ kind: z.enum(['coupler', 'syncSwitch', 'display', 'source', 'extenderPair', 'powerSupply']) }),
]);

const kit = z.array(kitItem).max(50);
const people = z.union([z.literal(1), z.literal(2)]);
const refused = z
  .array(
    z.object({
      test: z.string().max(40).optional(),
      place: place.optional(),
      ownKindId: id.optional(),
    }),
  )
  .max(50);
const json = <Shape extends z.ZodType>(shape: Shape) =>
  z
    .string()
    .max(8000)
    .transform((given, context): unknown => {
      try {
        return parsePlainJson(given);
      } catch {
        context.addIssue({ code: 'custom', message: misfit('fieldNotJson') });
        return z.NEVER;
      }
    })
    .pipe(shape);

/** What is at hand on site, and what the client won't have (a kind of test, a place, or both); `kit` and `refused` as JSON. */
export const planQuery = z.object({
  /** Everything there is, where it is left out. */
  kit: json(kit).optional(),
  people: z.coerce.number().pipe(people).default(1),
  refused: json(refused).default([]),
});
export type PlanQuery = z.infer<typeof planQuery>;
/** Devices whose front switch the client reaches standing on the floor, outside any closed rack; separated by commas. */
export const phonePlanQuery = z.object({
  reachable: z
    .string()
    .max(2000)
    .default('')
    .transform((given) => given.split(',').filter((each) => each !== ''))
    .pipe(z.array(placeId).max(50)),
});

/** What one outcome of a test would mean. */
const outcome = z.object({
  /** As a person would report it. */
  answer: message,
  chance: probability,
  /** As in the suspects. */
  component: z.string(),
  likeliest: message,
  probability,
});

export const plannedTest = z.object({
  id: z.string(),
  /** `menu`: watch with a device's menu up; else a change of the triage. */
  kind: z.string(),
  /** Which of the organisation's own kinds; null for every other. */
  ownKindId: id.nullable(),
  target: place,
  /** An order, without a full stop. */
  text: message,
  why: message,
  /** On average; what a quiet watch takes in full is `quiet`. */
  minutes: z.object({ setup: z.number(), watch: z.number(), restore: z.number() }),
  /** Quiet for this many minutes, tries or looks counts as cleared; null where the first occurrence answers. */
  quiet: z.object({ mode: z.enum(watchModes), amount: z.number() }).nullable(),
  /** Minutes to a culprit on average if this comes next. */
  expectedMin: z.number(),
  outcomes: z.array(outcome),
  kit: z.array(message),
  /** What the catalogue of changes says has to be at hand. */
  needs: z.array(message),
  people: z.int(),
  caution: z.array(message),
  instructions: message,
  afterwards: message,
});
export type PlannedTestView = z.infer<typeof plannedTest>;

/**
 * A way on that the ticket takes as it stands: put to the rules that decide before it was offered, with words of no
 * meaning in place of what a person still has to say.
 */
export const offer = z.object({
  /** The same as long as the same is offered. */
  key: z.string(),
  /** Commands to be sent one after the other, with all that is known filled in. */
  steps: z.array(z.looseObject({ type: z.enum(ticketCommandTypes) })).min(1),
  /** What whoever sends them still has to say: fields of theirs, `reason` or `remedy.what`. */
  toSay: z.array(z.string()),
  /** An order, without a full stop. */
  text: message,
  why: message.nullable(),
  /** Minutes of watching that it asks for; null where it asks for none. */
  watchMin: z.number().nullable(),
  /** The test that it begins. */
  test: plannedTest.nullable(),
});
export type Offer = z.infer<typeof offer>;

export const suspect = z.object({
  component: z.string(),
  place: place.nullable(),
  name: message,
  probability,
  modes: z.array(z.object({ mode: z.string(), name: message, probability })),
  /** 10 decibans are a factor of ten in the odds; minus speaks against it. */
  because: z.array(z.object({ text: message, decibans: z.number() })),
});

const repair = z.object({
  kind: z.string(),
  target: place,
  text: message,
  probability,
  minutes: z.number(),
});

/** For a fault that comes too rarely to be watched for: what there is to do about it, the cheapest first. */
export const overDays = z.object({
  /** How often it comes on a day of use, as reported, told or assumed. */
  perDay: z.number(),
  ways: z.array(
    z.object({
      kind: z.enum(['diary', 'logs', 'unattended', 'remote', 'visit']),
      text: message,
      /** Of people's work, and of waiting. */
      minutes: z.number(),
      days: z.number(),
      /** Minutes, with what the days are worth. */
      costMin: z.number(),
    }),
  ),
});
export type OverDays = z.infer<typeof overDays>;

/** What to do next on a ticket, and why. */
export const plan = z.object({
  state: z.string(),
  /** The advice in two or three sentences. */
  sentence: message,
  /** The ways on from here, the advised one first. */
  offers: z.array(offer),
  /** Minutes of watching that the step asks for; null where it asks for none. */
  watchMin: z.number().nullable(),
  /** The tests worth most, also where none can begin yet. */
  next: plannedTest.nullable(),
  others: z.array(plannedTest),
  /** A better test that can't be done here and now, and why. */
  outOfReach: z.object({ text: message, why: message, savesMin: z.number() }).nullable(),
  /** Given when looking on is over: a culprit, or that nothing left is worth its time. */
  stop: z
    .object({
      kind: z.enum(['culprit', 'escalate', 'visit']),
      text: message,
      place: place.nullable(),
      /** What may be tried blindly, the best chance for the time first. */
      repairs: z.array(repair),
    })
    .nullable(),
  suspects: z.array(suspect),
  /** Since a change that stayed the fault comes more rarely: that there are perhaps two, and the chance (0..1). */
  twoFaults: z.object({ chance: probability, text: message }).nullable(),
  /** Null for a fault that can be watched for. */
  overDays: overDays.nullable(),
  /** Given where weighing everything would take too long: tests left out, of all; what is advised is the best of the rest. */
  cutShort: z.object({ left: z.int(), of: z.int() }).nullable(),
  /** Given where what is left to test costs more than it may bring: what the client chooses between. */
  ways: z.array(wayOn),
});
export type PlanReply = z.infer<typeof plan>;

/** What a dispatcher can do before anybody drives. */
export const phonePlan = plan.extend({
  /** Chance that a visit is needed even if the client did everything that is safe. */
  visitChance: probability,
  /** What comes first on the visit, and why the client is not asked to do it; null where the client can. */
  visitFirst: z.object({ text: message, why: message }).nullable(),
  van: z.array(z.object({ item: kitItem, text: message, probability })),
});
export type PhonePlanReply = z.infer<typeof phonePlan>;
