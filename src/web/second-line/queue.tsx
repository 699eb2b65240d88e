import { paths } from '../api/paths.ts';
import { Card, List } from '../parts/card.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Badge } from '../parts/notice.tsx';
import { Screen } from '../parts/screen.tsx';
import { useDocument } from '../store/documents.ts';
import { wordsOf } from '../words/language.ts';
import { dayAndTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';

const t = wordsOf({
  en: {
    title: 'Cases waiting',
    none: 'No case is waiting.',
    since: (when: string) => `since ${when}`,
    taken: 'taken',
  },
  de: {
    title: 'Wartende Fälle',
    none: 'Kein Fall wartet.',
    since: (when) => `seit ${when}`,
    taken: 'übernommen',
  },
});

/** What waits for second line, the longest waiting first. */
export function QueueScreen() {
  const words = t();
  const queue = useDocument(paths.supportQueue);
  const zone = useZone(null);
  return (
    <Screen title={words.title}>
      <DocumentView document={queue}>
        {({ items }) => (
          <>
            {items.length === 0 && <p>{words.none}</p>}
            <List>
              {items.map((entry) => (
                <li key={entry.id}>
                  <Card title={entry.client}>
                    <span class="soft">{words.since(dayAndTime(entry.waitingSince, zone))}</span>
                    <p>{entry.question}</p>
                    {entry.takenBy !== null && <Badge>{words.taken}</Badge>}
                  </Card>
                </li>
              ))}
            </List>
          </>
        )}
      </DocumentView>
    </Screen>
  );
}
