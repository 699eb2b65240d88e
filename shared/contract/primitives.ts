import { z } from 'zod';

/** A row's identity: a random UUID, so that an id says nothing about how many others there are. */
export const id = z.uuid();
/** A moment, UTC, ISO 8601 with `Z`, in the years that a service record can be about. */
export const instant = z.iso
  .datetime()
  .refine((value) => value >= '1990' && value < '2200', 'a moment between 1990 and 2200');
/** A version or running number: counts from 1, as large as the database's integer. */
export const versionNumber = z.int().min(1).max(2_147_483_647);
/** One line a person typed: trimmed, never empty. */
export const line = z.string().trim().min(1).max(200);
/** Free text a person typed: may be empty, bounded. */
export const text = z.string().trim().max(4000);
/** Free text that has to say something. */
export const reason = z.string().trim().min(3).max(2000);
/** A place inside a chain document: short, chosen by the client, stable over versions. */
export const placeId = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/, 'letters, digits, dot, dash and underscore, 64 at most');
/** Minutes a person can spend: 0 to one week. */
export const minutes = z.number().min(0).max(10_080);
/** SHA-256 in lower-case hexadecimal. */
export const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

export const memberRoles = ['dispatcher', 'technician', 'support', 'admin'] as const;
/** What a member is to the organisation; `support` is second line. */
export const memberRole = z.enum(memberRoles);
export type MemberRole = z.infer<typeof memberRole>;

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
