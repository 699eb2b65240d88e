import { erasureOf } from '../../../shared/contract/erased-text.ts';
import type { ErasedPlace } from '../../../shared/contract/packet.ts';
import type { Context } from '../../http/index.ts';

/** `loggedAt`: when the event was logged that held the text; UTC, ISO 8601. */
export type ErasedOnLog = ErasedPlace & { readonly loggedAt: string };

/** The texts that were erased from a ticket's log, in the order of the log. */
export async function erasedTextsOf({ tx, actor }: Context, ticketId: string): Promise<ErasedOnLog[]> {
  const rows = await tx.ticketText.findMany({
    where: { orgId: actor.orgId, ticketId, salt: null },
    select: { sequence: true, pointer: true, text: true, event: { select: { at: true } } },
    orderBy: [{ sequence: 'asc' }, { pointer: 'asc' }],
  });
  return rows.flatMap(({ sequence, pointer, text, event }) => {
    const erasure = erasureOf(text);
    return erasure === null
      ? []
      : [{ event: sequence, pointer, ...erasure, loggedAt: event.at.toISOString() }];
  });
}
