import { z } from 'zod';
import { linkCategories, linkConstructions } from './chain-names.ts';
import { line, placeId } from './primitives.ts';

/** A cable or device that a repair put in the place of another; what was known of the one before goes with it. */
export const installedPart = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('cable'),
    linkId: placeId,
    construction: z.enum(linkConstructions),
    category: z.enum(linkCategories).default('unknown'),
    /** The category is certified: its label was seen or scanned. */
    certified: z.boolean().default(false),
    lengthM: z.number().positive().max(1000),
    /** By the calendar of the place. */
    installedOn: z.iso.date(),
    /** Both ends were seated, and a cable with a direction lies as it is marked. */
    fittedRight: z.boolean().default(false),
  }),
  z.object({
    kind: z.literal('device'),
    deviceId: placeId,
    model: line.nullable().default(null),
    serial: line.nullable().default(null),
    firmware: line.nullable().default(null),
  }),
]);
export type InstalledPart = z.infer<typeof installedPart>;
