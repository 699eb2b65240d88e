import { useState } from 'preact/hooks';
import type { SiteSummary } from '../../../../shared/contract/site.ts';
import { paths } from '../../api/paths.ts';
import { session } from '../../api/session.ts';
import { LinkButton } from '../../parts/button.tsx';
import { Card, Facts, List, ListLink } from '../../parts/card.tsx';
import { DocumentView } from '../../parts/document-view.tsx';
import { Notice } from '../../parts/notice.tsx';
import { useSending } from '../../parts/sending.tsx';
import { keepDocument, useDocument } from '../../store/documents.ts';
import { frameWords } from '../../words/frame.ts';
import { terms } from '../../words/terms.ts';
import { DeskScreen } from '../common/desk-screen.tsx';
import { deskWords } from '../common/words.ts';
import { inputOf, SiteForm } from './site-form.tsx';
import { placeWords } from './words.ts';

/** A site with its chains, and the form to change it. */
export function SiteScreen({ siteId = '' }: { siteId?: string }) {
  const [t, d] = [placeWords(), deskWords()];
  const document = useDocument(paths.site(siteId));
  return (
    <DeskScreen
      title={document.body?.client ?? d.toSite}
      tools={
        <>
          <LinkButton href={`/app/call?site=${siteId}`} kind="primary">
            {t.callHere}
          </LinkButton>
          {session.value?.member.role === 'admin' && (
            <LinkButton href={`/app/sites/${siteId}/data`}>{t.clientData}</LinkButton>
          )}
        </>
      }
    >
      <DocumentView document={document}>
        {(site) => <SiteView site={site} etag={document.etag} />}
      </DocumentView>
    </DeskScreen>
  );
}

function SiteView({ site, etag }: { site: SiteSummary; etag: string | null }) {
  const [t, d] = [placeWords(), deskWords()];
  const sending = useSending();
  const [isSaved, setSaved] = useState(false);
  return (
    <div class="beside">
      <div class="stack">
        <Card>
          <Facts
            facts={[
              [d.address, site.address],
              [d.contact, site.contact.name],
              [d.phone, site.contact.phone],
              [t.email, site.contact.email],
              [t.hours, site.contact.hours],
              [d.access, site.accessNotes],
              [d.travel, site.travelNotes],
            ]}
          />
        </Card>
        {site.hazards.length > 0 && (
          <Notice tone="caution">
            <strong>{d.hazards}</strong>
            <ul>
              {site.hazards.map(({ kind, text }) => (
                <li key={kind + text}>
                  {terms().hazard[kind]}: {text}
                </li>
              ))}
            </ul>
            <span>{d.hazardsNote}</span>
          </Notice>
        )}
        <details class="more not-printed">
          <summary>{t.editSite}</summary>
          <SiteForm
            key={site.version}
            name={`site ${site.id} ${site.version}`}
            begin={inputOf(site)}
            label={t.saveSite}
            sending={sending}
            onSend={async (body) => {
              const path = paths.site(site.id);
              const done = await sending.send<SiteSummary>('PUT', path, { body, ifMatch: etag ?? '' });
              if (done === null) return false;
              setSaved(true);
              await keepDocument({
                path,
                body: done.body,
                etag: done.etag,
                readAt: new Date().toISOString(),
              });
              return true;
            }}
          />
        </details>
        {isSaved && (
          <Notice tone="good" announce>
            {frameWords().saved}
          </Notice>
        )}
      </div>
      <section class="stack">
        <h2>{t.chains}</h2>
        {site.chains.length === 0 && <p>{t.noChains}</p>}
        <List>
          {site.chains.map(({ id, name, version }) => (
            <ListLink key={id} href={`/app/chains/${id}`}>
              <strong>{name}</strong>
              <span class="soft">{t.version(version)}</span>
            </ListLink>
          ))}
        </List>
        <div>
          <LinkButton href={`/app/sites/${site.id}/chains/new`}>
            {site.chains.length === 0 ? t.describe : t.addChain}
          </LinkButton>
        </div>
      </section>
    </div>
  );
}
