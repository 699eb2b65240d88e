import { z } from 'zod';
import { message } from './message.ts';
import { id, instant, keptText, pageQuery } from './primitives.ts';
import { symptomKinds } from './triage.ts';

export const pastCaseQuery = pageQuery.extend({
  /** A ticket: the past cases that are like it, the most alike first, and none that has nothing in common with it. */
  like: id.optional(),
  symptom: z.enum(symptomKinds).optional(),
  /** Words, all of which have to be found in what is known of a case, or in place of them what they may have been meant for. */
  q: z.string().trim().max(100).optional(),
});

/** A closed ticket, and what it was. */
export const pastCase = z.object({
  id,
  number: z.int(),
  siteId: id,
  client: z.string(),
  chainName: z.string(),
  symptom: z.enum(symptomKinds),
  closedAt: instant,
  /** Where the fault was; null where no culprit was named. */
  culprit: message.nullable(),
  explanation: keptText,
  remedy: z
    .object({ kind: z.enum(['permanent', 'workaround', 'noFaultFound', 'onSuspicion']), what: keptText })
    .nullable(),
  /** What it has in common with the ticket that was asked about; null where none was. */
  common: z
    .object({
      symptom: z.boolean(),
      /** Models of devices that are in both chains. */
      models: z.array(z.string()),
      /** The part that was the culprit is in the other chain, too: the same model, or the same kind of cable. */
      culprit: z.boolean(),
    })
    .nullable(),
});
export type PastCase = z.infer<typeof pastCase>;
