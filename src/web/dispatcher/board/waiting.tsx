import type { ComponentChildren } from 'preact';
import type { Ticket, TicketSummary } from '../../../../shared/contract/ticket.ts';
import { paths } from '../../api/paths.ts';
import { DocumentView } from '../../parts/document-view.tsx';
import { typedText } from '../../parts/typed.tsx';
import { useDocument } from '../../store/documents.ts';
import { useTickets } from '../../store/use-tickets.ts';
import { isOverdue } from '../../waiting/due-badge.tsx';
import { waitingWords } from '../../waiting/words.ts';
import { changeWords } from '../../words/change-words.ts';
import { terms } from '../../words/terms.ts';
import { lengthOfTime } from '../../words/times.ts';
import { DeskScreen } from '../common/desk-screen.tsx';
import { VisitEntry } from './visit-entry.tsx';
import { boardWords } from './words.ts';

type Waiting = { ticket: TicketSummary; since: string; said?: string };

/** Everything open by whom it waits for, the longest waiting first. A ticket can wait for two at once. */
export function WaitingScreen() {
  const t = boardWords();
  const open = useDocument(paths.tickets({ state: 'open', limit: 200 }));
  const due = useDocument(paths.tickets({ dueBy: farOff, limit: 200 }));
  return (
    <DeskScreen title={t.waiting}>
      <DocumentView document={open}>
        {({ items }) => <Walls open={items} due={due.body?.items ?? []} />}
      </DocumentView>
    </DeskScreen>
  );
}

/** In these a change can be in place, or second line can have asked for something. */
const needsDetails = (state: string): boolean =>
  ['escalated', 'waiting', 'substitute', 'culpritFound', 'remedy', 'verify', 'locateSide'].includes(
    state.split('.')[0] ?? '',
  );

function Walls({ open, due }: { open: readonly TicketSummary[]; due: readonly TicketSummary[] }) {
  const t = boardWords();
  const details = useTickets(open.filter(({ state }) => needsDetails(state)));
  const asked = open.flatMap((ticket) => requestsOf(ticket, details.get(ticket.id)));
  const now = new Date().toISOString();
  const [overdue, later] = [true, false].map((late) =>
    due.filter((ticket) => isOverdue(ticket.due, now) === late),
  );
  const groups: { name: string; waiting: Waiting[] }[] = [
    { name: t.overdue, waiting: (overdue ?? []).map(dueEntry) },
    { name: t.putOff, waiting: (later ?? []).filter((one) => one.due?.kind === 'wait').map(dueEntry) },
    { name: t.followUps, waiting: (later ?? []).filter((one) => one.due?.kind === 'followUp').map(dueEntry) },
    {
      name: t.ofUs,
      waiting: open
        .filter(({ assigneeId, due }) => assigneeId === null && due === null)
        .map((ticket) => ({ ticket, since: ticket.openedAt })),
    },
    {
      name: t.ofUsVisit,
      waiting: open
        .filter(({ assigneeId, visitAt, due }) => assigneeId !== null && visitAt === null && due === null)
        .map((ticket) => ({ ticket, since: ticket.openedAt })),
    },
    {
      name: t.ofSecondLine,
      waiting: open
        .filter(
          ({ id, state }) => state.startsWith('escalated') && !asked.some((one) => one.ticket.id === id),
        )
        .map((ticket) => secondLine(ticket, details.get(ticket.id))),
    },
    { name: t.ofTechnician, waiting: asked },
    {
      name: t.ofProof,
      waiting: open
        .filter(({ state }) => state === 'remedy' || state === 'verify')
        .map((ticket) => ({ ticket, since: ticket.updatedAt })),
    },
    { name: t.inPlace, waiting: open.flatMap((ticket) => inPlace(details.get(ticket.id))) },
  ];
  return (
    <div class="lanes">
      {groups.map(({ name, waiting }) => (
        <section class="lane" key={name} aria-label={name}>
          <h2>
            {name} <span class="soft">{waiting.length}</span>
          </h2>
          {waiting.length === 0 && <p class="soft">{t.nothing}</p>}
          <ol class="plain-list">
            {waiting
              .toSorted((a, b) => a.since.localeCompare(b.since))
              .map(({ ticket, since, said }) => (
                <li key={`${ticket.id}${said ?? ''}`}>
                  <VisitEntry ticket={ticket} isDated />
                  <Since since={since}>
                    {said !== undefined && <> · {said}</>}
                    {ticket.assigneeName !== null && <> · {ticket.assigneeName}</>}
                  </Since>
                </li>
              ))}
          </ol>
        </section>
      ))}
    </div>
  );
}

/** Every date there can be: what is due later is listed too. */
const farOff = '2199-12-31T00:00:00.000Z';

function dueEntry(ticket: TicketSummary): Waiting {
  const { due } = ticket;
  if (due === null) return { ticket, since: ticket.updatedAt };
  if (due.kind === 'followUp') return { ticket, since: due.since };
  const said = `${terms().actingParty[due.actor]}: ${typedText(due.what)}`;
  return {
    ticket,
    since: due.since,
    said: due.isInPlace ? `${said} · ${waitingWords().somethingInPlace}` : said,
  };
}

function requestsOf(ticket: TicketSummary, details: Ticket | undefined): Waiting[] {
  const unanswered = details?.triage.requests.filter(({ answer }) => answer === null) ?? [];
  const [first] = unanswered;
  if (first === undefined) return [];
  return [{ ticket, since: first.at, said: boardWords().asked(unanswered.length) }];
}

function secondLine(ticket: TicketSummary, details: Ticket | undefined): Waiting {
  const t = boardWords();
  const newest = details?.triage.escalations.at(-1);
  if (newest === undefined) return { ticket, since: ticket.updatedAt };
  return { ticket, since: newest.at, said: newest.takenBy === null ? t.notTaken : t.taken };
}

function inPlace(details: Ticket | undefined): Waiting[] {
  return (details?.triage.changes ?? [])
    .filter(({ status, diagnostic }) => diagnostic && (status === 'applied' || status === 'judged'))
    .map((change) => ({
      ticket: details as Ticket,
      since: change.appliedAt ?? change.declaredAt,
      said: change.detail === '' ? changeWords(change) : typedText(change.detail),
    }));
}

function Since({ since, children }: { since: string; children: ComponentChildren }) {
  const t = boardWords();
  const minutes = Math.max(0, (Date.now() - Date.parse(since)) / 60_000);
  const said = minutes < 2 * 1440 ? lengthOfTime(minutes) : t.day(Math.floor(minutes / 1440));
  return (
    <p class="between soft">
      {t.since(said)}
      {children}
    </p>
  );
}
