import { Button } from '../parts/button.tsx';
import { List } from '../parts/card.tsx';
import { Badge, Notice } from '../parts/notice.tsx';
import { Screen } from '../parts/screen.tsx';
import { outbox, stoppedEntries } from '../store/outbox.ts';
import { isStopped, type OutboxEntry } from '../store/outbox-entry.ts';
import { sendNow } from '../store/sender.ts';
import { dayAndTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import { Conflict } from './conflict.tsx';
import { entryDetail, entryWord } from './entry-words.ts';
import { outboxWords } from './words.ts';

/** Everything that this device has yet to send, and the decisions that only the member can take. */
export function OutboxScreen() {
  const t = outboxWords();
  const stopped = stoppedEntries.value;
  const waiting = outbox.value.filter((entry) => !isStopped(entry));
  return (
    <Screen title={t.title}>
      {stopped.map((entry) => (
        <Conflict key={entry.order} entry={entry} />
      ))}
      {waiting.length === 0 && stopped.length === 0 && <Notice tone="good">{t.empty}</Notice>}
      {waiting.length > 0 && (
        <section class="stack">
          <h2>{t.waiting}</h2>
          <List>
            {waiting.map((entry) => (
              <Waiting key={entry.order} entry={entry} />
            ))}
          </List>
          <div>
            <Button onClick={() => void sendNow()}>{t.sendNow}</Button>
          </div>
        </section>
      )}
    </Screen>
  );
}

function Waiting({ entry }: { entry: OutboxEntry }) {
  const t = outboxWords();
  const zone = useZone(null);
  const detail = entryDetail(entry);
  return (
    <li class="card">
      <span class="row">
        <strong>{entryWord(entry)}</strong>
        <Badge>{t.states[entry.state]}</Badge>
      </span>
      {detail !== '' && <span>{detail}</span>}
      <span class="soft">{dayAndTime(entry.madeAt, zone)}</span>
      {entry.kind === 'upload' && (
        <label>
          <span class="soft">
            {t.sent(Math.round((100 * entry.sentBytes) / Math.max(1, entry.sizeBytes)))}
          </span>
          <progress value={entry.sentBytes} max={entry.sizeBytes} />
        </label>
      )}
    </li>
  );
}
