import { z } from 'zod';
import { longest } from './limits.ts';
import { personText } from './person-text.ts';
import { minutes, placeId, text } from './primitives.ts';
import { onlyWithKinds, patternTriggers, symptomKinds, whatChangedKinds } from './triage-names.ts';

export const whatChanged = z.object({
  kind: z.enum(whatChangedKinds),
  text: text.default(''),
  when: personText(z.string().trim().max(longest.words)).nullable().default(null),
});
export type WhatChanged = z.infer<typeof whatChanged>;

/** How the fault comes, see `patternKinds`; each has its own way to be reproduced and retested. */
export const pattern = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('always') }),
  z.object({ kind: z.literal('trigger'), trigger: z.enum(patternTriggers) }),
  /** `rarely`: too seldom to be watched for on a visit. How often, where it is known, is the symptom's `perHour`. */
  z.object({ kind: z.literal('random'), rarely: z.boolean().default(false) }),
  z.object({ kind: z.literal('bursts') }),
  /** Minutes since power-on before which it does not come; null when not known. */
  z.object({ kind: z.literal('warm'), afterMin: minutes.nullable().default(null) }),
  z.object({ kind: z.literal('notKnown') }),
]);
export type Pattern = z.infer<typeof pattern>;
/**
 * What the fault shows with and not without: which one, in the client's words, as far as it is known; a source also by
 * its device where the chain has it.
 */
export const onlyWith = z.object({
  kind: z.enum(onlyWithKinds),
  what: personText(z.string().trim().max(longest.line)).default(''),
  deviceId: placeId.nullable().default(null),
});
export type OnlyWith = z.infer<typeof onlyWith>;

export const symptom = z.object({
  kind: z.enum(symptomKinds),
  /** How often, as the client tells it; null when not known. */
  perHour: z.number().positive().max(3600).nullable().default(null),
  lastsS: z.number().min(0).max(86_400).nullable().default(null),
  pattern: pattern.default({ kind: 'notKnown' }),
  onlyWith: onlyWith.nullable().default(null),
});
export type Symptom = z.infer<typeof symptom>;
