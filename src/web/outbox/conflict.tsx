import { paths } from '../api/paths.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { Card, Facts } from '../parts/card.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { useDocument } from '../store/documents.ts';
import { giveUp, outbox, sendAgain } from '../store/outbox.ts';
import type { OutboxEntry } from '../store/outbox-entry.ts';
import { commandWord, stateWord } from '../words/terms.ts';
import { dayAndTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import { entryDetail, entryWord } from './entry-words.ts';
import { OutcomeSide, OutcomeWays } from './outcomes-apart.tsx';
import { isReassigned, ReassignedWays, WhoHasIt } from './reassigned.tsx';
import { outboxWords } from './words.ts';

/** An entry that the server refused: what the member did, what is there now, and the question which it shall be. */
export function Conflict({ entry }: { entry: OutboxEntry }) {
  const t = outboxWords();
  const ticket = useDocument(paths.ticket(entry.ticketId)).body;
  const since = useDocument(paths.log(entry.ticketId, entry.basedOn)).body?.items ?? [];
  const zone = useZone(ticket?.siteId ?? null);
  const outcomes = entry.problem?.outcomes;
  const isMoved = isReassigned(entry);
  const after = outbox.value.filter(
    (other) => other.ticketId === entry.ticketId && other.order > entry.order,
  ).length;
  return (
    <Card title={`${t.conflictTitle}: ${entryWord(entry)}`}>
      {entry.state === 'conflict' && (
        <p>{isMoved ? t.movedLead : outcomes === undefined ? t.conflictLead : t.apartLead}</p>
      )}
      {isMoved ? (
        <WhoHasIt ticket={ticket} since={since} zone={zone} />
      ) : (
        entry.problem !== null && <Refusal problem={entry.problem} />
      )}
      <div class="two-sides">
        <section class="card">
          <h3>{t.yours}</h3>
          <strong>{entryWord(entry)}</strong>
          {outcomes !== undefined && <OutcomeSide shown={outcomes.shown} />}
          <span>{entryDetail(entry)}</span>
          <span class="soft">{t.at(dayAndTime(entry.madeAt, zone))}</span>
          {after > 0 && <span>{t.after(after)}</span>}
        </section>
        <section class="card">
          <h3>{t.theirs}</h3>
          {outcomes !== undefined && <OutcomeSide shown={outcomes.decided} />}
          {ticket !== null && (
            <Facts
              facts={[
                [t.ticketState, stateWord(ticket.state)],
                [t.assignee, ticket.assigneeName ?? t.nobody],
              ]}
            />
          )}
          <h4>{t.since}</h4>
          {since.length === 0 ? (
            <span class="soft">{t.nothingSince}</span>
          ) : (
            <ul>
              {since.map((event) => (
                <li key={event.sequence}>
                  {event.actorName}: {commandWord(event)}{' '}
                  <span class="soft">{dayAndTime(event.at, zone)}</span>
                </li>
              ))}
            </ul>
          )}
        </section>
      </div>
      {entry.kind === 'command' && outcomes !== undefined && (
        <OutcomeWays entry={entry} outcomes={outcomes} />
      )}
      {isMoved && ticket !== null && <ReassignedWays entry={entry} ticket={ticket} zone={zone} />}
      <div class="row">
        {outcomes === undefined && !isMoved && (
          <Button kind="primary" onClick={() => void sendAgain(entry)}>
            {t.sendAgain}
          </Button>
        )}
        <Button kind="danger" onClick={() => void giveUp(entry, false)}>
          {t.giveUp}
        </Button>
        {after > 0 && (
          <Button kind="danger" onClick={() => void giveUp(entry, true)}>
            {t.giveUpAll(after)}
          </Button>
        )}
        <LinkButton href={`/app/visits/${entry.ticketId}`} kind="quiet">
          {t.toTicket}
        </LinkButton>
      </div>
    </Card>
  );
}
