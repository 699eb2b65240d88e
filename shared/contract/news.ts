import { z } from 'zod';
import { id } from './primitives.ts';

/** What can change, by the name its news goes under. */
export const newsKinds = [
  'ticket',
  'site',
  'chain',
  'evidence',
  'packet',
  'grant',
  'grantedPacket',
  'member',
  'organisation',
  'firmwareLevel',
] as const;
export type NewsKind = (typeof newsKinds)[number];

/**
 * Something changed, and the transaction that did it is committed: ids and numbers only, whoever may read the rest
 * reads it under its own address. `event: change` of the stream at /events carries one as JSON.
 */
export const news = z.object({
  kind: z.enum(newsKinds),
  id,
  /** A ticket's newest sequence; the newest version of anything else that has versions. */
  sequence: z.int().optional(),
  ticketId: id.optional(),
  siteId: id.optional(),
  chainId: id.optional(),
  packetId: id.optional(),
});
export type News = z.infer<typeof news>;
