import { typed } from '../parts/typed.tsx';
import './second-line.css';
import { useEffect, useState } from 'preact/hooks';
import type { QueueEntry } from '../../../shared/contract/ticket.ts';
import { paths } from '../api/paths.ts';
import { reachable, session } from '../api/session.ts';
import { DocumentView } from '../parts/document-view.tsx';
import { Choices } from '../parts/field.tsx';
import { Badge } from '../parts/notice.tsx';
import { Screen } from '../parts/screen.tsx';
import { keptBody, readAhead, useDocument } from '../store/documents.ts';
import { plural, wordsOf } from '../words/language.ts';
import { terms } from '../words/terms.ts';
import { dayAndTime, lengthOfTime } from '../words/times.ts';
import { useZone } from '../words/zone.ts';
import { useNames } from './people.ts';

const t = wordsOf({
  en: {
    title: 'Cases waiting',
    none: 'No case is waiting.',
    order: 'In which order',
    longest: 'Longest waiting first',
    complete: 'Most complete first',
    count: (count: number) => plural('en', count, '1 case', `${count} cases`),
    waits: (length: string) => `waits ${length}`,
    days: (count: number) => plural('en', count, '1 day', `${count} days`),
    since: (when: string) => `since ${when}`,
    version: (version: number) => `packet version ${version}`,
    all: 'complete',
    waived: (count: number) => plural('en', count, '1 thing left out', `${count} things left out`),
    answersDue: 'waits for the technician’s answers',
    free: 'free',
    yours: 'yours',
    with: (name: string) => `with ${name}`,
    onSite: (name: string) => `on site: ${name}`,
    unread: {
      'newer-data': 'A newer server wrote to this case; it opens again once all servers are replaced.',
      'log-does-not-replay': 'This case cannot be read. Tell whoever runs the server.',
    },
  },
  de: {
    title: 'Wartende Fälle',
    none: 'Kein Fall wartet.',
    order: 'In welcher Reihenfolge',
    longest: 'Am längsten wartend zuerst',
    complete: 'Am vollständigsten zuerst',
    count: (count) => plural('de', count, '1 Fall', `${count} Fälle`),
    waits: (length) => `wartet ${length}`,
    days: (count) => plural('de', count, '1 Tag', `${count} Tage`),
    since: (when) => `seit ${when}`,
    version: (version) => `Fallpaket Fassung ${version}`,
    all: 'vollständig',
    waived: (count) => plural('de', count, '1 Sache weggelassen', `${count} Sachen weggelassen`),
    answersDue: 'wartet auf Antworten von vor Ort',
    free: 'frei',
    yours: 'deiner',
    with: (name) => `bei ${name}`,
    onSite: (name) => `vor Ort: ${name}`,
    unread: {
      'newer-data':
        'An diesem Fall hat ein neuerer Server geschrieben; er öffnet sich wieder, wenn alle Server ersetzt sind.',
      'log-does-not-replay': 'Dieser Fall ist nicht lesbar. Sag es denen, die den Server betreiben.',
    },
  },
});
type Order = 'longest' | 'complete';

/** What waits for second line, by waiting time or by completeness. */
export function QueueScreen() {
  const words = t();
  const queue = useDocument(paths.supportQueue);
  const [order, setOrder] = useState<Order>('longest');
  const now = useMinutes();
  const nextIds = (queue.body?.items ?? []).filter(isRead).toSorted(byWaiting).slice(0, readAheadCases);
  const next = nextIds.map(({ id }) => id).join(' ');
  useEffect(() => {
    if (reachable.peek() && next !== '') void readCasesAhead(next.split(' '));
  }, [next]);
  return (
    <Screen title={words.title}>
      <DocumentView document={queue}>
        {({ items }) =>
          items.length === 0 ? (
            <p>{words.none}</p>
          ) : (
            <>
              <div class="queue-order">
                <Choices
                  label={words.order}
                  value={order}
                  onChoose={setOrder}
                  options={[
                    { value: 'longest', label: words.longest },
                    { value: 'complete', label: words.complete },
                  ]}
                />
              </div>
              <p class="soft" role="status">
                {words.count(items.length)}
              </p>
              <ol class="queue">
                {items.toSorted(orders[order]).map((entry) => (
                  <li key={entry.id}>
                    {isRead(entry) ? <Entry entry={entry} now={now} /> : <Unread entry={entry} />}
                  </li>
                ))}
              </ol>
            </>
          )
        }
      </DocumentView>
    </Screen>
  );
}

