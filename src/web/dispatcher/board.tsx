import { paths } from '../api/paths.ts';
import { DocumentView } from '../parts/document-view.tsx';
import { Screen } from '../parts/screen.tsx';
import { useDocument } from '../store/documents.ts';
import { wordsOf } from '../words/language.ts';
import { stateWord, terms } from '../words/terms.ts';
import { dayAndTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';

const t = wordsOf({
  en: {
    title: 'Open tickets',
    client: 'Client',
    symptom: 'Symptom',
    state: 'State',
    visit: 'Visit',
    who: 'With',
    nobody: 'nobody',
    none: 'No ticket is open.',
  },
  de: {
    title: 'Offene Tickets',
    client: 'Kunde',
    symptom: 'Symptom',
    state: 'Zustand',
    visit: 'Termin',
    who: 'Bei',
    nobody: 'niemandem',
    none: 'Es ist kein Ticket offen.',
  },
});

/** All open tickets of the organisation in a table. */
export function BoardScreen() {
  const words = t();
  const tickets = useDocument(paths.tickets({ state: 'open', limit: 200 }));
  const zone = useZone(null);
  return (
    <Screen title={words.title}>
      <DocumentView document={tickets}>
        {({ items }) =>
          items.length === 0 ? (
            <p>{words.none}</p>
          ) : (
            <div class="wide">
              <table>
                <thead>
                  <tr>
                    {[words.client, words.symptom, words.state, words.visit, words.who].map((head) => (
                      <th key={head} scope="col">
                        {head}
                      </th>
                    ))}
                  </tr>
                </thead>
                <tbody>
                  {items.map((ticket) => (
                    <tr key={ticket.id}>
                      <th scope="row">{ticket.client}</th>
                      <td>{terms().symptoms[ticket.symptom]}</td>
                      <td>{stateWord(ticket.state)}</td>
                      <td>{ticket.visitAt === null ? '' : dayAndTime(ticket.visitAt, zone)}</td>
                      <td>{ticket.assigneeName ?? words.nobody}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          )
        }
      </DocumentView>
    </Screen>
  );
}
