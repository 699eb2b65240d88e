import type { Ticket, TicketSummary } from '../../../../shared/contract/ticket.ts';
import { paths } from '../../api/paths.ts';
import { Card, List, ListLink } from '../../parts/card.tsx';
import { Badge } from '../../parts/notice.tsx';
import { culpritOf, remedyOf } from '../../report/how-it-ended.tsx';
import { useDocument } from '../../store/documents.ts';
import { useTickets } from '../../store/use-tickets.ts';
import { stateWord, terms } from '../../words/terms.ts';
import { day } from '../../words/times.ts';
import { deskWords } from '../common/words.ts';
import { ticketWords } from './words.ts';

/** Assumed: so many earlier tickets of a site say how it is with it. */
const shown = 5;

/** The last faults at a site beside this one, and what they were. */
export function SiteHistory({ ticket, zone }: { ticket: Ticket; zone: string }) {
  const t = ticketWords();
  const found = useDocument(paths.tickets({ siteId: ticket.siteId, limit: shown + 1 })).body?.items ?? null;
  const others = (found ?? []).filter(({ id }) => id !== ticket.id).slice(0, shown);
  const ended = useTickets(others.filter(({ state }) => state === 'closed'));
  if (found === null) return null;
  return (
    <Card title={t.history}>
      {others.length === 0 && <p>{t.noHistory}</p>}
      <List>
        {others.map((other) => (
          <Earlier key={other.id} line={other} ticket={ended.get(other.id)} zone={zone} />
        ))}
      </List>
    </Card>
  );
}

function Earlier({ line, ticket, zone }: { line: TicketSummary; ticket: Ticket | undefined; zone: string }) {
  const [t, d] = [ticketWords(), deskWords()];
  const culprit = ticket === undefined ? null : culpritOf({ triage: ticket.triage, chain: null });
  const remedy = ticket === undefined ? null : remedyOf({ triage: ticket.triage, chain: null });
  return (
    <ListLink href={`/app/tickets/${line.id}`}>
      <strong>
        {d.ticket(line.number)}: {terms().symptom[line.symptom]}
      </strong>
      {culprit !== null && <span>{culprit}</span>}
      {remedy !== null && <span>{remedy}</span>}
      {ticket !== undefined && culprit === null && remedy === null && <span>{t.nothingNamed}</span>}
      <span class="row">
        <Badge>{stateWord(line.state)}</Badge>
        <span class="soft">{day(line.openedAt, zone)}</span>
      </span>
    </ListLink>
  );
}
