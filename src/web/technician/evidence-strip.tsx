import { useState } from 'preact/hooks';
import type { Place } from '../../../shared/contract/chain.ts';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import { paths } from '../api/paths.ts';
import { Dialog } from '../parts/dialog.tsx';
import { typedText } from '../parts/typed.tsx';
import { contentOf, thumbnailOf, useBlobUrl, waitingFile } from '../store/blob-url.ts';
import { useDocument } from '../store/documents.ts';
import { outbox } from '../store/outbox.ts';
import type { UploadEntry } from '../store/outbox-entry.ts';
import { evidenceWords } from './evidence-words.ts';
import { isTiedTo } from './place-tie.ts';

/** The photos of a place, those that still wait on this device too; a tap shows one large. */
export function EvidenceStrip({ ticketId, place }: { ticketId: string; place: Place }) {
  const items = useDocument(paths.evidence(ticketId)).body?.items ?? [];
  const photos = items.filter(
    ({ kind, tie, withdrawn }) => kind === 'photo' && withdrawn === null && isTiedTo(tie, place),
  );
  const waiting = outbox.value.filter(
    (entry): entry is UploadEntry =>
      entry.kind === 'upload' &&
      entry.ticketId === ticketId &&
      entry.about.kind === 'photo' &&
      isTiedTo(entry.about.tie, place),
  );
  if (photos.length + waiting.length === 0) return null;
  return (
    <ul class="thumbnails">
      {waiting.map((entry) => (
        <li key={entry.id}>
          <WaitingThumbnail entry={entry} />
        </li>
      ))}
      {photos.map((item) => (
        <li key={item.id}>
          <Thumbnail item={item} />
        </li>
      ))}
    </ul>
  );
}

export function WaitingThumbnail({ entry }: { entry: UploadEntry }) {
  const url = useBlobUrl(entry.id, waitingFile);
  return <span class="thumbnail">{url !== null && <img src={url} alt={entry.fileName} />}</span>;
}

/** A photo in small; a tap shows it large, where there is a connection. */
export function Thumbnail({ item }: { item: EvidenceItem }) {
  const t = evidenceWords();
  const [isLarge, setLarge] = useState(false);
  const url = useBlobUrl(item.hasThumbnail ? item.id : null, thumbnailOf);
  const name = item.fileName ?? typedText(item.description);
  return (
    <>
      <button type="button" class="thumbnail" aria-label={t.showLarge(name)} onClick={() => setLarge(true)}>
        {url !== null && <img src={url} alt="" />}
      </button>
      {isLarge && (
        <Dialog title={name} onClose={() => setLarge(false)}>
          <LargePhoto evidenceId={item.id} small={url} name={name} />
        </Dialog>
      )}
    </>
  );
}

function LargePhoto({ evidenceId, small, name }: { evidenceId: string; small: string | null; name: string }) {
  const t = evidenceWords();
  const url = useBlobUrl(evidenceId, contentOf);
  const shown = url ?? small;
  return (
    <>
      {shown !== null && <img class="full-photo" src={shown} alt={name} />}
      {url === null && <p role="status">{t.onlySmall}</p>}
    </>
  );
}
