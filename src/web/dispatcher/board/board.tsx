import { useLocation } from 'preact-iso';
import type { TicketSummary } from '../../../../shared/contract/ticket.ts';
import { paths } from '../../api/paths.ts';
import { LinkButton } from '../../parts/button.tsx';
import { DocumentView } from '../../parts/document-view.tsx';
import { Field } from '../../parts/field.tsx';
import { useDocument } from '../../store/documents.ts';
import { day, dayKey, lengthOfTime } from '../../words/times.ts';
import { useZone } from '../../words/zone.ts';
import { dayLimits, daysLater } from '../../words/zone-time.ts';
import { DeskScreen } from '../common/desk-screen.tsx';
import { VisitEntry } from './visit-entry.tsx';
import { boardWords } from './words.ts';

/** One day, a lane for each technician, and beside them the open tickets that have no visit yet. */
export function BoardScreen() {
  const t = boardWords();
  const zone = useZone(null);
  const { query, route } = useLocation();
  const today = dayKey(new Date().toISOString(), zone);
  const shown = /^\d{4}-\d\d-\d\d$/.test(query.day ?? '') ? (query.day ?? today) : today;
  const { from, to } = dayLimits(shown, zone);
  const visits = useDocument(paths.tickets({ visitFrom: from, visitTo: to, limit: 200 }));
  const open = useDocument(paths.tickets({ state: 'open', limit: 200 }));
  const address = (key: string) => `/app/board?day=${key}`;
  return (
    <DeskScreen title={`${t.board}: ${day(from, zone)}`}>
      <div class="row not-printed board-days">
        <LinkButton href={address(daysLater(shown, -1))}>← {t.before}</LinkButton>
        <LinkButton href={address(today)}>{t.today}</LinkButton>
        <LinkButton href={address(daysLater(shown, 1))}>{t.after} →</LinkButton>
        <Field
          type="date"
          label={t.dayField}
          value={shown}
          onChange={({ currentTarget }) => currentTarget.value !== '' && route(address(currentTarget.value))}
        />
      </div>
      <DocumentView document={visits}>{({ items }) => <Lanes visits={items} />}</DocumentView>
      <section class="stack">
        <h2>{t.withoutVisit}</h2>
        <DocumentView document={open}>
          {({ items }) => {
            const unplanned = items.filter(({ visitAt }) => visitAt === null);
            if (unplanned.length === 0) return <p>{t.allPlanned}</p>;
            return (
              <ul class="lanes plain-list">
                {unplanned.map((ticket) => (
                  <li class="card" key={ticket.id}>
                    <VisitEntry ticket={ticket} />
                  </li>
                ))}
              </ul>
            );
          }}
        </DocumentView>
      </section>
    </DeskScreen>
  );
}

function Lanes({ visits }: { visits: readonly TicketSummary[] }) {
  const t = boardWords();
  const members = useDocument(paths.members).body?.items ?? [];
  const technicians = members.filter(
    ({ id, role, active }) =>
      (active && role === 'technician') || visits.some(({ assigneeId }) => assigneeId === id),
  );
  const of = (assigneeId: string | null) =>
    visits
      .filter((ticket) => ticket.assigneeId === assigneeId)
      .toSorted((a, b) => (a.visitAt ?? '').localeCompare(b.visitAt ?? ''));
  const lanes = [
    ...(of(null).length > 0 ? [{ id: '', name: t.withNobody, own: of(null) }] : []),
    ...technicians.map(({ id, name }) => ({ id, name, own: of(id) })),
  ];
  return (
    <div class="lanes">
      {lanes.map(({ id, name, own }) => (
        <section class={id === '' ? 'lane lane-nobody' : 'lane'} key={id} aria-label={name}>
          <h2>
            {name} <span class="soft">{t.count(own.length)}</span>
          </h2>
          {own.length === 0 && <p class="soft">{t.free}</p>}
          <ol class="plain-list">
            {own.map((ticket, index) => (
              <li key={ticket.id}>
                <VisitEntry ticket={ticket} />
                <Between from={ticket} to={own[index + 1]} />
              </li>
            ))}
          </ol>
        </section>
      ))}
    </div>
  );
}

/** How far two visits of one technician lie apart: what a dispatcher looks for before they add a third. */
function Between({ from, to }: { from: TicketSummary; to: TicketSummary | undefined }) {
  const t = boardWords();
  if (from.visitAt === null || !to || to.visitAt === null) return null;
  const minutes = (Date.parse(to.visitAt) - Date.parse(from.visitAt)) / 60_000;
  if (minutes === 0) return <p class="between between-tight">▲ {t.sameTime}</p>;
  return <p class="between soft">{t.between(lengthOfTime(minutes))}</p>;
}
