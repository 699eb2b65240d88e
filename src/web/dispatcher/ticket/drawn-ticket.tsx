import type { ChainDocument } from '../../../../shared/contract/site.ts';
import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { paths } from '../../api/paths.ts';
import { ChainDrawing } from '../../drawing/chain-drawing.tsx';
import { planMarks } from '../../drawing/plan-marks.ts';
import { useRecordMarks } from '../../drawing/use-record-marks.ts';
import { useDocument } from '../../store/documents.ts';

/** The ticket's chain with what is known of its places. */
export function DrawnTicket({ ticket, chain }: { ticket: Ticket; chain: ChainDocument }) {
  const plan = useDocument(ticket.state === 'closed' ? null : paths.plan(ticket.id)).body;
  const recorded = useRecordMarks(ticket.triage, chain.chain);
  const { changes, culprit } = ticket.triage;
  const marks = {
    ...recorded,
    ...(culprit === null ? planMarks(plan) : {}),
    change: changes.find(({ status }) => status === 'applied' || status === 'judged')?.target ?? null,
    culprit: culprit?.place ?? null,
  };
  return <ChainDrawing chain={chain.chain} marks={marks} />;
}
