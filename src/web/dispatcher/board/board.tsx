import { DateTime } from 'luxon';
import { useLocation } from 'preact-iso';
import { paths } from '../../api/paths.ts';
import { LinkButton } from '../../parts/button.tsx';
import { DocumentView } from '../../parts/document-view.tsx';
import { Field } from '../../parts/field.tsx';
import { useDocument } from '../../store/documents.ts';
import { day, dayKey } from '../../words/times.ts';
import { useZone } from '../../words/zone.ts';
import { dayLimits, daysLater } from '../../words/zone-time.ts';
import { DeskScreen } from '../common/desk-screen.tsx';
import { DayList } from './day-list.tsx';
import { VisitEntry } from './visit-entry.tsx';
import { WeekTable } from './week-table.tsx';
import { boardWords } from './words.ts';

const isDay = (text: string | undefined): text is string => /^\d{4}-\d\d-\d\d$/.test(text ?? '');
/** Monday of the week that a day is in (ISO 8601). */
const mondayOf = (key: string): string => daysLater(key, 1 - DateTime.fromISO(key, { zone: 'UTC' }).weekday);

/** A day or a week by person, and below the open tickets that have no visit yet. What is shown stands in the address. */
export function BoardScreen() {
  const t = boardWords();
  const zone = useZone(null);
  const { query, route } = useLocation();
  const today = dayKey(new Date().toISOString(), zone);
  const isWeek = query.week !== undefined;
  const asked = isWeek ? query.week : query.day;
  const shown = isDay(asked) ? asked : today;
  const first = isWeek ? mondayOf(shown) : shown;
  const days = Array.from({ length: isWeek ? 7 : 1 }, (_, at) => daysLater(first, at));
  const { from } = dayLimits(first, zone);
  const { to } = dayLimits(days.at(-1) ?? first, zone);
  const visits = useDocument(paths.tickets({ visitFrom: from, visitTo: to, limit: 200 }));
  const address = (key: string) => `/app/board?${isWeek ? 'week' : 'day'}=${key}`;
  return (
    <DeskScreen title={isWeek ? t.weekOf(day(from, zone)) : `${t.board}: ${day(from, zone)}`}>
      <div class="row not-printed board-days">
        <LinkButton href={address(daysLater(first, -days.length))}>
          ← {isWeek ? t.weekBefore : t.before}
        </LinkButton>
        <LinkButton href={address(today)}>{isWeek ? t.thisWeek : t.today}</LinkButton>
        <LinkButton href={address(daysLater(first, days.length))}>
          {isWeek ? t.weekAfter : t.after} →
        </LinkButton>
        <LinkButton href={isWeek ? `/app/board?day=${first}` : `/app/board?week=${first}`}>
          {isWeek ? t.showDay : t.showWeek}
        </LinkButton>
        <Field
          type="date"
          label={t.dayField}
          value={shown}
          onChange={({ currentTarget }) => currentTarget.value !== '' && route(address(currentTarget.value))}
        />
      </div>
      <DocumentView document={visits}>
        {({ items }) =>
          isWeek ? (
            <WeekTable visits={items} days={days} today={today} zone={zone} />
          ) : (
            <DayList visits={items} />
          )
        }
      </DocumentView>
      <Unplanned />
    </DeskScreen>
  );
}

function Unplanned() {
  const t = boardWords();
  const open = useDocument(paths.tickets({ state: 'open', limit: 200 }));
  return (
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
  );
}
