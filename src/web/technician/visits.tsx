import { paths } from '../api/paths.ts';
import { List, ListLink } from '../parts/card.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Badge } from '../parts/notice.tsx';
import { Screen } from '../parts/screen.tsx';
import { useDocument } from '../store/documents.ts';
import { stateWord, terms } from '../words/terms.ts';
import { dayAndTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import { technicianWords } from './words.ts';

/** The open tickets of whoever is signed in, the next visit first. */
export function VisitsScreen() {
  const t = technicianWords();
  const tickets = useDocument(paths.tickets({ assigneeId: 'me', state: 'open', limit: 200 }));
  const zone = useZone(null);
  return (
    <Screen title={t.visits}>
      <DocumentView document={tickets}>
        {({ items }) => (
          <>
            <p>{items.length === 0 ? t.none : t.open(items.length)}</p>
            <List>
              {items
                .toSorted((a, b) => (a.visitAt ?? '~').localeCompare(b.visitAt ?? '~'))
                .map((ticket) => (
                  <ListLink key={ticket.id} href={`/app/visits/${ticket.id}`}>
                    <strong>{ticket.client}</strong>
                    <span>
                      {ticket.visitAt === null ? t.noVisit : dayAndTime(ticket.visitAt, zone)} ·{' '}
                      {ticket.chainName}
                    </span>
                    <span class="row">
                      <Badge>{stateWord(ticket.state)}</Badge>
                      <Badge>{terms().symptoms[ticket.symptom]}</Badge>
                      {(ticket.priority === 'high' || ticket.priority === 'urgent') && (
                        <Badge tone="caution">{terms().priorities[ticket.priority]}</Badge>
                      )}
                    </span>
                  </ListLink>
                ))}
            </List>
          </>
        )}
      </DocumentView>
    </Screen>
  );
}
