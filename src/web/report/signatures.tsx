import { useState } from 'preact/hooks';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { typedText } from '../parts/typed.tsx';
import { contentOf, useBlobUrl, waitingFile } from '../store/blob-url.ts';
import { useDocument } from '../store/documents.ts';
import { outbox } from '../store/outbox.ts';
import { dayAndTime } from '../words/times.ts';
import { reportWords } from './report-words.ts';
import { Signing } from './signing.tsx';

/** Who signed a ticket's report and when, those on their way to the server among them. @param sign a form to sign, too */
export function Signatures({ ticket, zone, sign }: { ticket: Ticket; zone: string; sign: boolean }) {
  const t = reportWords();
  const items = useDocument(paths.evidence(ticket.id)).body?.items ?? [];
  const [isAnother, setAnother] = useState(false);
  const kept = items.filter(({ tie, withdrawn }) => tie.shows === 'signature' && withdrawn === null);
  const waiting = outbox.value.filter(
    (entry) =>
      entry.kind === 'upload' && entry.ticketId === ticket.id && entry.about.tie.shows === 'signature',
  );
  const hasAny = kept.length + waiting.length > 0;
  const asks = sign && (!hasAny || isAnother);
  if (!hasAny && !asks) return null;
  return (
    <section class={hasAny ? 'stack report-signed' : 'stack report-signed not-printed'}>
      <h2>{t.signTitle}</h2>
      {kept.map(({ id, description, at }) => (
        <Signed key={id} name={description} at={at} zone={zone} file={id} load={contentOf} />
      ))}
      {waiting.map(
        (entry) =>
          entry.kind === 'upload' && (
            <div key={entry.id}>
              <Signed
                name={entry.about.description}
                at={entry.madeAt}
                zone={zone}
                file={entry.id}
                load={waitingFile}
              />
              <p class="soft not-printed">{t.onItsWay}</p>
            </div>
          ),
      )}
      {asks && <Signing ticket={ticket} onSigned={() => setAnother(false)} />}
      {sign && hasAny && !isAnother && (
        <div class="not-printed">
          <Button onClick={() => setAnother(true)}>{t.another}</Button>
        </div>
      )}
    </section>
  );
}

function Signed({
  name,
  at,
  zone,
  file,
  load,
}: {
  name: string;
  at: string;
  zone: string;
  file: string;
  load: (key: string) => Promise<Blob | null>;
}) {
  const t = reportWords();
  const url = useBlobUrl(file, load);
  return (
    <figure class="signature">
      {url !== null && <img src={url} alt={t.signature(typedText(name))} />}
      <figcaption>{t.signedBy(typedText(name), dayAndTime(at, zone))}</figcaption>
    </figure>
  );
}
