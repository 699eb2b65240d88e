import { useEffect, useRef, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { TicketSummary } from '../../../../shared/contract/ticket.ts';
import { paths } from '../../api/paths.ts';
import { LinkButton } from '../../parts/button.tsx';
import { List, ListLink } from '../../parts/card.tsx';
import { DocumentView } from '../../parts/document-view.tsx';
import { Field, SelectField } from '../../parts/field.tsx';
import { Badge } from '../../parts/notice.tsx';
import { useDocument } from '../../store/documents.ts';
import { DueBadge } from '../../waiting/due-badge.tsx';
import { stateWord, terms } from '../../words/terms.ts';
import { day } from '../../words/times.ts';
import { useZone } from '../../words/zone.ts';
import { DeskScreen } from '../common/desk-screen.tsx';
import { deskWords } from '../common/words.ts';
import { boardWords } from './words.ts';

/** Assumed: a pause this long between two letters is worth asking. */
const pauseMs = 150;
const limit = 50;
type Which = 'open' | 'waiting' | 'all';

/** Tickets and sites by whatever somebody remembers of them. What is looked for stands in the address. */
export function FindScreen() {
  const t = boardWords();
  const { query, route } = useLocation();
  const fields = useRef<HTMLDivElement>(null);
  const [typed, setTyped] = useState(query.q ?? '');
  const [state, setState] = useState<Which>(
    query.all === '1' ? 'all' : query.waiting === '1' ? 'waiting' : 'open',
  );
  const [asked, setAsked] = useState(typed.trim());
  useEffect(() => {
    const timer = setTimeout(() => {
      setAsked(typed.trim());
      const all = state === 'open' ? '' : `&${state}=1`;
      // whoever has tapped a result meanwhile is on their way there, and not to be brought back
      if (location.pathname === '/app/find')
        route(`/app/find?q=${encodeURIComponent(typed.trim())}${all}`, true);
    }, pauseMs);
    return () => clearTimeout(timer);
  }, [typed, state]);
  // Whoever comes here wants to type; the screen's heading has the focus before.
  useEffect(() => fields.current?.querySelector('input')?.focus(), []);
  const tickets = useDocument(paths.tickets({ q: asked, limit, ...(state === 'all' ? {} : { state }) }));
  const sites = useDocument(paths.sites({ q: asked, limit }));
  return (
    <DeskScreen title={t.find} tools={<LinkButton href="/app/sites/new">{t.newSite}</LinkButton>}>
      <div class="find-fields" ref={fields}>
        <Field
          label={t.findField}
          hint={t.findHint}
          type="search"
          autocomplete="off"
          value={typed}
          onInput={({ currentTarget }) => setTyped(currentTarget.value)}
        />
        <SelectField
          label={t.which}
          options={[
            { value: 'open', label: t.open },
            { value: 'waiting', label: t.waitingOnes },
            { value: 'all', label: t.closedToo },
          ]}
          value={state}
          onChoose={setState}
        />
      </div>
      <div class="beside">
        <section class="stack">
          <h2>{t.tickets}</h2>
          <DocumentView document={tickets}>
            {({ items, next }) => (
              <>
                {items.length === 0 && <p>{t.noTicket}</p>}
                <TicketTable tickets={items} />
                {next !== null && <p class="soft">{t.more}</p>}
              </>
            )}
          </DocumentView>
        </section>
        <section class="stack">
          <h2>{t.sites}</h2>
          <DocumentView document={sites}>
            {({ items, next }) => (
              <>
                {items.length === 0 && <p>{t.noSite}</p>}
                <List>
                  {items.map((site) => (
                    <ListLink key={site.id} href={`/app/sites/${site.id}`}>
                      <strong>{site.client}</strong>
                      <span>{site.address}</span>
                      <span class="soft">{site.chains.map(({ name }) => name).join(' · ')}</span>
                    </ListLink>
                  ))}
                </List>
                {next !== null && <p class="soft">{t.more}</p>}
              </>
            )}
          </DocumentView>
        </section>
      </div>
    </DeskScreen>
  );
}

function TicketTable({ tickets }: { tickets: readonly TicketSummary[] }) {
  const d = deskWords();
  const zone = useZone(null);
  return (
    <List>
      {tickets.map((ticket) => (
        <ListLink key={ticket.id} href={`/app/tickets/${ticket.id}`}>
          <strong>
            {d.ticket(ticket.number)} {ticket.client}
          </strong>
          <span>
            {terms().symptom[ticket.symptom]} · {ticket.chainName}
          </span>
          <span class="row">
            <Badge>{stateWord(ticket.state)}</Badge>
            <DueBadge due={ticket.due} zone={zone} />
            <span class="soft">
              {day(ticket.openedAt, zone)} · {ticket.assigneeName ?? d.nobody}
            </span>
          </span>
        </ListLink>
      ))}
    </List>
  );
}
