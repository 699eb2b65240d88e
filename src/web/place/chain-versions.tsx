import { useState } from 'preact/hooks';
import type { ChainVersionRef } from '../../../shared/contract/site.ts';
import { messageKey } from '../../../shared/message/index.ts';
import { paths } from '../api/paths.ts';
import { ChainDrawing } from '../drawing/chain-drawing.tsx';
import { Button } from '../parts/button.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { SelectField } from '../parts/field.tsx';
import { useDocument } from '../store/documents.ts';
import { inWords } from '../words/sentence.tsx';
import { dayAndTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import { versionWords } from './version-words.ts';
import './place.css';

/** Every version of a chain with its time, who wrote it and what differs; each can be looked at as it was. */
export function ChainVersions({
  chainId,
  newest,
  siteId,
}: {
  chainId: string;
  newest: number;
  siteId: string;
}) {
  const versions = useDocument(paths.chainVersions(chainId));
  return (
    <DocumentView document={versions}>
      {({ items }) => (
        <>
          <ol class="chain-versions">
            {items.map((version) => (
              <Version
                key={version.version}
                chainId={chainId}
                siteId={siteId}
                version={version}
                isNewest={version.version === newest}
              />
            ))}
          </ol>
          {newest > 1 && <Compare chainId={chainId} newest={newest} versions={items} />}
        </>
      )}
    </DocumentView>
  );
}

function Version({
  chainId,
  siteId,
  version: { version, changedAt, changedByName, changes },
  isNewest,
}: {
  chainId: string;
  siteId: string;
  version: ChainVersionRef;
  isNewest: boolean;
}) {
  const t = versionWords();
  const zone = useZone(siteId);
  const [isShown, setShown] = useState(false);
  return (
    <li>
      <div class="chain-version-head">
        <span>
          <strong>{t.version(version)}</strong>{' '}
          <span class="soft">
            {dayAndTime(changedAt, zone)} · {changedByName}
          </span>
        </span>
        {!isNewest && (
          <Button kind="quiet" aria-expanded={isShown} onClick={() => setShown(!isShown)}>
            {isShown ? t.hideVersion : t.showVersion(version)}
          </Button>
        )}
      </div>
      {version === 1 ? (
        <span>{t.firstVersion}</span>
      ) : changes.length === 0 ? (
        <span>{t.nothingNew}</span>
      ) : (
        <ul>
          {changes.map((change) => (
            <li key={messageKey(change)}>{inWords(change)}</li>
          ))}
        </ul>
      )}
      {isShown && (
        <AsItWas
          chainId={chainId}
          version={version}
          title={t.asItWas(version, dayAndTime(changedAt, zone))}
        />
      )}
    </li>
  );
}

function AsItWas({ chainId, version, title }: { chainId: string; version: number; title: string }) {
  const document = useDocument(paths.chainVersion(chainId, version));
  return (
    <section class="place-panel" aria-label={title}>
      <h3>{title}</h3>
      <DocumentView document={document}>{({ chain }) => <ChainDrawing chain={chain} />}</DocumentView>
    </section>
  );
}

/** What differs between any two versions. */
function Compare({
  chainId,
  newest,
  versions,
}: {
  chainId: string;
  newest: number;
  versions: readonly ChainVersionRef[];
}) {
  const t = versionWords();
  const [from, setFrom] = useState<string>('1');
  const [to, setTo] = useState<string | null>(null);
  const end = Number(to ?? newest);
  const options = versions.map(({ version }) => ({ value: String(version), label: t.version(version) }));
  const between = useDocument(
    Number(from) === end ? null : paths.changesSince(chainId, Number(from), end),
  ).body;
  return (
    <>
      <div class="chain-compare not-printed">
        <SelectField label={t.compareFrom} options={options} value={from} onChoose={setFrom} />
        <SelectField label={t.compareTo} options={options} value={String(end)} onChoose={setTo} />
      </div>
      {between !== null && (
        <div>
          <h3>{t.differs(between.from, between.to)}</h3>
          {between.changes.length === 0 && <p>{t.same}</p>}
          <ul>
            {between.changes.map((change) => (
              <li key={messageKey(change)}>{inWords(change)}</li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}
