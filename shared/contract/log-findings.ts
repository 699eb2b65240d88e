import { z } from 'zod';
import { longest } from './limits.ts';
import { message } from './message.ts';
import { misfit } from './misfits.ts';
import { id, instant, line } from './primitives.ts';
import { watchPurposes } from './triage.ts';

/** The kinds of our own table. An organisation's rows may add others. */
export const logEventKinds = [
  'hotPlugDown',
  'hotPlugUp',
  'edidRead',
  'edidFailed',
  'authenticationStarted',
  'authenticationDone',
  'authenticationFailed',
  'repeaterFailed',
  'linkTrainingStarted',
  'linkTrained',
  'linkTrainingFailed',
  'linkRateReduced',
  'linkRateRaised',
  'supplyLost',
  'supplyFound',
  'syncLost',
  'syncFound',
  'formatChange',
  'restart',
  'restartPower',
  'restartWatchdog',
  'restartCrash',
  'restartHeat',
  'restartUpdate',
  'restartPerson',
  'firmware',
] as const;

/** Whatever the cause, the device itself started over. */
export const restartKinds: readonly string[] = logEventKinds.filter((kind) => kind.startsWith('restart'));

const logEvent = z.object({
  kind: z.string(),
  /** The kind in words. */
  words: message,
  at: instant,
  line: z.int(),
  excerpt: z.string(),
});
export type LogEventSeen = z.infer<typeof logEvent>;

/** An occurrence of the fault that a log shows inside a watch, to be confirmed by whoever watched. */
export const proposedOccurrence = z.object({
  at: instant,
  durationS: z.number().nullable(),
  kinds: z.array(z.string()),
  lines: z.array(z.int()),
  /** The line it begins with, as it stands in the file. */
  excerpt: z.string(),
  description: message,
  /** The occurrence on record that it is; null where it still waits for a word. */
  recordedAs: id.nullable(),
});

/** What one log says about the fault: times are UTC; lengths in seconds or minutes, as named. */
export const logFinding = z.object({
  evidenceId: id,
  deviceId: z.string().nullable(),
  fileName: z.string().nullable(),
  span: z.object({ from: instant, to: instant }).nullable(),
  lines: z.int(),
  eventCounts: z.record(z.string(), z.int()),
  /** Events in or near the ticket's watches, oldest first. */
  events: z.array(logEvent),
  firmware: z.array(z.object({ version: z.string(), at: instant.nullable(), excerpt: z.string() })),
  gaps: z.array(z.object({ from: instant, to: instant, lengthS: z.number(), endsInRestart: z.boolean() })),
  /** Does the log cover the occurrences on record, and does it show something at each? */
  coverage: z.object({
    complete: z.boolean(),
    covered: z.int(),
    of: z.int(),
    sentence: message,
    occurrences: z.array(
      z.object({
        watchId: id,
        occurrenceId: id,
        at: instant,
        status: z.enum(['covered', 'inGap', 'outside', 'noTimes']),
        shows: logEvent.nullable(),
      }),
    ),
  }),
  /** Kinds of event that regularly come shortly before an occurrence (permutation test). */
  precursors: z.array(
    z.object({
      kind: z.string(),
      words: message,
      preceded: z.int(),
      expected: z.number(),
      leadS: z.number().nullable(),
      correctedP: z.number(),
      regular: z.boolean(),
      sentence: message,
    }),
  ),
  watches: z.array(
    z.object({
      watchId: id,
      purpose: z.enum(watchPurposes),
      coveredMin: z.number(),
      watchMin: z.number(),
      proposed: z.array(proposedOccurrence),
      notes: z.array(message),
    }),
  ),
  /** What a reader should know before leaning on this. */
  notes: z.array(message),
});
export type LogFinding = z.infer<typeof logFinding>;

/** A row that teaches the log reader an organisation's own words, see shared/logs/recognition-table.ts. */
export const recognitionRow = z.object({
  kind: z
    .string()
    .min(2)
    .max(40)
    .regex(/^[a-z][A-Za-z]*$/, misfit('fieldNotKindName')),
  all: z.array(z.array(line).min(1).max(200)).min(1).max(10),
  none: z.array(line).max(200).default([]),
  example: z.string().min(1).max(longest.note),
  note: z.string().max(longest.note).default(''),
});
