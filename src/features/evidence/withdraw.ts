import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import { message } from '../../../shared/message/index.ts';
import { type Context, found, type Outcome, refused } from '../../http/index.ts';
import { evidenceItemOf, findEvidence, markWithdrawn } from '../evidence-record/index.ts';
import { appendTicketEvent } from '../tickets/index.ts';

export const noEvidence = refused('not-found', message('noSuchEvidence'));

/** Takes an item out of what counts. The entry, its file and the reason stay. */
export async function withdrawEvidence(
  context: Context,
  id: string,
  reason: string,
): Promise<Outcome<EvidenceItem>> {
  const { actor, services } = context;
  const item = await findEvidence(context, id);
  if (item === null) return noEvidence;
  const at = services.now().toISOString();
  const by = actor.memberId;
  const accepted = await appendTicketEvent(context, item.ticketId, {
    type: 'evidenceWithdrawn',
    evidenceId: id,
    reason,
    at,
    by,
    role: actor.role,
  });
  if (!accepted.ok) return accepted;
  await markWithdrawn(context, id, { reason, at, by });
  const withdrawn = await findEvidence(context, id);
  return withdrawn === null ? noEvidence : found(evidenceItemOf(withdrawn));
}
