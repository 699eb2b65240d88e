import { z } from 'zod';
import { longest, shortest } from './limits.ts';
import { misfit } from './misfits.ts';
import { type MemberRole, memberRoles } from './people-names.ts';
import { personText } from './person-text.ts';

/** A row's identity: a random UUID, so that an id says nothing about how many others there are. */
export const id = z.uuid();
/** The years that a service record can be about. */
const years = { from: 1990, before: 2200 };
/** A moment, UTC, ISO 8601 with `Z`, in those years. */
export const instant = z.iso
  .datetime()
  .refine((value) => value >= String(years.from) && value < String(years.before), {
    error: misfit('fieldMomentFar'),
    params: years,
  });
/** A version or running number: counts from 1, as large as the database's integer. */
export const versionNumber = z.int().min(1).max(2_147_483_647);
/** One line a person typed: trimmed, never empty. */
export const line = z.string().trim().min(1).max(longest.line);
/** Free text a person typed: may be empty, bounded. */
export const text = personText(z.string().trim().max(longest.text));
/** Free text that has to say something. */
export const reason = personText(z.string().trim().min(shortest.reason).max(longest.reason));
/** One line in a person's own words, as opposed to a name that something goes by. */
export const ownLine = personText(line.clone());
/** A text that a person typed, as it is kept. */
export const keptText = personText(z.string());
/** A place inside a chain document: short, chosen by the client, stable over versions. */
export const placeId = z
  .string()
  .max(64)
  .regex(/^[A-Za-z0-9][A-Za-z0-9._-]*$/, misfit('fieldNotPlaceId'));
/** Minutes a person can spend: 0 to one week. */
export const minutes = z.number().min(0).max(10_080);
/** SHA-256 in lower-case hexadecimal. */
export const sha256 = z
  .string()
  .length(64)
  .regex(/^[0-9a-f]*$/, misfit('fieldNotHexadecimal'));
/** In place of what an earlier version decided and did not store. */
export const notRecorded = z.literal('notRecorded');

export { type MemberRole, memberRoles };
export const memberRole = z.enum(memberRoles);

/** A list that is given whole. */
export const itemsOf = <Item extends z.ZodType>(item: Item) => z.object({ items: z.array(item) });
export type Items<Item> = { items: Item[] };
/** A list that goes on: `next` is the cursor of the following page, null on the last one. */
export const pageOf = <Item extends z.ZodType>(item: Item) =>
  z.object({ items: z.array(item), next: z.string().nullable() });
export type Page<Item> = Items<Item> & { next: string | null };
export const pageQuery = z.object({
  cursor: z.string().max(200).optional(),
  limit: z.coerce.number().int().min(1).max(200).default(50),
});
export const byId = z.object({ id });
