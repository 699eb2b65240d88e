import { z } from 'zod';
import { longest, ranges } from './limits.ts';
import { id, line } from './primitives.ts';
import { clientWays, ownChangeTargets } from './triage-names.ts';

const minutes = z.number().min(ranges.changeMin.min).max(ranges.changeMin.max);

/** A kind of change that an organisation has added to the catalogue. */
export const ownChange = z.object({
  id,
  name: line,
  /** The kind of place that it is made to. */
  actsOn: z.enum(ownChangeTargets),
  /** Beside that place it works on what is next to it: the devices a cable joins, the cables at a device. */
  reachesNeighbours: z.boolean().default(false),
  setupMin: minutes,
  restoreMin: minutes,
  /** What to have at hand, in words; empty: nothing. */
  kit: z.string().max(longest.note).default(''),
  /** What to take care of; empty: nothing beyond the usual. */
  caution: z.string().max(longest.note).default(''),
  /** How a client can do it when told by phone; null: not at all. */
  byClient: z.enum(clientWays).nullable().default(null),
  /** It may stay once it cleared the fault. */
  mayStay: z.boolean().default(false),
  /** Chance that a fault of the place stays away with it; null: nobody has a figure. */
  keepsAway: z.number().min(ranges.keepsAway.min).max(ranges.keepsAway.max).nullable().default(null),
});
export type OwnChange = z.infer<typeof ownChange>;
