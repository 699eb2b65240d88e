import { useId } from 'preact/hooks';
import type { Member } from '../../../../shared/contract/people.ts';
import { paths } from '../../api/paths.ts';
import { useDocument } from '../../store/documents.ts';
import { clockTime, dayAndTime, weekday } from '../../words/times.ts';
import { dayLimits } from '../../words/zone-time.ts';
import { deskWords } from '../common/words.ts';
import { comingDays, type HalfDay, halvesOf, limitsOf } from './coming-days.ts';
import './assign.css';

/** Who goes, and when: what a `datetime-local` field says, in the site's zone. */
type Choice = { assigneeId: string; visit: string };

/** Who is free when in the coming days, by halves of a day: one choice names person and time. */
export function WhoCouldGo({
  ticketId,
  technicians,
  zone,
  chosen,
  onChoose,
}: {
  ticketId: string;
  technicians: readonly Pick<Member, 'id' | 'name'>[];
  zone: string;
  chosen: Choice;
  onChoose: (choice: Choice) => void;
}) {
  const d = deskWords();
  const group = useId();
  const now = new Date().toISOString();
  const days = comingDays(now, zone);
  const { from, to } = limitsOf(days, zone);
  const visits = useDocument(paths.tickets({ visitFrom: from, visitTo: to, limit: 200 })).body?.items ?? null;
  if (visits === null) return null;
  const free = (half: HalfDay, { id, name }: Pick<Member, 'id' | 'name'>) => (
    <label class="choice">
      <input
        type="radio"
        name={group}
        aria-label={d.couldGo(name, dayAndTime(half.at, zone))}
        checked={chosen.assigneeId === id && chosen.visit === half.begin}
        onChange={() => onChoose({ assigneeId: id, visit: half.begin })}
      />
      {clockTime(half.at, zone)}
    </label>
  );
  return (
    <fieldset class="who-could-go">
      <legend>{d.whoCouldGo}</legend>
      {technicians.map((technician) => {
        const own = visits.filter(({ id, assigneeId }) => id !== ticketId && assigneeId === technician.id);
        return (
          <div class="who-week" key={technician.id}>
            <strong>{technician.name}</strong>
            <ol>
              {days.map((key) => (
                <li key={key}>
                  <span class="who-day">{weekday(dayLimits(key, zone).from, zone)}</span>
                  {halvesOf(key, own, { zone, now }).map((half) => (
                    <div key={half.begin}>
                      {half.visits.map((visit) => (
                        <span class="who-taken" key={visit.id}>
                          <span class="figures">{clockTime(visit.visitAt ?? now, zone)}</span> {visit.client}
                        </span>
                      ))}
                      {half.visits.length === 0 && !half.isOver && free(half, technician)}
                    </div>
                  ))}
                </li>
              ))}
            </ol>
          </div>
        );
      })}
    </fieldset>
  );
}
