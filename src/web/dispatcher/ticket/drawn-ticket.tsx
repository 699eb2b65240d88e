import type { ChainDocument } from '../../../../shared/contract/site.ts';
import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { paths } from '../../api/paths.ts';
import { planMarks } from '../../drawing/plan-marks.ts';
import { useRecordMarks } from '../../drawing/use-record-marks.ts';
import { LeftAs } from '../../place/chain-differences.tsx';
import { DrawnChain } from '../../place/drawn-chain.tsx';
import { useDocument } from '../../store/documents.ts';

/** The ticket's chain with what is known of its places; what is tapped says what it is. */
export function DrawnTicket({ ticket, chain }: { ticket: Ticket; chain: ChainDocument }) {
  const plan = useDocument(ticket.state === 'closed' ? null : paths.plan(ticket.id)).body;
  const recorded = useRecordMarks(ticket.triage, chain.chain);
  const { changes, culprit, symptom } = ticket.triage;
  const marks = {
    ...recorded,
    ...(culprit === null ? planMarks(plan) : {}),
    change: changes.find(({ status }) => status === 'applied' || status === 'judged')?.target ?? null,
    culprit: culprit?.place ?? null,
  };
  return (
    <>
      <DrawnChain chain={chain} symptom={symptom.kind} marks={marks} ticketId={ticket.id} />
      <LeftAs triage={ticket.triage} />
    </>
  );
}
