import { useLocation } from 'preact-iso';
import { addresses } from '../../../../shared/contract/addresses.ts';
import type { SiteSummary } from '../../../../shared/contract/site.ts';
import { useSending } from '../../parts/sending.tsx';
import { DeskScreen } from '../common/desk-screen.tsx';
import { emptySite, SiteForm } from './site-form.tsx';
import { placeWords } from './words.ts';

/** A site that nobody has called from yet; its chain is described next. */
export function NewSiteScreen() {
  const t = placeWords();
  const { query, route } = useLocation();
  const sending = useSending();
  return (
    <DeskScreen title={t.newSite}>
      <SiteForm
        name="new site"
        begin={{ ...emptySite, client: query.client ?? '' }}
        label={t.addSite}
        sending={sending}
        onSend={async (body) => {
          const added = await sending.send<SiteSummary>('POST', addresses.sites, { body });
          if (added !== null)
            route(
              `/app/sites/${added.body.id}/chains/new${query.call === undefined ? '' : `?call=${query.call}`}`,
            );
          return added !== null;
        }}
      />
    </DeskScreen>
  );
}
