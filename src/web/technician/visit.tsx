import { useState } from 'preact/hooks';
import { paths } from '../api/paths.ts';
import { ChainDrawing } from '../drawing/chain-drawing.tsx';
import { Button } from '../parts/button.tsx';
import { Card, Facts } from '../parts/card.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { TextField } from '../parts/field.tsx';
import { Badge, Notice } from '../parts/notice.tsx';
import { Screen } from '../parts/screen.tsx';
import { useDocument } from '../store/documents.ts';
import { putCommand } from '../store/outbox.ts';
import { useTicket } from '../triage/use-ticket.ts';
import { commandWord, stateWord, terms } from '../words/terms.ts';
import { technicianWords } from './words.ts';

/** One visit: where to go and what to take care of, and the ticket as it stands, also without a connection. */
export function VisitScreen({ ticketId = '' }: { ticketId?: string }) {
  const t = technicianWords();
  const { server, projection } = useTicket(ticketId);
  const ticket = projection?.ticket ?? server.body;
  const site = useDocument(ticket === null ? null : paths.site(ticket.siteId)).body;
  const chain = useDocument(ticket === null ? null : paths.chain(ticket.chainId)).body;
  const [note, setNote] = useState('');
  return (
    <Screen title={ticket === null ? t.visits : ticket.client}>
      <DocumentView document={server}>
        {(body) => (
          <>
            <div class="row">
              <span>{t.ticket(body.number)}</span>
              <Badge>{stateWord(ticket?.state ?? body.state)}</Badge>
              <Badge>{terms().symptoms[body.symptom]}</Badge>
            </div>
            {projection !== null && projection.ahead > 0 && <Notice>{t.waiting(projection.ahead)}</Notice>}
            {site !== null && (
              <Card>
                <Facts
                  facts={[
                    [t.address, site.address],
                    [t.access, site.accessNotes],
                    [t.travel, site.travelNotes],
                  ]}
                />
              </Card>
            )}
            {site !== null && site.hazards.length > 0 && (
              <Notice tone="caution">
                <ul>
                  {site.hazards.map((hazard) => (
                    <li key={hazard.kind + hazard.text}>
                      {terms().hazards[hazard.kind]}: {hazard.text}
                    </li>
                  ))}
                </ul>
                <span>{t.caution}</span>
              </Notice>
            )}
            {chain !== null && (
              <Card title={t.chain}>
                <ChainDrawing chain={chain.chain} />
              </Card>
            )}
            <Card title={t.next}>
              <ul>
                {(ticket?.allowedNow ?? []).map((command) => (
                  <li key={command.type}>{commandWord(command)}</li>
                ))}
              </ul>
            </Card>
            <form
              class="stack"
              onSubmit={(event) => {
                event.preventDefault();
                if (note.trim() === '') return;
                void putCommand(body, { type: 'note', text: note.trim() }).then(() => setNote(''));
              }}
            >
              <TextField
                label={t.note}
                value={note}
                onInput={({ currentTarget }) => setNote(currentTarget.value)}
              />
              <Button type="submit">{t.writeNote}</Button>
            </form>
            {ticket !== null && ticket.triage.notes.length > 0 && (
              <ul>
                {ticket.triage.notes.map(({ text, at }) => (
                  <li key={at + text}>{text}</li>
                ))}
              </ul>
            )}
          </>
        )}
      </DocumentView>
    </Screen>
  );
}
