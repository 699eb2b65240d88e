import { paths } from '../api/paths.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Screen } from '../parts/screen.tsx';
import { useTicket } from '../projection/use-ticket.ts';
import { reportWords } from '../report/report-words.ts';
import { Signatures } from '../report/signatures.tsx';
import { VisitReport } from '../report/visit-report.tsx';
import { useDocument } from '../store/documents.ts';
import { useZone } from '../words/zone.ts';
import { visitAddress } from './common/addresses.ts';

/** The visit on one page, for the client to read and sign on the technician's phone. */
export function ReportScreen({ ticketId = '' }: { ticketId?: string }) {
  const t = reportWords();
  const { server, projection } = useTicket(ticketId, 'shown');
  const shown = projection?.ticket ?? server.body;
  const chain = useDocument(shown === null ? null : paths.chain(shown.chainId)).body?.chain ?? null;
  const site = useDocument(shown === null ? null : paths.site(shown.siteId)).body;
  const zone = useZone(shown?.siteId ?? null);
  return (
    <Screen title={t.title}>
      <div class="row not-printed">
        <LinkButton href={visitAddress(ticketId)}>{t.toVisit}</LinkButton>
        <Button onClick={() => print()}>{t.print}</Button>
      </div>
      <DocumentView document={server}>
        {(body) => (
          <>
            {chain !== null && <VisitReport ticket={shown ?? body} chain={chain} site={site} zone={zone} />}
            <Signatures ticket={{ ...(shown ?? body), sequence: body.sequence }} zone={zone} sign />
          </>
        )}
      </DocumentView>
    </Screen>
  );
}
