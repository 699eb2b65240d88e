import { useEffect } from 'preact/hooks';
import type { TicketSummary } from '../../../shared/contract/ticket.ts';
import { paths } from '../api/paths.ts';
import { reachable } from '../api/session.ts';
import { List } from '../parts/card.tsx';
import { DocumentView } from '../parts/document-view.tsx';
import { Badge } from '../parts/notice.tsx';
import { Screen } from '../parts/screen.tsx';
import { GettingThere } from '../site/getting-there.tsx';
import { useDocument } from '../store/documents.ts';
import { DueBadge } from '../waiting/due-badge.tsx';
import { stateWord, terms } from '../words/terms.ts';
import { clockTime, dayAndTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import { visitAddress } from './common/addresses.ts';
import { readVisitsAhead } from './read-ahead.ts';
import { type VisitGroup, visitGroupOf, visitGroups } from './visit-group.ts';
import { technicianWords } from './words.ts';
import './technician.css';

/** The open tickets of whoever is signed in, today's visits first, each with the way there; before them, whom to ask how a repair holds. */
export function VisitsScreen() {
  const t = technicianWords();
  const tickets = useDocument(paths.tickets({ assigneeId: 'me', state: 'open', limit: 200 }));
  const zone = useZone(null);
  const now = new Date().toISOString();
  // The end of the day, so that it is one document all day long.
  const dueBy = `${now.slice(0, 10)}T23:59:59.999Z`;
  const toAsk = useDocument(paths.tickets({ assigneeId: 'me', state: 'closed', dueBy, limit: 50 }));
  const items = tickets.body?.items ?? [];
  const today = items.filter(({ visitAt }) => visitGroupOf(visitAt, now, zone) === 'today');
  const todayIds = today.map(({ id }) => id).join(' ');
  useEffect(() => {
    if (reachable.peek() && todayIds !== '') void readVisitsAhead(todayIds.split(' '));
  }, [todayIds]);
  return (
    <Screen title={t.visits}>
      <DocumentView document={tickets}>
        {() => (
          <>
            <p>{items.length === 0 ? t.none : t.open(items.length)}</p>
            {items.length > 0 && today.length === 0 && <p>{t.noneToday}</p>}
            <Group title={t.toAsk} group="undated" tickets={toAsk.body?.items ?? []} />
            {visitGroups.map((group) => (
              <Group
                key={group}
                title={t.groups[group]}
                group={group}
                tickets={items
                  .filter(({ visitAt }) => visitGroupOf(visitAt, now, zone) === group)
                  .toSorted((a, b) => (a.visitAt ?? '').localeCompare(b.visitAt ?? ''))}
              />
            ))}
          </>
        )}
      </DocumentView>
    </Screen>
  );
}

function Group({
  title,
  group,
  tickets,
}: {
  title: string;
  group: VisitGroup;
  tickets: readonly TicketSummary[];
}) {
  if (tickets.length === 0) return null;
  return (
    <section class="stack">
      <h2>{title}</h2>
      <List>
        {tickets.map((ticket) => (
          <VisitCard key={ticket.id} ticket={ticket} group={group} />
        ))}
      </List>
    </section>
  );
}

function VisitCard({ ticket, group }: { ticket: TicketSummary; group: VisitGroup }) {
  const t = technicianWords();
  const site = useDocument(paths.site(ticket.siteId)).body;
  const zone = useZone(ticket.siteId);
  const when =
    ticket.visitAt === null
      ? t.noVisit
      : group === 'today'
        ? clockTime(ticket.visitAt, zone)
        : dayAndTime(ticket.visitAt, zone);
  const kinds = [...new Set(site?.hazards.map(({ kind }) => kind) ?? [])];
  return (
    <li class="visit-card">
      <a class="visit-card-link" href={visitAddress(ticket.id)}>
        <span class="visit-card-when">{when}</span>
        <strong>{ticket.client}</strong>
        <span>{ticket.chainName}</span>
      </a>
      <span class="row">
        {(ticket.priority === 'high' || ticket.priority === 'urgent') && (
          <Badge tone="caution">{terms().priority[ticket.priority]}</Badge>
        )}
        <Badge>{terms().symptom[ticket.symptom]}</Badge>
        <Badge>{stateWord(ticket.state)}</Badge>
        <DueBadge due={ticket.due} zone={zone} />
      </span>
      {kinds.length > 0 && (
        <span class="visit-card-hazards">
          <span aria-hidden="true">▲</span>
          <span>
            <span class="for-readers-only">{t.hazards}: </span>
            {kinds.map((kind) => terms().hazard[kind]).join(' · ')}
          </span>
        </span>
      )}
      {site !== null && group !== 'undated' && <GettingThere site={site} />}
    </li>
  );
}
