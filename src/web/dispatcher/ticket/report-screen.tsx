import { paths } from '../../api/paths.ts';
import { LinkButton } from '../../parts/button.tsx';
import { DocumentView } from '../../parts/document-view.tsx';
import { reportWords } from '../../report/report-words.ts';
import { Signatures } from '../../report/signatures.tsx';
import { VisitReport } from '../../report/visit-report.tsx';
import { useDocument } from '../../store/documents.ts';
import { useZone } from '../../words/zone.ts';
import { DeskScreen } from '../common/desk-screen.tsx';

/** The visit report with whoever signed it, to read to a client on the phone, or to print and send. */
export function ReportScreen({ ticketId = '' }: { ticketId?: string }) {
  const t = reportWords();
  const document = useDocument(paths.ticket(ticketId));
  const ticket = document.body;
  const chain = useDocument(ticket === null ? null : paths.chain(ticket.chainId)).body?.chain ?? null;
  const site = useDocument(ticket === null ? null : paths.site(ticket.siteId)).body;
  const zone = useZone(ticket?.siteId ?? null);
  return (
    <DeskScreen
      title={t.title}
      tools={<LinkButton href={`/app/tickets/${ticketId}`}>{t.toTicket}</LinkButton>}
    >
      <DocumentView document={document}>
        {(body) => (
          <>
            {chain !== null && <VisitReport ticket={body} chain={chain} site={site} zone={zone} />}
            <Signatures ticket={body} zone={zone} sign={false} />
          </>
        )}
      </DocumentView>
    </DeskScreen>
  );
}
