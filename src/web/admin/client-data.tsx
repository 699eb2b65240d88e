import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import { paths } from '../api/paths.ts';
import { LinkButton } from '../parts/button.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Screen } from '../parts/screen.tsx';
import { useDocument } from '../store/documents.ts';
import { TakeAway } from './take-away.tsx';
import { adminWords } from './words.ts';
import './admin.css';

/** What the firm has of one client, to hand over when they ask for it. */
export function ClientDataScreen({ siteId = '' }: { siteId?: string }) {
  const t = adminWords();
  const site = useDocument(paths.site(siteId));
  return (
    <Screen title={site.body === null ? '' : t.dataOf(site.body.client)}>
      <div>
        <LinkButton href={`/app/sites/${siteId}`}>{t.toClient}</LinkButton>
      </div>
      <DocumentView document={site}>
        {({ id }) => (
          <TakeAway
            address={addressOf(addresses.siteExport, { id })}
            name="halfsplit-client"
            text={t.clientText}
          />
        )}
      </DocumentView>
    </Screen>
  );
}
