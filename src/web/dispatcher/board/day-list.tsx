import { useState } from 'preact/hooks';
import type { Ticket, TicketSummary } from '../../../../shared/contract/ticket.ts';
import { paths } from '../../api/paths.ts';
import { Button } from '../../parts/button.tsx';
import { Badge } from '../../parts/notice.tsx';
import { typed } from '../../parts/typed.tsx';
import { useDocument } from '../../store/documents.ts';
import { useTickets } from '../../store/use-tickets.ts';
import { DueBadge } from '../../waiting/due-badge.tsx';
import { stateWord, terms } from '../../words/terms.ts';
import { clockTime, lengthOfTime } from '../../words/times.ts';
import { useZone } from '../../words/zone.ts';
import { AssignDialog } from '../assign/assign-dialog.tsx';
import { deskWords } from '../common/words.ts';
import { type Lane, useLanes } from './lanes-of.ts';
import { endOf, gapMin, townOf } from './visit-times.ts';
import { boardWords } from './words.ts';
import './board.css';

/** One day by person: when each visit begins, where, for how long, how far it is, and what was promised. */
export function DayList({ visits }: { visits: readonly TicketSummary[] }) {
  const details = useTickets(visits);
  return (
    <div class="day-list">
      {useLanes(visits).map((lane) => (
        <PersonsDay key={lane.id} lane={lane} details={details} />
      ))}
    </div>
  );
}

function PersonsDay({
  lane: { id, name, own },
  details,
}: {
  lane: Lane;
  details: ReadonlyMap<string, Ticket>;
}) {
  const t = boardWords();
  const plannedMin = own.reduce((sum, { visitMin }) => sum + (visitMin ?? 0), 0);
  return (
    <section class={id === null ? 'lane lane-nobody' : 'lane'} aria-label={name}>
      <h2>
        {name} <span class="soft">{t.count(own.length)}</span>
        {plannedMin > 0 && <span class="soft"> · {t.planned(lengthOfTime(plannedMin))}</span>}
      </h2>
      {own.length === 0 ? (
        <p class="soft">{t.free}</p>
      ) : (
        <table class="day-table">
          <caption class="for-readers-only">{name}</caption>
          <thead>
            <tr>
              <th scope="col">{t.time}</th>
              <th scope="col">{deskWords().client}</th>
              <th scope="col">{t.town}</th>
              <th scope="col" class="day-figure">
                {t.length}
              </th>
              <th scope="col" class="day-figure">
                {t.way}
              </th>
              <th scope="col">{t.promised}</th>
              <th scope="col">{deskWords().state}</th>
              <td class="not-printed" />
            </tr>
          </thead>
          <tbody>
            {own.map((ticket, at) => (
              <VisitRow key={ticket.id} ticket={ticket} details={details.get(ticket.id)} next={own[at + 1]} />
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

function VisitRow({
  ticket,
  details,
  next,
}: {
  ticket: TicketSummary;
  details: Ticket | undefined;
  next: TicketSummary | undefined;
}) {
  const [t, d] = [boardWords(), deskWords()];
  const zone = useZone(ticket.siteId);
  const site = useDocument(paths.site(ticket.siteId)).body;
  const [isChanging, setChanging] = useState(false);
  const end = endOf(ticket);
  const name = `${d.ticket(ticket.number)} ${ticket.client}`;
  return (
    <>
      <tr>
        <td class="figures day-time">
          {ticket.visitAt !== null && clockTime(ticket.visitAt, zone)}
          {end !== null && `–${clockTime(end, zone)}`}
        </td>
        <th scope="row">
          <a href={`/app/tickets/${ticket.id}`}>{ticket.client}</a>
          <span class="soft">
            {d.ticket(ticket.number)} {terms().symptom[ticket.symptom]}
          </span>
        </th>
        <td data-name={t.town}>{site !== null && townOf(site.address)}</td>
        <td data-name={t.length} class="day-figure">
          {ticket.visitMin === null ? <Unsaid /> : lengthOfTime(ticket.visitMin)}
        </td>
        <td data-name={t.way} class="day-figure">
          {site?.travelMin == null ? <Unsaid /> : lengthOfTime(site.travelMin)}
        </td>
        <td data-name={t.promised}>
          {details === undefined || details.intake.promised === '' ? (
            <Unsaid />
          ) : (
            typed(details.intake.promised)
          )}
        </td>
        <td>
          <span class="row">
            <Badge>{stateWord(ticket.state)}</Badge>
            <DueBadge due={ticket.due} zone={zone} />
            {(ticket.priority === 'high' || ticket.priority === 'urgent') && (
              <Badge tone="caution">{terms().priority[ticket.priority]}</Badge>
            )}
          </span>
        </td>
        <td class="not-printed day-change">
          <Button aria-label={d.changeOf(name)} onClick={() => setChanging(true)}>
            {d.change}
          </Button>
          {isChanging && <AssignDialog name={name} ticketId={ticket.id} onClose={() => setChanging(false)} />}
        </td>
      </tr>
      <Between from={ticket} to={next} />
    </>
  );
}

function Unsaid() {
  const t = boardWords();
  return (
    <span class="soft">
      <span aria-hidden="true">–</span>
      <span class="for-readers-only">{t.unsaid}</span>
    </span>
  );
}

/** How far two visits of one technician lie apart: what a dispatcher looks for before they add a third. */
function Between({ from, to }: { from: TicketSummary; to: TicketSummary | undefined }) {
  const t = boardWords();
  const minutes = to === undefined ? null : gapMin(from, to);
  if (to === undefined || minutes === null) return null;
  const said =
    to.visitAt === from.visitAt
      ? t.sameTime
      : minutes < 0
        ? t.overlaps(lengthOfTime(-minutes))
        : t.between(lengthOfTime(minutes));
  return (
    <tr class="day-between">
      <td colSpan={8}>
        {minutes <= 0 ? <strong class="day-tight">▲ {said}</strong> : <span class="soft">{said}</span>}
      </td>
    </tr>
  );
}
