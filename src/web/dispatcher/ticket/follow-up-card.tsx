import type { Ticket } from '../../../../shared/contract/ticket.ts';
import type { followUpOutcomes } from '../../../../shared/contract/triage-names.ts';
import { paths } from '../../api/paths.ts';
import { Card } from '../../parts/card.tsx';
import { SendingResult, useSending } from '../../parts/sending.tsx';
import { keepDocument } from '../../store/documents.ts';
import { FollowUp, followUpWords } from '../../waiting/follow-up.tsx';

/** Asking after a repair that nothing has proven; nothing where there is nothing to ask. */
export function FollowUpCard({ ticket, zone }: { ticket: Ticket; zone: string }) {
  const sending = useSending();
  if (!ticket.allowedNow.some(({ type }) => type === 'recordFollowUp')) return null;
  const path = paths.ticket(ticket.id);
  const record = async (heard: (typeof followUpOutcomes)[number]) => {
    const body = { type: 'recordFollowUp', heard };
    const done = await sending.send<Ticket>('POST', `${path}/commands`, { body });
    if (done !== null)
      await keepDocument({ path, body: done.body, etag: done.etag, readAt: new Date().toISOString() });
  };
  return (
    <Card title={followUpWords().title}>
      <FollowUp ticket={ticket} zone={zone} record={(heard) => void record(heard)} />
      <SendingResult sending={sending} />
    </Card>
  );
}
