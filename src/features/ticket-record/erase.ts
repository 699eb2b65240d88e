import { type Erasure, erasedText, erasureOf } from '../../../shared/contract/erased-text.ts';
import type { Context } from '../../http/index.ts';

/** A text on a ticket's log: the event's number, and where in its payload it stands (a JSON pointer, RFC 6901). */
export type TextPlace = { readonly sequence: number; readonly pointer: string };

export type TextOnLog =
  | { readonly kind: 'there'; readonly text: string; readonly places: readonly TextPlace[] }
  | { readonly kind: 'erased' }
  /** The event was logged in format 1, which holds its texts in what is hashed. */
  | { readonly kind: 'hashed' }
  | { readonly kind: 'unknown' };

/**
 * A text on a ticket's log with its copies: equal texts of the same ticket in fields of the same name, such as notes of
 * the intake that every later update repeats. The caller holds the lock on the ticket's row.
 */
export async function textOnLog(
  { tx, actor }: Context,
  ticketId: string,
  { sequence, pointer }: TextPlace,
): Promise<TextOnLog> {
  const ofTicket = { orgId: actor.orgId, ticketId };
  const event = await tx.ticketEvent.findUnique({
    where: { orgId_ticketId_sequence: { ...ofTicket, sequence } },
    select: { format: true, texts: { where: { pointer } } },
  });
  if (event === null) return { kind: 'unknown' };
  if (event.format === 1) return { kind: 'hashed' };
  const [asked] = event.texts;
  if (asked === undefined) return { kind: 'unknown' };
  const { text } = asked;
  if (erasureOf(text) !== null) return { kind: 'erased' };
  const equal = await tx.ticketText.findMany({
    where: { ...ofTicket, text, salt: { not: null } },
    select: { sequence: true, pointer: true },
    orderBy: [{ sequence: 'asc' }, { pointer: 'asc' }],
  });
  const places = equal.filter((one) => fieldName(one.pointer) === fieldName(pointer));
  return { kind: 'there', text, places };
}

/** The name that a text stands under, whichever item of a list it is in. */
const fieldName = (pointer: string): string | undefined =>
  pointer.split('/').findLast((step) => !/^\d+$/.test(step));

/** Takes texts off a ticket's log for good. The caller holds the lock on the ticket's row. */
export async function eraseTexts(
  { tx, actor }: Context,
  ticketId: string,
  { places, erasure }: { readonly places: readonly TextPlace[]; readonly erasure: Erasure },
): Promise<void> {
  await tx.ticketText.updateMany({
    where: { orgId: actor.orgId, ticketId, OR: [...places] },
    data: { salt: null, text: erasedText(erasure) },
  });
}