/** Those that are likely to be opened next; assumed. */
const readAheadCases = 5;
async function readCasesAhead(ticketIds: readonly string[]): Promise<void> {
  for (const id of ticketIds) {
    await readAhead([paths.ticket(id)]);
    const ticket = await keptBody(paths.ticket(id));
    if (ticket === null) continue;
    await readAhead([
      paths.chain(ticket.chainId),
      paths.site(ticket.siteId),
      paths.evidence(id),
      paths.logFindings(id),
    ]);
  }
}

type WaitingCase = Extract<QueueEntry, { kind: 'waiting' }>;
type UnreadCase = Extract<QueueEntry, { kind: 'unread' }>;
/** A queue kept by an earlier version of the client has no kinds: all its cases were read. */
const isRead = (entry: QueueEntry): entry is WaitingCase => entry.kind !== 'unread';

const waitingSince = (entry: QueueEntry): number =>
  Date.parse(isRead(entry) ? entry.waitingSince : entry.updatedAt);
const waived = (entry: QueueEntry): number => (isRead(entry) ? entry.waived : Number.POSITIVE_INFINITY);
const byWaiting = (a: QueueEntry, b: QueueEntry): number => waitingSince(a) - waitingSince(b);
const orders: Record<Order, (a: QueueEntry, b: QueueEntry) => number> = {
  longest: byWaiting,
  complete: (a, b) => (waived(a) === waived(b) ? byWaiting(a, b) : waived(a) - waived(b)),
};

function Unread({ entry }: { entry: UnreadCase }) {
  const zone = useZone(entry.siteId);
  return (
    <a class="queue-entry" href={`/app/cases/${entry.id}`}>
      <span class="queue-time soft">{t().since(dayAndTime(entry.updatedAt, zone))}</span>
      <span class="queue-what">
        <strong class="queue-client">
          {entry.number}. {entry.client}
        </strong>
        <span>{t().unread[entry.because]}</span>
        <span class="soft">{entry.chainName}</span>
      </span>
    </a>
  );
}

function Entry({ entry, now }: { entry: WaitingCase; now: number }) {
  const words = t();
  const zone = useZone(entry.siteId);
  const nameOf = useNames();
  const { takenBy } = entry;
  const isMine = takenBy !== null && takenBy === session.value?.member.id;
  return (
    <a class="queue-entry" href={`/app/cases/${entry.id}`}>
      <span class="queue-time">
        <strong>{words.waits(waited(now - Date.parse(entry.waitingSince)))}</strong>
        <span class="soft">{words.since(dayAndTime(entry.waitingSince, zone))}</span>
      </span>
      <span class="queue-what">
        <strong class="queue-client">
          {entry.number}. {entry.client}
        </strong>
        <span>{typed(entry.question)}</span>
        <span class="soft">
          {[
            terms().symptom[entry.symptom],
            entry.chainName,
            ...(entry.assigneeName === null ? [] : [words.onSite(entry.assigneeName)]),
          ].join(' · ')}
        </span>
      </span>
      <span class="queue-state">
        {(entry.priority === 'high' || entry.priority === 'urgent') && (
          <Badge tone="caution">{terms().priority[entry.priority]}</Badge>
        )}
        <Badge tone={entry.waived === 0 ? 'good' : 'caution'}>
          {entry.waived === 0 ? words.all : words.waived(entry.waived)}
        </Badge>
        {entry.state === 'escalated.moreRequested' && <Badge>{words.answersDue}</Badge>}
        <Badge>{words.version(entry.version)}</Badge>
        <Badge>{takenBy === null ? words.free : isMine ? words.yours : words.with(nameOf(takenBy))}</Badge>
      </span>
    </a>
  );
}

function waited(ms: number): string {
  const minutes = Math.max(0, ms / 60_000);
  return minutes < 2 * 24 * 60 ? lengthOfTime(minutes) : t().days(Math.floor(minutes / (24 * 60)));
}

/** The moment, anew every minute. */
function useMinutes(): number {
  const [now, setNow] = useState(Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 60_000);
    return () => clearInterval(timer);
  }, []);
  return now;
}
