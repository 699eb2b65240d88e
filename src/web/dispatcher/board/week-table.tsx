import type { TicketSummary } from '../../../../shared/contract/ticket.ts';
import { paths } from '../../api/paths.ts';
import { useDocument } from '../../store/documents.ts';
import { terms } from '../../words/terms.ts';
import { clockTime, dayKey, lengthOfTime, weekday } from '../../words/times.ts';
import { useZone } from '../../words/zone.ts';
import { dayLimits } from '../../words/zone-time.ts';
import { useLanes } from './lanes-of.ts';
import { endOf, townOf } from './visit-times.ts';
import { boardWords } from './words.ts';
import './board.css';

/** Seven days by person. @param days `2026-11-30`, in the firm's zone */
export function WeekTable({
  visits,
  days,
  today,
  zone,
}: {
  visits: readonly TicketSummary[];
  days: readonly string[];
  today: string;
  zone: string;
}) {
  const t = boardWords();
  const said = (key: string) => weekday(dayLimits(key, zone).from, zone);
  return (
    <table class="week-table">
      <caption class="for-readers-only">{t.week}</caption>
      <thead>
        <tr>
          <th scope="col">{t.person}</th>
          {days.map((key) => (
            <th scope="col" key={key} {...(key === today ? { 'aria-current': 'date' } : {})}>
              <a href={`/app/board?day=${key}`}>{said(key)}</a>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {useLanes(visits).map(({ id, name, own }) => (
          <tr key={id}>
            <th scope="row">
              {name} <span class="soft">{t.count(own.length)}</span>
            </th>
            {days.map((key) => {
              const ofDay = own.filter(({ visitAt }) => visitAt !== null && dayKey(visitAt, zone) === key);
              return (
                <td key={key} data-name={said(key)} class={ofDay.length === 0 ? 'week-free' : undefined}>
                  {ofDay.length === 0 && (
                    <span class="soft">
                      <span aria-hidden="true">–</span>
                      <span class="for-readers-only">{t.free}</span>
                    </span>
                  )}
                  {ofDay.map((ticket) => (
                    <WeekVisit key={ticket.id} ticket={ticket} />
                  ))}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function WeekVisit({ ticket }: { ticket: TicketSummary }) {
  const zone = useZone(ticket.siteId);
  const site = useDocument(paths.site(ticket.siteId)).body;
  const end = endOf(ticket);
  return (
    <a class="week-visit" href={`/app/tickets/${ticket.id}`}>
      <span class="figures">
        {ticket.visitAt !== null && clockTime(ticket.visitAt, zone)}
        {end !== null && `–${clockTime(end, zone)}`}
      </span>
      <strong>{ticket.client}</strong>
      <span class="soft">
        {[
          site === null ? null : townOf(site.address),
          ticket.visitMin === null ? null : lengthOfTime(ticket.visitMin),
          ticket.priority === 'urgent' || ticket.priority === 'high'
            ? terms().priority[ticket.priority]
            : null,
        ]
          .filter((part) => part !== null)
          .join(' · ')}
      </span>
    </a>
  );
}
