import { Card, List } from '../parts/card.tsx';
import { Badge } from '../parts/notice.tsx';
import { chainWords } from '../place/chain-words.ts';
import { outbox } from '../store/outbox.ts';
import { isStopped, type UploadEntry } from '../store/outbox-entry.ts';
import { captureWords } from './common/capture-words.ts';
import { sizeWords } from './sizes.ts';

/** The files of a ticket that are still on this device, each with how far it is. */
export function Uploads({
  ticketId,
  isWanted = () => true,
}: {
  ticketId: string;
  isWanted?: (entry: UploadEntry) => boolean;
}) {
  const t = captureWords();
  const entries = outbox.value.filter(
    (entry): entry is UploadEntry =>
      entry.kind === 'upload' && entry.ticketId === ticketId && isWanted(entry),
  );
  if (entries.length === 0) return null;
  return (
    <Card title={t.onTheWay(entries.length)}>
      <List>
        {entries.map((entry) => (
          <li key={entry.order} class="upload">
            <span class="row">
              <strong>{entry.fileName}</strong>
              {entry.about.tie.shows !== null && <span>{chainWords().shows[entry.about.tie.shows]}</span>}
              <Badge tone={isStopped(entry) ? 'refusal' : 'plain'}>{t.states[entry.state]}</Badge>
            </span>
            <progress
              aria-label={entry.fileName}
              value={entry.sentBytes}
              max={Math.max(1, entry.sizeBytes)}
            />
            <span class="soft figures">
              {t.ofBytes(sizeWords(entry.sentBytes), sizeWords(entry.sizeBytes))}
            </span>
          </li>
        ))}
      </List>
    </Card>
  );
}
