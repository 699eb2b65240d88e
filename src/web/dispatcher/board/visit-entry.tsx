import { useState } from 'preact/hooks';
import type { TicketSummary } from '../../../../shared/contract/ticket.ts';
import { Button } from '../../parts/button.tsx';
import { Badge } from '../../parts/notice.tsx';
import { DueBadge } from '../../waiting/due-badge.tsx';
import { stateWord, terms } from '../../words/terms.ts';
import { clockTime, dayAndTime } from '../../words/times.ts';
import { useZone } from '../../words/zone.ts';
import { AssignDialog } from '../assign/assign-dialog.tsx';
import { deskWords } from '../common/words.ts';

/** A ticket on the board: when, where, what; and a dialog to give it to somebody else or to another time. */
export function VisitEntry({ ticket, isDated = false }: { ticket: TicketSummary; isDated?: boolean }) {
  const d = deskWords();
  const zone = useZone(ticket.siteId);
  const [isChanging, setChanging] = useState(false);
  const name = `${d.ticket(ticket.number)} ${ticket.client}`;
  const time = ticket.visitAt === null ? null : (isDated ? dayAndTime : clockTime)(ticket.visitAt, zone);
  return (
    <div class="visit-entry">
      {time !== null && <span class="figures visit-time">{time}</span>}
      <div class="visit-what">
        <a href={`/app/tickets/${ticket.id}`}>
          <strong>{ticket.client}</strong>
        </a>
        <span>
          <span class="soft">{d.ticket(ticket.number)}</span> {terms().symptom[ticket.symptom]}
        </span>
        <span class="row">
          <Badge>{stateWord(ticket.state)}</Badge>
          <DueBadge due={ticket.due} zone={zone} />
          {(ticket.priority === 'high' || ticket.priority === 'urgent') && (
            <Badge tone="caution">{terms().priority[ticket.priority]}</Badge>
          )}
        </span>
      </div>
      <div class="not-printed">
        <Button aria-label={d.changeOf(name)} onClick={() => setChanging(true)}>
          {d.change}
        </Button>
      </div>
      {isChanging && <AssignDialog name={name} ticketId={ticket.id} onClose={() => setChanging(false)} />}
    </div>
  );
}
